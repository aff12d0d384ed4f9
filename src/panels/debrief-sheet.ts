import { html, nothing } from 'lit';
import type { Lesson, LessonResult, Mark, MarkPart, PredictionOutcome } from '../lesson/index.ts';
import { CAUTION } from './cautions.ts';
import { Panel } from './panel.ts';
import { timeText } from './units.ts';
import { wish } from './wish.ts';

/** What came of a lesson, and what is said about it. */
export interface Debrief {
  readonly lesson: Pick<Lesson, 'id' | 'title' | 'waterAdds'>;
  readonly result: LessonResult;
  readonly predictions: readonly PredictionOutcome[];
  readonly question: string;
  /** Moments with a numbered ring on the line, seconds. */
  readonly moments: readonly number[];
}

/** The marks with all they came from; each piece of evidence can be gone to on the line. */
export class DebriefSheet extends Panel {
  static override properties = { debrief: { attribute: false }, atS: { attribute: false } };
  declare debrief: Debrief | null;
  /** Moment that the stage shows now; null at the end of the dive. */
  declare atS: number | null;

  constructor() {
    super();
    this.debrief = null;
    this.atS = null;
  }

  override render() {
    if (!this.debrief) return html``;
    const { lesson, result, predictions, question } = this.debrief;
    return html`<section aria-label="Debrief">
      <h2>${lesson.title}: what came of it</h2>
      ${result.missed ? html`<p class="missed">${result.missed}</p>` : nothing}
      <div class="whole-run">
        <canvas role="img" aria-label="The whole line of the dive, with the places to be and the numbered moments"></canvas>
      </div>
      ${
        result.demands.length > 0
          ? html`<ul>
            ${result.demands.map(
              (one) =>
                html`<li>
                  <span>${one.met ? 'met' : 'not met'}: ${one.title}, ${one.says}</span> ${this.#moment(one.atS)}
                </li>`,
            )}
          </ul>`
          : nothing
      }
      ${result.marks.map((mark) => this.#mark(mark))}
      ${result.habits.map((habit) => html`<p class="habit">${habit.words} ${this.#moment(habit.fromS)}</p>`)}
      <p class="caution">${CAUTION.marks}</p>
      ${predictions.length > 0 ? html`<h3>You said, it came</h3>` : nothing}
      <ul class="predictions">
        ${predictions.map(
          (one) =>
            html`<li>
              <p>${one.question}</p>
              <p>
                ${one.said === null ? 'You passed it over;' : html`You said <b>${one.said}</b>;`} it came to
                <b>${one.came}</b>${one.said === null ? '.' : one.right ? ': as you said.' : '.'}
              </p>
              <p>${one.why}</p>
            </li>`,
        )}
      </ul>
      <h3>One question</h3>
      <p>${question}</p>
      <div class="water-adds">
        <h3>What the water adds</h3>
        <p>${lesson.waterAdds}</p>
      </div>
      <div class="row">
        <button type="button" class="tool main" @click=${() => wish(this, { kind: 'lesson', id: lesson.id })}>again</button>
        <button type="button" class="tool" @click=${() => wish(this, { kind: 'traces', ask: { do: 'toggle' } })}>traces</button>
        <button type="button" class="tool" @click=${() => wish(this, { kind: 'time', ask: { do: 'compare' } })}>compare</button>
        <button type="button" class="tool" @click=${() => wish(this, { kind: 'save-run' })}>save this dive</button>
        <button type="button" class="tool" @click=${() => wish(this, { kind: 'leave' })}>back to the water</button>
      </div>
    </section>`;
  }

  #mark(mark: Mark) {
    return html`<article class="mark">
      <h3>${mark.id} <b>${mark.word}</b> <span class="score">${Math.round(mark.score)} of 100</span></h3>
      <ul>
        ${mark.criteria.map(
          (one) =>
            html`<li>
              <span>${one.met ? 'met' : 'not met'}: ${one.demand}${one.unit ? `, came to ${amount(one.value, one.unit)}` : ''}</span>
              ${this.#moment(one.atS)}
            </li>`,
        )}
      </ul>
      <details>
        <summary>where the points went</summary>
        <ul>
          ${mark.parts.map((part) => this.#part(part))}
        </ul>
      </details>
    </article>`;
  }

  #part(part: MarkPart) {
    const scale =
      part.good === null || part.bad === null
        ? ''
        : ` Full at ${amount(part.good, part.unit)}, none at ${amount(part.bad, part.unit)}.`;
    const points = Math.round(part.pointsLost * 10) / 10;
    return html`<li>
      <span
        >${part.label}${part.unit ? `: ${amount(part.raw, part.unit)}` : ''}.${scale}
        ${points < 0 ? `${-points} points given back` : `${points} points lost`}. ${part.reason}</span
      >
      ${this.#moment(part.atS)}
    </li>`;
  }

  #moment(atS: number | null) {
    if (atS === null) return nothing;
    const ring = (this.debrief?.moments.indexOf(atS) ?? -1) + 1;
    return html`<button
      type="button"
      class="tool moment"
      aria-pressed=${this.atS === atS}
      @click=${() => wish(this, { kind: 'moment', atS })}
    >
      ${ring > 0 ? html`<b>${ring}</b> ` : nothing}see ${timeText(atS)}
    </button>`;
  }
}
customElements.define('debrief-sheet', DebriefSheet);

function amount(value: number, unit: string): string {
  const digits = unit === '%' || Math.abs(value) >= 100 || Number.isInteger(value) ? 0 : Math.abs(value) >= 1 ? 1 : 2;
  return unit ? `${value.toFixed(digits)} ${unit}` : value.toFixed(digits);
}
