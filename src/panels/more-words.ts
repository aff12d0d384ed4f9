import { html, type TemplateResult } from 'lit';
import { ACTS } from './acts.ts';
import { CAUTION } from './cautions.ts';
import { LOOKS } from './looks.ts';
import type { DeckView } from './practice-deck.ts';

/** The keys of this diver, as a list. */
export function keyList(deck: DeckView): TemplateResult {
  const absent = new Set<string>([
    ...(deck.drysuit ? [] : ['suit-add', 'suit-vent']),
    ...(deck.line ? [] : ['line']),
    ...(deck.loop ? ['in', 'out', 'middle'] : ['diluent', 'nose-vent']),
  ]);
  const rows = Object.entries(ACTS).filter(([act]) => !absent.has(act));
  return html`<section>
    <h3>Keys</h3>
    <ul class="keys">
      ${rows.map(([act, { words, key }]) => html`<li><kbd>${key}</kbd> ${act.startsWith('suit-') ? 'suit ' : ''}${words}</li>`)}
      ${LOOKS.map(({ key, words }) => html`<li><kbd>${key}</kbd> ${words}</li>`)}
      <li><kbd>X</kbd> twice: release lead</li>
      <li><kbd>P</kbd> freeze, go on</li>
      <li><kbd>Z</kbd> back 10 s</li>
      <li><kbd>R</kbd> restart</li>
    </ul>
  </section>`;
}

/** What this is and what it is not. */
export function aboutWords(): TemplateResult {
  const { model, training, leftOut, worlds, loop } = CAUTION;
  return html`<section>
    <h3>What this is</h3>
    ${[model, training, leftOut, worlds, loop].map((words) => html`<p>${words}</p>`)}
    <p>Left to right is time, not swimming: the diver goes only up and down.</p>
  </section>`;
}
