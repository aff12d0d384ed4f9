import { html, nothing, type TemplateResult } from 'lit';
import type { PresentingView } from './presenting-view.ts';
import { wish, type Wish } from './wish.ts';

/** Hands other than keys and fingers: one button, a gamepad; full screen; and how long a press takes. A part of *more*. */
export function handsAndMeasures(
  host: EventTarget,
  { pad, latency, fullScreen }: PresentingView,
  oneButton: boolean,
  lungs: boolean,
  projector: boolean,
): TemplateResult {
  const ask = (what: Wish) => wish(host, what);
  return html`<section>
    <h3>One button</h3>
    <label class="choice"
      ><input
        type="checkbox"
        .checked=${oneButton}
        @change=${(event: Event) =>
          ask({ kind: 'settings', settings: { oneButton: (event.target as HTMLInputElement).checked } })}
      />
      breathe by one button: down breathes in, up breathes out</label
    >
    <p>Space, or a press anywhere on the water. With "press once to begin" each press turns the breath round.</p>
    ${
      oneButton && lungs
        ? html`<button type="button" class="tool" @click=${() => ask({ kind: 'present', ask: { do: 'neutral' } })}>
            begin neutral at 8 m
          </button>`
        : nothing
    }
    <div class="row">
      <button type="button" class="tool" @click=${() => ask({ kind: 'place', place: 'teach' })}>show a class</button>
      <button type="button" class="tool" @click=${() => ask({ kind: 'present', ask: { do: 'blank' } })}>blank</button>
      ${
        projector
          ? html`<button type="button" class="tool" @click=${() => ask({ kind: 'present', ask: { do: 'strip' } })}>
              show or hide the presenter’s strip
            </button>`
          : nothing
      }
      ${
        fullScreen === null
          ? nothing
          : html`<button type="button" class="tool" @click=${() => ask({ kind: 'present', ask: { do: 'full-screen' } })}>
              ${fullScreen ? 'leave full screen' : 'full screen'}
            </button>`
      }
    </div>
    <details class="pad">
      <summary>Gamepad: ${pad.there ? 'one is there' : 'none is there; press a button on it'}</summary>
      <p>Press a line, then the part that it is to have. Button 9, held down, gives the others a second meaning.</p>
      <p class="key-words" role="status">${pad.words}</p>
      <ul>
        ${pad.rows.map(
          ({ usual, part, words }) =>
            html`<li>
              <button
                type="button"
                class="tool"
                aria-pressed=${pad.waiting === usual}
                @click=${() => ask({ kind: 'present', ask: { do: 'pad', usual } })}
              >
                <span>${words}</span> <kbd>${pad.waiting === usual ? 'press a part' : part}</kbd>
              </button>
            </li>`,
        )}
      </ul>
      ${
        pad.moved
          ? html`<button type="button" class="tool" @click=${() => ask({ kind: 'settings', settings: { pads: {} } })}>
              all parts as usual
            </button>`
          : nothing
      }
    </details>
    <details>
      <summary>How long a press takes</summary>
      <p>${latency}</p>
    </details>
  </section>`;
}
