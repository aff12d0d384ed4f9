import { html, type TemplateResult } from 'lit';
import { CAUTION } from './cautions.ts';

/** What this is and what it is not. */
export function aboutWords(): TemplateResult {
  const { model, training, leftOut, worlds, loop } = CAUTION;
  return html`<section>
    <h3>What this is</h3>
    ${[model, training, leftOut, worlds, loop].map((words) => html`<p>${words}</p>`)}
    <p>Left to right is time, not swimming: the diver goes only up and down.</p>
  </section>`;
}
