import { html, nothing } from 'lit';
import type { Lesson } from '../lesson/index.ts';
import { Panel } from './panel.ts';
import { wish } from './wish.ts';

/** What the catalogue shows of a lesson. */
export type LessonCard = Pick<
  Lesson,
  'id' | 'title' | 'minutes' | 'objective' | 'caution' | 'phase' | 'opens' | 'values'
>;

/** Parts of the course as people say them. */
const PHASE_WORDS: Readonly<Record<Lesson['phase'], string>> = {
  'first-dive': 'To begin with',
  bench: 'At the bench',
  'three-phases': 'Positive, negative, neutral',
  weighting: 'Weighting',
  'under-control': 'Under control',
  'when-it-goes-wrong': 'When it goes wrong',
  limits: 'Where it ends',
};

/** The lessons in their order, each with what it is for and what it is not. */
export class LessonList extends Panel {
  static override properties = { lessons: { attribute: false } };
  declare lessons: readonly LessonCard[];

  constructor() {
    super();
    this.lessons = [];
  }

  override render() {
    const phases = [...new Set(this.lessons.map(({ phase }) => phase))];
    return html`<section aria-label="Lessons">
      <h2>Learn in order</h2>
      ${phases.map(
        (phase) =>
          html`<h3>${PHASE_WORDS[phase]}</h3>
            <ol>
              ${this.lessons.filter((lesson) => lesson.phase === phase).map((lesson) => this.#card(lesson))}
            </ol>`,
      )}
      <button type="button" class="tool" @click=${() => wish(this, { kind: 'leave' })}>back to the water</button>
    </section>`;
  }

  #card(lesson: LessonCard) {
    const begin = html`<button
      type="button"
      class="tool main"
      @click=${() => wish(this, { kind: 'lesson', id: lesson.id })}
    >
      begin ${lesson.title}
    </button>`;
    return html`<li>
      <h4>${lesson.title} <span>${lesson.minutes} minutes</span></h4>
      <p>${lesson.objective}</p>
      <p class="caution">${lesson.caution}</p>
      ${
        lesson.values.length > 0
          ? html`<details>
            <summary>What is asked for, and why</summary>
            <ul>
              ${lesson.values.map(({ value, why }) => html`<li><b>${value}</b> ${why}</li>`)}
            </ul>
          </details>`
          : nothing
      }
      ${lesson.opens === 'instructor' ? nothing : begin}
      ${
        lesson.opens === 'instructor'
          ? html`<details>
            <summary>Opened by the instructor</summary>
            <p>It is shown first and spoken about. Begin it once your instructor says so.</p>
            ${begin}
          </details>`
          : nothing
      }
    </li>`;
  }
}
customElements.define('lesson-list', LessonList);
