import type { BenchAsk } from '../bench/index.ts';
import {
  BenchInHand,
  benchDone,
  benchPrompt,
  showingHands,
  sketchOf,
  tryingNow,
  type BenchLesson,
  type ScriptedHands,
} from '../lesson/bench.ts';
import type { Answer } from '../lesson/index.ts';
import type { BenchView } from '../panels/index.ts';
import { keepBenchRun, leftBenchRun } from './bench-memory.ts';
import { benchResultOf, keepBenchResult } from './bench-result.ts';

/** A lesson at the bench, kept for as long as the tab lives. */
export class LessonAtBench {
  readonly #view: Window;
  readonly #hand: BenchInHand;
  /** Hands that show what is to be tried; null while it is tried by somebody. */
  #shown: ScriptedHands | null = null;
  #wasShown = false;
  #told = false;
  #trouble = '';

  /** @param resumed goes on where it was left, the things as the lesson puts them */
  constructor(view: Window, lesson: BenchLesson, resumed: boolean) {
    this.#view = view;
    const left = resumed ? leftBenchRun(view, lesson) : undefined;
    this.#hand = new BenchInHand(lesson, left?.run);
    this.#wasShown = left?.wasShown ?? false;
    this.#keep();
  }

  get lesson(): BenchLesson {
    return this.#hand.lesson;
  }

  /** Nothing is left to ask or to try. */
  get done(): boolean {
    return benchDone(this.#hand.lesson, this.#hand.run);
  }

  hear(ask: BenchAsk): void {
    this.#shown = null;
    this.#hand.hear(ask);
  }

  pass(seconds: number): void {
    const { step } = this.#hand.run;
    this.#shown?.work();
    this.#hand.pass(seconds);
    if (this.#hand.run.step === step) return;
    this.#shown = null;
    this.#keep();
  }

  answer(answer: Answer): void {
    if (!benchPrompt(this.lesson, this.#hand.run)) return;
    this.#hand.answer(answer);
    this.#keep();
  }

  goOn(): void {
    this.#shown = null;
    this.#hand.passOver();
    this.#keep();
  }

  /** What a clicker's *next* does before a class: as for one alone, but what is to be tried is shown. */
  show(): void {
    const now = tryingNow(this.lesson, this.#hand.run);
    if (!now || this.#shown) return this.next();
    this.#shown = showingHands(this.#hand, now.step.id);
    this.#wasShown = true;
    this.#keep();
  }

  /** What a clicker's *next* does: reads on, passes a question over, lets go, goes on. */
  next(): void {
    if (benchPrompt(this.lesson, this.#hand.run)) return this.answer(null);
    const { tank, deep } = this.#hand.seen();
    const held = tank ? tank.hand !== null : deep?.heldM !== null;
    if (held && tryingNow(this.lesson, this.#hand.run)) this.hear({ do: 'let-go' });
    else this.goOn();
  }

  /** Everything that the page shows but the sentence. Where it turns is not drawn before it was asked for. */
  view(walkNext: string | null): Omit<BenchView, 'sentence'> {
    const { lesson, run } = this.#hand;
    const { tank, deep } = this.#hand.seen();
    const { done } = this;
    const now = tryingNow(lesson, run);
    const stateOf = (at: number, met: number) => (at < met ? 'met' : at === met ? 'now' : 'ahead');
    const prompt = benchPrompt(lesson, run);
    // Arrows and the hill would tell what is asked; where the bottle turns is not drawn before its lesson is over.
    const hidesHill = prompt !== null || (!done && deep?.kind === 'bottle');
    const { verdict, demands, predictions } = this.#hand.result();
    const question = lesson.steps.find((step) => step.kind === 'ask')?.question ?? '';
    return {
      tank: tank && prompt ? { ...tank, forces: false } : tank,
      deep: deep && hidesHill ? { ...deep, noReturnM: null, hillJ: [] } : deep,
      prompt,
      sketched: sketchOf(lesson, run),
      lesson: {
        id: lesson.id,
        title: lesson.title,
        water: lesson.bench.set === 'block',
        trying: now && {
          title: now.step.title,
          hint: now.step.hint,
          shown: this.#shown !== null,
          aims: now.step.each.map(({ says }, i) => ({ says, state: stateOf(i, now.tried.met) })),
        },
        walkNext,
        came: done
          ? {
              passed: verdict === 'pass',
              demands,
              predictions,
              question,
              waterAdds: lesson.waterAdds,
              trouble: this.#trouble,
            }
          : null,
      },
    };
  }

  #keep(): void {
    const { lesson, run } = this.#hand;
    keepBenchRun(this.#view, run, this.#wasShown);
    // What was shown is nobody's result.
    if (!this.done || this.#told || this.#wasShown) return;
    this.#told = true;
    const result = benchResultOf(lesson, run, this.#hand.result(), new Date().toISOString());
    void keepBenchResult(result).then((words) => (this.#trouble = words));
  }
}
