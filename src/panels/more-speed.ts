import { html, type TemplateResult } from 'lit';
import { SPEEDS } from './title-bar.ts';
import { wish } from './wish.ts';

/** Speeds of the clock, where the bar at the top has no room for them. */
export function speedRow(host: EventTarget, now: number): TemplateResult {
  return html`<div class="row small-only" role="group" aria-label="Speed of time">
    ${SPEEDS.map(
      ([speed, words]) =>
        html`<button
          type="button"
          class="tool"
          aria-pressed=${speed === now}
          @click=${() => wish(host, { kind: 'speed', speed })}
        >
          ${words}
        </button>`,
    )}
  </div>`;
}
