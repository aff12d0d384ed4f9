import { html, nothing, type TemplateResult } from 'lit';
import type { TimeAsk, TimeView } from './time-view.ts';

/** Longest name of a line. */
const LONGEST_NAME = 24;

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
            <div class="row">
              ${marks.map(({ number, atS }) =>
                tool(`${number} at ${clock(atS)}`, { do: 'at', atS }, `bookmark ${number} at ${clock(atS)}`),
              )}
            </div>
            <p>At a bookmark, “bookmark” takes it away.</p>`
        : nothing
    }
  </div>`;
}

/** Minutes, seconds and tenths: "1:34.1". */
export function clock(s: number): string {
  const tenths = Math.round(s * 10);
  return `${Math.floor(tenths / 600)}:${(tenths % 600 < 100 ? '0' : '') + ((tenths % 600) / 10).toFixed(1)}`;
}
