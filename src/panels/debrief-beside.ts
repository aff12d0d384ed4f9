import { html, nothing, type TemplateResult } from 'lit';
import type { CompareChoice, CompareView, DebriefKnown, EarlierFlight } from './debrief-view.ts';

const WHEN = new Intl.DateTimeFormat('en-GB', { dateStyle: 'medium', timeStyle: 'short' });
/** Earlier flights that stand in the open; older ones are folded away. */
const SHOWN = 3;

/** Who is flown beside this flight. @param choose hears the id of what was chosen */
export function compareBox({ choices, chosen, says }: CompareView, choose: (id: string) => void): TemplateResult {
  const group = (label: string, sort: CompareChoice['sort']) => {
    const of = choices.filter((one) => one.sort === sort);
    return of.length === 0
      ? nothing
      : html`<optgroup label=${label}>
          ${of.map(({ id, name }) => html`<option value=${id} ?selected=${id === chosen}>${name}</option>`)}
        </optgroup>`;
  };
  return html`<div class="beside-box">
    <label>
      <span>Beside it</span>
      <select @change=${(event: Event) => choose((event.target as HTMLSelectElement).value)}>
        <option value="" ?selected=${chosen === ''}>nobody</option>
        ${group('Simulated divers, from the same start', 'pilot')} ${group('Your kept flights', 'flight')}
      </select>
    </label>
    <p role="status">${says}</p>
  </div>`;
}

/** Earlier flights with their words, the newest first. */
export function earlierFlights({ earlier, others }: DebriefKnown): TemplateResult | typeof nothing {
  if (earlier.length === 0 && others === 0) return nothing;
  const older = earlier.slice(SHOWN);
  return html`<h3>Earlier flights</h3>
    <ul class="earlier">
      ${earlier.slice(0, SHOWN).map(flightItem)}
    </ul>
    ${
      older.length > 0
        ? html`<details>
            <summary>${older.length} before those</summary>
            <ul class="earlier">
              ${older.map(flightItem)}
            </ul>
          </details>`
        : nothing
    }
    ${others > 0 ? html`<p>${otherWords(others)}</p>` : nothing}`;
}

function otherWords(others: number): string {
  return others === 1
    ? 'One more flight was in another kit or with other tasks: it is not compared.'
    : `${others} more flights were in another kit or with other tasks: they are not compared.`;
}

function flightItem({ at, marks, right, asked, passed, word }: EarlierFlight): TemplateResult {
  const came =
    marks.length > 0 ? marks.map(({ id, word: said }) => `${id} ${said}`) : [passed ? 'all met' : 'not all met'];
  const predicted = asked > 0 ? [`${right} of ${asked} as predicted`] : [];
  return html`<li>
    <p>${WHEN.format(new Date(at))}: ${[...came, ...predicted].join(', ')}.</p>
    ${word ? html`<p class="word">“${word}”</p>` : nothing}
  </li>`;
}
