import { html, type TemplateResult } from 'lit';
import { wish } from './wish.ts';

/** Depth that is offered first, the least and the greatest, metres. */
const FIRST_M = 2;
const LEAST_M = 1;
const MOST_M = 40;

/** Free practice that begins under water: nothing in the jacket, frozen until somebody goes on. */
export function letGo(host: EventTarget): TemplateResult {
  const begin = (event: Event) => {
    const field = (event.currentTarget as Element).closest('.let-go')!.querySelector('input')!;
    const given = Number(field.value);
    const depthM = Number.isFinite(given) && given > 0 ? Math.min(Math.max(given, LEAST_M), MOST_M) : FIRST_M;
    wish(host, { kind: 'let-go', depthM });
  };
  return html`<div class="row let-go">
    <label>begin under water, jacket empty, at <input type="number" min=${LEAST_M} max=${MOST_M} step="0.5" value=${FIRST_M} /> m</label>
    <button type="button" class="tool" @click=${begin}>let go</button>
  </div>`;
}
