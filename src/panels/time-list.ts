import { html, nothing, type TemplateResult } from 'lit';
import type { TimeAsk, TimeView } from './time-view.ts';

/** Longest name of a line or a bookmark. */
const LONGEST_NAME = 24;

/** How the line is read, in words: nothing on the page says it otherwise. */
export const LINE_KEY =
  'Amber above the line: gas let in; below it: let out; as long as the press, as high as its litres (cut: more). A doubled line is faster than the limit.';

/** Other lines, the ghost, and bookmarks, each with what can be done with it. */
export function timeList({ lines, ghost, marks }: TimeView, ask: (what: TimeAsk) => void): TemplateResult {
  const tool = (words: string, what: TimeAsk, label: string, pressed?: boolean) =>
    html`<button type="button" class="tool" aria-label=${label} aria-pressed=${pressed ?? nothing} @click=${() => ask(what)}>
      ${words}
    </button>`;
  return html`<div class="list">
    <header>
      <h2>Lines</h2>
      ${tool('close', { do: 'list' }, 'close the lines')}
    </header>
    ${
      lines.length === 0
        ? html`<p>Go back, take over from there: the line that was flown stays beside the new one, up to four of them.</p>`
        : nothing
    }
    <ul>
      ${lines.map(
        ({ letter, name, shown }) =>
          html`<li>
            <b>${letter}</b>
            <input
              type="text"
              aria-label="name of line ${letter}"
              maxlength=${LONGEST_NAME}
              .value=${name}
              @change=${(event: Event) => ask({ do: 'call', letter, name: (event.target as HTMLInputElement).value })}
            />
            ${tool('shown', { do: 'line-shown', letter }, `line ${letter} shown`, shown)}
            ${tool('fly this one', { do: 'switch', letter }, `fly line ${letter}`)}
            ${tool('remove', { do: 'line-away', letter }, `remove line ${letter}`)}
          </li>`,
      )}
      ${
        ghost
          ? html`<li>
              <b>ghost</b> <span class="name">${ghost.name}</span>
              ${tool('shown', { do: 'ghost-shown' }, 'ghost shown', ghost.shown)}
              ${tool('remove', { do: 'ghost-away' }, 'remove the ghost')}
            </li>`
          : nothing
      }
    </ul>
    <div class="row">
      ${tool('bookmark', { do: 'mark' }, 'bookmark this moment')}
      ${tool('keep this dive as a ghost', { do: 'keep-ghost' }, 'keep this dive as a ghost')}
      <label class="tool file"
        >ghost from a saved dive
        <input
          type="file"
          accept=".midwater,.json"
          @change=${(event: Event) => {
            const file = (event.target as HTMLInputElement).files?.[0];
            if (file) ask({ do: 'ghost-file', file });
          }}
      /></label>
    </div>
    ${
      marks.length > 0
        ? html`<h2>Bookmarks</h2>
            <ul>
              ${marks.map(
                ({ number, atS, name }) =>
                  html`<li>
                    <b>${number}</b>
                    <input
                      type="text"
                      aria-label="name of bookmark ${number}"
                      maxlength=${LONGEST_NAME}
                      placeholder="what is there"
                      .value=${name}
                      @change=${(event: Event) => ask({ do: 'call-mark', number, name: (event.target as HTMLInputElement).value })}
                    />
                    ${tool(`go to ${clock(atS)}`, { do: 'at', atS }, `go to bookmark ${number} at ${clock(atS)}`)}
                    ${tool('remove', { do: 'mark-away', number }, `remove bookmark ${number}`)}
                  </li>`,
              )}
            </ul>`
        : nothing
    }
    <p class="key">${LINE_KEY}</p>
  </div>`;
}

/** Minutes, seconds and tenths: "1:34.1". */
export function clock(s: number): string {
  const tenths = Math.round(s * 10);
  return `${Math.floor(tenths / 600)}:${(tenths % 600 < 100 ? '0' : '') + ((tenths % 600) / 10).toFixed(1)}`;
}
