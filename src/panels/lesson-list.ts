import { html, nothing } from 'lit';
import type { Known, Lesson } from '../lesson/index.ts';
import type { LearnAsk, LearnView, LessonCard, OwnLesson, PathCard, PathStop } from './learn-view.ts';
import './mark-tables.ts';
import { Panel } from './panel.ts';
import './watch-choice.ts';
import { wish } from './wish.ts';

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

/** The lessons in their order, each with what it is for, what it is not and what is known of it; ways through them, and a file of one's own. */
export class LessonList extends Panel {
  static override properties = {
    lessons: { attribute: false },
    learn: { attribute: false },
    opened: { attribute: false },
  };
  declare lessons: readonly LessonCard[];
  declare learn: LearnView | null;
  /** The instructor has opened the lessons that are shown first. */
  declare opened: boolean;

  constructor() {
    super();
    this.lessons = [];
    this.learn = null;
    this.opened = false;
  }

  override render() {
    const learn = this.learn;
    if (learn?.tried) return html`<mark-tables .tried=${learn.tried}></mark-tables>`;
    const path = learn?.paths.find(({ id }) => id === learn.path);
    return html`<section aria-label="Lessons">
      <h2>Learn in order</h2>
      ${learn && !learn.path && learn.next ? this.#next(learn.next) : nothing}
      ${learn ? this.#paths(learn) : nothing}
      ${learn?.own ? this.#own(learn.own) : nothing}
      ${learn && path ? this.#path(learn, path) : this.#byPhase()}
      ${learn ? this.#ends() : nothing}
      <button type="button" class="tool" @click=${() => wish(this, { kind: 'leave' })}>back to the water</button>
    </section>`;
  }

