import { html, nothing, type TemplateResult } from 'lit';
import type { TraceKind } from './trace-kinds.ts';

/** What the bar over the traces shows, and what its buttons do. */
export interface TraceTools {
  readonly kinds: readonly TraceKind[];
  readonly chosen: readonly string[];
  /** The one trace that a small screen shows; null where several stand below each other. */
  readonly one: TraceKind | null;
  readonly canCloser: boolean;
  readonly canWider: boolean;
  readonly reading: boolean;
  readonly tableOpen: boolean;
  readonly choose: (id: TraceKind['id']) => void;
  readonly step: (by: 1 | -1) => void;
  readonly zoom: (closer: boolean) => void;
  readonly whole: () => void;
  readonly move: (byS: number) => void;
  readonly follow: () => void;
  readonly table: () => void;
  readonly save: (what: 'si' | 'shown' | 'picture') => void;
  readonly close: () => void;
}

/** Which traces, how much time, the reading line by buttons, numbers and files. */
export function traceTools(t: TraceTools): TemplateResult {
  return html`<header>
    ${
      t.one
        ? html`<div class="one" role="group" aria-label="Which trace">
            ${tool('‹', () => t.step(-1), 'the trace before')}
            <b aria-live="polite">${t.one.words}</b>
            ${tool('›', () => t.step(1), 'the next trace')}
          </div>`
        : html`<div class="which" role="group" aria-label="Which traces">
            ${t.kinds.map(
              ({ id, words }) =>
                html`<button
                  type="button"
                  class="tool"
                  aria-pressed=${t.chosen.includes(id)}
                  @click=${() => t.choose(id)}
                >
                  ${words}
                </button>`,
            )}
          </div>`
    }
    <div class="time" role="group" aria-label="How much time">
      ${tool('closer', () => t.zoom(true), '', !t.canCloser)} ${tool('wider', () => t.zoom(false), '', !t.canWider)}
      ${tool('whole', t.whole, 'the whole dive', !t.canWider)}
    </div>
    <div class="read" role="group" aria-label="Reading line">
      ${tool('−1 s', () => t.move(-1), 'reading line a second back')}
      ${tool('+1 s', () => t.move(1), 'reading line a second on')} ${tool('end', t.follow, 'reading line away', !t.reading)}
    </div>
    <div>
      <button type="button" class="tool" aria-expanded=${t.tableOpen} @click=${t.table}>numbers</button>
    </div>
    <div class="ends">
      ${tool('close', t.close, 'close the traces')}
    </div>
  </header>`;
}

/** Files of the dive, over the table. */
export function traceFiles(t: TraceTools): TemplateResult {
  return html`<div class="files" role="group" aria-label="Save the traces">
    ${tool('save CSV in SI units', () => t.save('si'))} ${tool('save CSV in the units shown', () => t.save('shown'))}
    ${tool('save picture', () => t.save('picture'))}
  </div>`;
}

function tool(words: string, done: () => void, label = '', disabled = false) {
  return html`<button
    type="button"
    class="tool"
    aria-label=${label || nothing}
    ?disabled=${disabled}
    @click=${done}
  >
    ${words}
  </button>`;
}
