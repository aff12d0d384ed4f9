import { DeepDesk, TankDesk, type BenchMode } from '../bench/index.ts';
import { WishEvent, fetchBench, usualPlace, type BenchView, type BenchWish } from '../panels/index.ts';
import { LessonAtBench } from './bench-lesson.ts';
import { benchAskOf } from './bench-keys.ts';
import { BenchSketch } from './bench-sketch.ts';
import { readOn, readsOn } from './debrief-pages.ts';
import './bench.css';
import './bench-picture.css';
import { focusOf } from './keys.ts';
import { findTaught } from './own-lesson.ts';
import type { Shell } from './shell.ts';

/** The *Bench*: a tank, a deep tank and a flask, free or in a lesson; the dive in hand stands still meanwhile. */
export class BenchPlace {
  readonly #shell: Shell;
  readonly #words: Awaited<ReturnType<typeof fetchBench>>;
  readonly #tank = new TankDesk();
  readonly #deep = new DeepDesk('deep');
  readonly #bottle = new DeepDesk('bottle');
  readonly #sketch = new BenchSketch();
  #mode: BenchMode = 'tank';
  #lesson: LessonAtBench | null = null;
  #lastMs = NaN;

  private constructor(shell: Shell, words: Awaited<ReturnType<typeof fetchBench>>) {
    this.#shell = shell;
    this.#words = words;
    const next = (nowMs: number) => {
      this.#frame(nowMs);
      shell.window.requestAnimationFrame(next);
    };
    shell.window.requestAnimationFrame(next);
    shell.window.addEventListener('keydown', (event) => {
      this.#key(event);
      this.#hand(event);
    });
    shell.root.addEventListener('wish', (event) => this.#answered(event), { capture: true });
  }

  static async begin(shell: Shell): Promise<BenchPlace> {
    return new BenchPlace(shell, await fetchBench());
  }

  /** The bench, free. */
  open(mode: BenchMode): void {
    this.#lesson = null;
    this.#mode = mode;
    this.#show('Bench');
    void this.#toHand();
  }

  /** A lesson at the bench, ours or a file that was opened. @throws {RangeError} when there is none of that id */
  async learn(id: string, resumed: boolean): Promise<void> {
    const lesson = await findTaught(id, this.#shell.window);
    if (!lesson || !('bench' in lesson)) throw new RangeError(`there is no lesson ${id}`);
    this.#lesson = new LessonAtBench(this.#shell.window, lesson, resumed);
    this.#show(lesson.title);
  }

  /** Does what is asked; what the bench does not allow is said, and nothing is changed. */
  hear(ask: Exclude<BenchWish, { do: 'lesson' }>): void {
    if (ask.do === 'mode') return this.open(ask.mode);
    if (ask.do === 'walk-on') return this.#walkOn();
    if (ask.do === 'go-on') this.#lesson?.goOn();
    else if (ask.do === 'sketch') this.#sketch.ask();
    else (this.#lesson ?? this.#now()).hear(ask);
    this.#shell.show({ bench: this.#view() });
  }

  /** What is asked here is locked here: the dive that stands still meanwhile may be asked something too. */
  #answered(event: Event): void {
    if (!(event instanceof WishEvent) || event.wish.kind !== 'answer' || this.#shell.view.place !== 'bench') return;
    event.stopPropagation();
    const { answer } = event.wish;
    if (this.#lesson) this.#lesson.answer(answer);
    else this.#sketch.lock(answer);
    this.#shell.show({ bench: this.#view() });
  }

  #show(words: string): void {
    this.#shell.show({ place: 'bench', moreOpen: false, words, progress: '', hint: '', bench: this.#view() });
  }

  /** Who comes to the bench has something in hand, and its first button under the next press. */
  async #toHand(): Promise<void> {
    const sheet = this.#shell.root.querySelector<HTMLElement & { updateComplete: Promise<unknown> }>('bench-sheet');
    await sheet?.updateComplete;
    sheet?.querySelector<HTMLElement>('.main')?.focus({ preventScroll: true });
  }

  #now(): TankDesk | DeepDesk {
    return this.#mode === 'tank' ? this.#tank : this.#mode === 'deep' ? this.#deep : this.#bottle;
  }

  #frame(nowMs: number): void {
    const passedS = this.#shell.window.document.hidden ? 0 : (nowMs - this.#lastMs) / 1000 || 0;
    this.#lastMs = nowMs;
    const { place, moreOpen } = this.#shell.view;
    if (place !== 'bench' || moreOpen) return;
    // What is asked before it is seen stands still.
    if (this.#lesson) this.#lesson.pass(Math.min(passedS, 0.1));
    else if (!this.#sketch.prompt) this.#now().pass(passedS);
    this.#shell.show({ bench: this.#view() });
  }

  /** A clicker walks a lesson from its first word to its last. */
  #key(event: KeyboardEvent): void {
    const { place, moreOpen, settings } = this.#shell.view;
    if (!this.#lesson || place !== 'bench' || moreOpen || event.repeat) return;
    if (usualPlace(event.code, settings.keys) !== 'PageDown') return;
    if (focusOf(this.#shell.root.ownerDocument.activeElement) === 'typing') return;
    event.preventDefault();
    this.#walkOn();
  }

  /** What came of a lesson is read to its end before a class goes on. */
  #walkOn(): void {
    const { root, view } = this.#shell;
    if (!this.#lesson) return;
    if (this.#lesson.done && readsOn(root)) return readOn(root, 1);
    if (this.#lesson.done && view.learn?.walk)
      return void root.dispatchEvent(new WishEvent({ kind: 'learn', ask: { do: 'show-next' } }));
    if (this.#lesson.done && view.projector)
      return void root.dispatchEvent(new WishEvent({ kind: 'place', place: 'learn' }));
    if (view.projector) this.#lesson.show();
    else this.#lesson.next();
    this.#shell.show({ bench: this.#view() });
  }

  /** Hands of a keyboard, wherever the focus is at the bench. */
  #hand(event: KeyboardEvent): void {
    const { place, moreOpen, settings, bench } = this.#shell.view;
    if (place !== 'bench' || moreOpen || !bench || event.defaultPrevented) return;
    const ask = benchAskOf(event, this.#shell.root.ownerDocument.activeElement, bench, settings.keys, this.#words);
    if (!ask) return;
    event.preventDefault();
    // A key that is held goes on carrying, and does nothing else.
    if (!event.repeat || ask.do === 'carry' || ask.do === 'depth') this.hear(ask);
  }

  #view(): BenchView {
    const seen = this.#lesson?.view(this.#shell.view.learn?.walk?.next ?? null) ?? this.#free();
    const { tank, deep } = seen;
    // In a lesson its task says what to do.
    const may = seen.prompt === null && !seen.lesson;
    const sentence = tank ? this.#words.tankSentence(tank, may) : deep ? this.#words.deepSentence(deep) : '';
    return { sentence, ...seen };
  }

  #free(): Omit<BenchView, 'sentence'> {
    const desk = this.#now();
    if (desk instanceof TankDesk) return { tank: desk.view(), deep: null, prompt: null, lesson: null, sketched: [] };
    const { prompt, points } = this.#mode === 'deep' ? this.#sketch : { prompt: null, points: [] };
    return { tank: null, deep: desk.view(), prompt, lesson: null, sketched: points };
  }
}