  /** At hand before the whole catalogue. */
  #next({ title }: PathStop) {
    return html`<p class="next">
      <button type="button" class="tool main" @click=${() => this.#ask({ do: 'next' })}>next for you: ${title}</button>
      the first in order that is still to be learnt
    </p>`;
  }

  #byPhase() {
    const phases = [...new Set(this.lessons.map(({ phase }) => phase))];
    return phases.map(
      (phase) =>
        html`<h3>${PHASE_WORDS[phase]}</h3>
          ${phase === 'when-it-goes-wrong' ? this.#opening() : nothing}
          <ol>
            ${this.lessons.filter((lesson) => lesson.phase === phase).map((lesson) => this.#card(lesson))}
          </ol>`,
    );
  }

  #paths({ paths, path }: LearnView) {
    const choice = (id: PathCard['id'] | null, title: string, minutes: number | null) =>
      html`<button type="button" class="tool" aria-pressed=${path === id} @click=${() => this.#ask({ do: 'path', path: id })}>
        ${title}${minutes === null ? '' : `, ${minutes} minutes`}
      </button>`;
    return html`<div class="row paths" role="group" aria-label="Ways through the lessons">
      ${choice(null, 'all lessons', null)}
      ${paths.map(({ id, title, minutes }) => choice(id, title, minutes))}
    </div>`;
  }

  #path({ stops, next }: LearnView, { id, title, about }: PathCard) {
    const forClass = id !== 'self-study';
    return html`<h3>${title}</h3>
      <p>${about}</p>
      ${
        forClass
          ? html`<button type="button" class="tool main" @click=${() => this.#ask({ do: 'walk', path: id })}>
              show it to a class
            </button>`
          : this.#opening()
      }
      ${
        next && !forClass
          ? html`<button type="button" class="tool main" @click=${() => this.#ask({ do: 'next' })}>
              next in this path: ${next.title}
            </button>`
          : nothing
      }
      <ol class="stops">
        ${stops.map((stop) => {
          const lesson = this.lessons.find((one) => one.id === stop.id);
          return stop.kind === 'lesson' && lesson ? this.#card(lesson) : this.#demonstration(stop);
        })}
      </ol>`;
  }

  #demonstration({ id, title, about, minutes }: PathStop) {
    return html`<li>
      <h4>${title} <span>demonstration, ${minutes} minutes</span></h4>
      <p>${about}</p>
      <button type="button" class="tool" @click=${() => wish(this, { kind: 'present', ask: { do: 'show', id } })}>
        show ${title}
      </button>
    </li>`;
  }

  /** The instructor's word: one act, and it can be taken back. */
  #opening() {
    const set = (opened: boolean) => wish(this, { kind: 'settings', settings: { opened } });
    return this.opened
      ? html`<p>
          Opened by the instructor.
          <button type="button" class="tool" @click=${() => set(false)}>close these lessons again</button>
        </p>`
      : html`<p>
          Lessons about what goes wrong are shown first and spoken about. The instructor opens them.
          <button type="button" class="tool" @click=${() => set(true)}>I am the instructor: open them</button>
        </p>`;
  }

  #own({ fileName, card, warnings }: OwnLesson) {
    return html`<h3>Your lesson file: ${fileName}</h3>
      ${
        warnings === null
          ? html`<p role="status">It can be begun. Its proof is being tried …</p>`
          : warnings.length === 0
            ? html`<p role="status">It can be begun, and its proof comes as it says.</p>`
            : html`<p role="status">It can be begun. To look at:</p>
                <ul class="warnings">
                  ${warnings.map((one) => html`<li>${one}</li>`)}
                </ul>`
      }
      <ol>
        ${this.#card({ ...card, opens: 'always' })}
      </ol>
      <button type="button" class="tool" @click=${() => this.#ask({ do: 'close-own' })}>close this file</button>`;
  }

  #ends() {
    const chosen = (event: Event) => {
      const input = event.target as HTMLInputElement;
      const file = input.files?.[0];
      input.value = '';
      if (file) this.#ask({ do: 'file', file });
    };
    return html`<h3>A lesson of your own</h3>
      <p>A lesson is a text file, to be flown or for the bench. Save a template, change it, and open it here, or drop it on this page: what is wrong is told with its line, and what is right can be begun at once.</p>
      <div class="row">
        <button type="button" class="tool" @click=${() => this.#ask({ do: 'template' })}>save the template</button>
        <button type="button" class="tool" @click=${() => this.#ask({ do: 'bench-template' })}>save one for the bench</button>
        <label class="tool file">open a lesson file <input type="file" accept=".yaml,.yml,.txt" @change=${chosen} /></label>
      </div>
      <h3>How the marks were tried</h3>
      <div class="row">
        <button type="button" class="tool" @click=${() => this.#ask({ do: 'tables' })}>see the tables</button>
      </div>`;
  }

  #card(lesson: LessonCard) {
    const known = this.learn?.known[lesson.id];
    const begin = html`<button
      type="button"
      class="tool main"
      @click=${() => wish(this, { kind: 'lesson', id: lesson.id })}
    >
      begin ${lesson.title}
    </button>`;
    // At the bench nobody flies.
    const flown = lesson.phase !== 'bench';
    const closed = lesson.opens === 'instructor' && !this.opened;
    return html`<li>
      <h4>${lesson.title} <span>${lesson.minutes} minutes</span></h4>
      ${this.learn ? html`<p class="known">${knownWords(known, flown)}</p>` : nothing}
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
      ${this.learn && flown ? html`<watch-choice .lessonId=${lesson.id} .lessonTitle=${lesson.title}></watch-choice>` : nothing}
      ${closed ? html`<p>Not opened yet.</p>` : begin}
    </li>`;
  }

  #ask(ask: LearnAsk): void {
    wish(this, { kind: 'learn', ask });
  }
}
customElements.define('lesson-list', LessonList);

/** What is known of a lesson: "nearly, over 2 flights; 3 of 4 predictions right". */
function knownWords(known: Known | undefined, flown: boolean) {
  if (!known) return html`<b>${flown ? 'not flown' : 'not tried'}</b>`;
  const { word, of, predictions } = known;
  const one = flown ? 'flight' : 'try';
  const over = of === 1 ? `one ${one}` : `${of} ${flown ? 'flights' : 'tries'}`;
  const said = predictions.of > 0 ? `; ${predictions.right} of ${predictions.of} predictions right` : '';
  return html`<b>${word}</b>, over ${over}${said}`;
}
