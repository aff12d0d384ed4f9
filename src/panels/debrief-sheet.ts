import { html, nothing } from 'lit';
import { CAUTION } from './cautions.ts';
import { compareBox, earlierFlights } from './debrief-beside.ts';
import { habitList, limitList, predictionList } from './debrief-found.ts';
import { lineFigure, ringList } from './debrief-line.ts';
import { markArticle, markTable } from './debrief-marks.ts';
import './debrief-word.ts';
import type { Debrief, DebriefAsk } from './debrief-view.ts';
import { Panel } from './panel.ts';
import { timeText } from './units.ts';
import { wish } from './wish.ts';

/** From this flight of a lesson on gauges are gone: then there is a way to have them again. */
const FADED = 3;

/** What came of a lesson with all it came from; each piece of evidence can be gone to on the line. */
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
    const { lesson, result, predictions, question, known, compare, limits, flownBy } = this.debrief;
    const moment = (atS: number | null) => this.#moment(atS);
    return html`<section aria-label="Debrief" class=${flownBy ? 'watched' : ''}>
      <h2>${lesson.title}: what came of it</h2>
      ${flownBy ? html`<p class="flown-by"><b>Flown by a simulated diver.</b> ${flownBy} It is nobody's result.</p>` : nothing}
      <p class="verdict">${result.verdict === 'pass' ? 'All that was asked for was met.' : 'Not all that was asked for was met.'}</p>
      ${result.missed ? html`<p class="missed">${result.missed}</p>` : nothing}
      <p class="caution">${CAUTION.marks}</p>
      ${lineFigure(this.debrief, moment)} ${ringList(this.debrief, moment)}
      ${compareBox(compare, (id) => this.#ask({ do: 'compare', with: id }))}
      ${markTable(result.marks, known, compare)}
      ${this.#next()}
      ${
        result.demands.length > 0
          ? html`<ul class="demands">
            ${result.demands.map(
              (one) =>
                html`<li>
                  <span>${one.title}, ${one.met ? 'met' : html`<b>not met</b>`}: ${one.says}</span> ${moment(one.atS)}
                </li>`,
            )}
          </ul>`
          : nothing
      }
      ${result.marks.map((mark) => markArticle(mark, known?.reports[mark.id], compare, moment))}
      ${limitList(limits)}
      ${habitList(result.habits, moment)}
      ${predictionList(predictions)}
      <h3>One question</h3>
      <p>${question}</p>
      <div class="water-adds">
        <h3>What the water adds</h3>
        <p>${lesson.waterAdds}</p>
      </div>
      ${
        flownBy || !known
          ? nothing
          : html`<debrief-word .flight=${known.id} .word=${known.word} .words=${known.words}></debrief-word>
              ${earlierFlights(known)}`
      }
      ${this.#ways()}
    </section>`;
  }

  /** What to fly next, with its reason. */
  #next() {
    const next = this.debrief?.known?.next;
    if (!next) return nothing;
    return html`<div class="next">
      <h3>Next</h3>
      <p>${next.reason}</p>
      <button type="button" class="tool main" @click=${() => wish(this, { kind: 'lesson', id: next.lessonId })}>
        ${next.again ? 'fly it again' : `begin ${next.title}`}
      </button>
    </div>`;
  }

  #ways() {
    const { lesson, attempt } = this.debrief!;
    return html`${
      attempt + 1 >= FADED
        ? html`<p>You have flown it ${attempt === 1 ? 'once' : `${attempt} times`}: flown again, its gauges are fewer.</p>`
        : nothing
    }
      <div class="row ways">
        <button type="button" class="tool" @click=${() => wish(this, { kind: 'lesson', id: lesson.id })}>again</button>
        ${
          attempt + 1 >= FADED
            ? html`<button type="button" class="tool" @click=${() => wish(this, { kind: 'all-gauges' })}>
              again, with all gauges
            </button>`
            : nothing
        }
        <button type="button" class="tool" @click=${() => wish(this, { kind: 'place', place: 'learn' })}>lessons</button>
        <button type="button" class="tool" @click=${() => wish(this, { kind: 'traces', ask: { do: 'toggle' } })}>traces</button>
        <button type="button" class="tool" @click=${() => wish(this, { kind: 'time', ask: { do: 'compare' } })}>lines</button>
        <button type="button" class="tool" @click=${() => wish(this, { kind: 'save-run' })}>save this dive</button>
        <button type="button" class="tool" @click=${() => wish(this, { kind: 'leave' })}>back to the water</button>
      </div>`;
  }

  #ask(ask: DebriefAsk): void {
    wish(this, { kind: 'debrief', ask });
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
