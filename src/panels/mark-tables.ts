import { html } from 'lit';
import type { Demanded, HabitRates } from '../lesson/index.ts';
import { CAUTION } from './cautions.ts';
import type { TriedView } from './learn-view.ts';
import { Panel } from './panel.ts';
import { pilotWords } from './watch-choice.ts';
import { wish } from './wish.ts';

const TASK_WORDS: Readonly<Record<Demanded['task'], string>> = {
  hover: 'Hover',
  ascent: 'Ascent with a stop',
  descent: 'Descent',
  'first-dive': 'First dive',
};

/** How marks and detectors were tried on simulated divers: what was demanded, what it came to, and what is not met. */
export class MarkTables extends Panel {
  static override properties = { tried: { attribute: false } };
  declare tried: TriedView | null;

  constructor() {
    super();
    this.tried = null;
  }

  override firstUpdated(): void {
    this.querySelector('h2')?.focus();
  }

  override render() {
    if (!this.tried) return html``;
    const { date, cells, demands, unseen, habits } = this.tried;
    const unmet = [...demands, ...unseen.demands].filter(({ met }) => !met);
    const tasks = [...new Set(demands.map(({ task }) => task))];
    return html`<section aria-label="How the marks were tried">
      <h2 tabindex="-1">How the marks were tried</h2>
      <p><strong>These tables test the logic of marks and detectors on simulated divers. They say nothing about people.</strong></p>
      <p class="caution">${CAUTION.marks}</p>
      <p>Marks and detectors were settled on other kits. What stands here was flown on ${date} in ${kitsOf(cells)}; then, with nothing changed any more, once in ${kitsOf(unseen.cells)}: there ${metOf(unseen.demands)} demands are met. No other kit was looked at.</p>

      <h3>What is not met</h3>
      ${
        unmet.length === 0
          ? html`<p>Nothing: every demand below is met.</p>`
          : html`<ul>
              ${unmet.map(
                ({ demand, task, mark, cell, value, limit }) =>
                  html`<li>${TASK_WORDS[task]}, mark ${mark}, kit ${cell}: ${demand} came to ${shown(value)}, asked for ${shown(limit)}.</li>`,
              )}
            </ul>`
      }

      <h3>What is stated, and what is only asked</h3>
      <p>A detector states a habit where it finds 95 of 100 flights of those who have it and 5 of 100 at most of those who have not, in the task where it is worst; what caps a mark is a fact of the recording. Every other detector asks, and claims nothing.</p>
      ${this.#habits(habits)}

      <h3>What was demanded of the marks</h3>
      ${tasks.map((task) =>
        this.#demands(
          task,
          demands.filter((one) => one.task === task),
        ),
      )}
      <div class="row">
        <button type="button" class="tool main" @click=${() => wish(this, { kind: 'place', place: 'learn' })}>back to the lessons</button>
      </div>
    </section>`;
  }

  #habits(habits: readonly HabitRates[]) {
    return html`<div class="wide-table" tabindex="0" role="region" aria-label="Detectors of habits">
      <table>
        <thead>
          <tr>
            <th scope="col">habit</th>
            <th scope="col">said as</th>
            <th scope="col">who has it</th>
            <th scope="col">found, of 100</th>
            <th scope="col">false alarms, of 100</th>
            <th scope="col">at worst</th>
          </tr>
        </thead>
        <tbody>
          ${habits.map(
            ({ name, states, pilot, hitsPercent, falsePercent, falseWorst }) =>
              html`<tr>
                <th scope="row">${name}</th>
                <td><b>${states ? 'stated' : 'asked'}</b></td>
                <td>${pilot ? pilotWords(pilot) : 'nobody alone'}</td>
                <td class="figure">${hitsPercent === null ? 'not measured' : shown(hitsPercent)}</td>
                <td class="figure">${shown(falsePercent)}</td>
                <td>${falseWorst.percent > 0 ? `${shown(falseWorst.percent)}: ${pilotWords(falseWorst.pilot)}, ${TASK_WORDS[falseWorst.task].toLowerCase()}` : 'none'}</td>
              </tr>`,
          )}
        </tbody>
      </table>
    </div>`;
  }

  #demands(task: Demanded['task'], demands: readonly Demanded[]) {
    return html`<details>
      <summary>${TASK_WORDS[task]}: ${metOf(demands)} met</summary>
      <div class="wide-table" tabindex="0" role="region" aria-label="Demands, ${TASK_WORDS[task]}">
        <table>
          <thead>
            <tr>
              <th scope="col">demand</th>
              <th scope="col">mark</th>
              <th scope="col">worst kit</th>
              <th scope="col">came to</th>
              <th scope="col">asked for</th>
              <th scope="col">met</th>
            </tr>
          </thead>
          <tbody>
            ${demands.map(
              (one) =>
                html`<tr>
                  <th scope="row">${one.demand}</th>
                  <td>${one.mark}</td>
                  <td>${one.cell}</td>
                  <td class="figure">${shown(one.value)}</td>
                  <td class="figure">${shown(one.limit)}</td>
                  <td>${one.met ? 'met' : html`<b>not met</b>`}</td>
                </tr>`,
            )}
          </tbody>
        </table>
      </div>
    </details>`;
  }
}
customElements.define('mark-tables', MarkTables);

/** "8 kits (3mm+0.5, …), each up to 100 times". */
function kitsOf(cells: TriedView['cells']): string {
  const kits = [...new Set(cells.map(({ cell }) => cell))];
  return `${kits.length} kits (${kits.join(', ')}), up to ${Math.max(...cells.map(({ seeds }) => seeds))} times each`;
}

function metOf(demands: readonly Demanded[]): string {
  return `${demands.filter(({ met }) => met).length} of ${demands.length}`;
}

/** A figure as it was printed, no longer than needed. */
function shown(value: number): string {
  return String(Math.round(value * 100) / 100).replace('-', '−');
}
