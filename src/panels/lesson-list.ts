import { html } from 'lit';
import type { Lesson } from '../lesson/index.ts';
import { Panel } from './panel.ts';
import { wish } from './wish.ts';

/** What the catalogue shows of a lesson. */
export type LessonCard = Pick<Lesson, 'id' | 'title' | 'minutes' | 'objective' | 'caution'>;

/** The lessons in their order, each with what it is for and what it is not. */
export class LessonList extends Panel {
  static override properties = { lessons: { attribute: false } };
  declare lessons: readonly LessonCard[];

  constructor() {
    super();
    this.lessons = [];
  }

  override render() {
    return html`<section aria-label="Lessons">
      <h2>Learn in order</h2>
      <ol>
        ${this.lessons.map(
          (lesson) =>
            html`<li>
              <h3>${lesson.title} <span>${lesson.minutes} minutes</span></h3>
              <p>${lesson.objective}</p>
              <p class="caution">${lesson.caution}</p>
              <button type="button" class="tool main" @click=${() => wish(this, { kind: 'lesson', id: lesson.id })}>
                begin ${lesson.title}
              </button>
            </li>`,
        )}
      </ol>
      <button type="button" class="tool" @click=${() => wish(this, { kind: 'leave' })}>back to the water</button>
    </section>`;
  }
}
customElements.define('lesson-list', LessonList);
