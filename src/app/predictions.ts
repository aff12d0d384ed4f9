import { TICKS_PER_S } from '../dive/index.ts';
import {
  foreseen,
  letterOf,
  saidInWater,
  saidWords,
  type Foreseen,
  type LockedAnswer,
  type PredictStep,
  type Prompt,
} from '../lesson/index.ts';
import { WishEvent, type QuestionSheet } from '../panels/index.ts';
import { metresFor, type Asked, type Said, type Stage, type StageView } from '../stage/index.ts';
import { CountedMemory } from './counted-memory.ts';
import type { Dives } from './dives.ts';
import type { LessonFlight } from './lesson-flight.ts';
import type { Presenting } from './presenting.ts';
import type { Shell } from './shell.ts';

/** What predictions may do with the program. */
export interface Predicting {
  readonly shell: Shell;
  readonly dives: Dives;
  readonly stage: Pick<Stage, 'depthToY' | 'secondsToX' | 'pxPerM'>;
  readonly later: { readonly presenting: Presenting | null };
  predicted: (view: StageView) => StageView;
  refresh(): void;
}

/** The moment of a prediction is told to a row of the recording, seconds. */
const ROW_S = 0.1 + 1e-6;

/** Brings predictions into the water: what is asked while it stands, and what was said while the dive goes on over it. */
class Predictions {
  readonly #program: Predicting;
  readonly #counted: CountedMemory;
  /** Looked ahead once for each question of a flight. */
  readonly #foreseen = new WeakMap<LessonFlight, Map<string, Foreseen | null>>();
  readonly #said = new WeakMap<LockedAnswer, Said | null>();
  #heard = '';

  constructor(program: Predicting) {
    this.#program = program;
    const { root, window: view } = program.shell;
    this.#counted = new CountedMemory(view);
    program.predicted = (shown) => this.#onto(shown);
    // Before the answer is taken: afterwards nothing is asked any more.
    root.addEventListener('wish', (event) => event instanceof WishEvent && this.#hear(event), { capture: true });
    root.addEventListener('chosen', () => program.refresh());
  }

  #hear({ wish }: WishEvent): void {
    const { dives, later, shell } = this.#program;
    const { prompt } = shell.view;
    if (wish.kind !== 'answer' || !prompt || !dives.lesson) return;
    const hands = shell.view.projector ? (later.presenting?.handsFor(wish.answer) ?? 0) : 0;
    this.#counted.keep(dives.lesson.lesson.id, prompt.id, hands);
  }

  #onto(view: StageView): StageView {
    const { shell, dives } = this.#program;
    const { place } = shell.view;
    if (place !== 'lesson' && place !== 'fly' && place !== 'debrief') return view;
    const drawn = dives.lesson ? this.#askedIn(dives.lesson) : (this.#showing?.foreseen ?? null);
    const sheet = shell.root.querySelector<QuestionSheet>('question-sheet');
    const prompt = dives.lesson?.view().prompt ?? this.#showing?.prompt ?? null;
    const asked = drawn && prompt ? askedOf(drawn, prompt, sheet) : null;
    const said = dives.lesson ? this.#saidIn(dives.lesson) : this.#saidOfClass();
    queueMicrotask(() => this.#tellSheet(asked, view.nowS));
    const shown = { ...view, asked, said, coveredPx: Math.max(view.coveredPx ?? 0, prompt ? this.#coveredPx() : 0) };
    this.#announce(said, view.nowS);
    return { ...shown, metresShown: this.#metres(shown, asked, said) };
  }

  get #showing() {
    return this.#program.later.presenting?.showing ?? null;
  }

  #askedIn(flight: LessonFlight): Foreseen | null {
    const { prompt } = flight.view();
    const step = flight.lesson.steps.find((one): one is PredictStep => one.kind === 'predict' && one.id === prompt?.id);
    if (!step) return null;
    let known = this.#foreseen.get(flight);
    if (!known) this.#foreseen.set(flight, (known = new Map()));
    if (!known.has(step.id)) known.set(step.id, foreseen(flight.lesson, flight.flight.rig, step));
    return known.get(step.id) ?? null;
  }

  #saidIn({ lesson, flight, locked }: LessonFlight): Said[] {
    const { rig, dive } = flight;
    return locked.flatMap((one) => {
      if (!this.#said.has(one)) {
        const thenM = dive.recording.at(Math.min(one.atRow, dive.recording.rows - 1), 'depthM');
        this.#said.set(one, saidInWater(lesson, rig, one, thenM, this.#counted.hands(lesson.id, one.id)));
      }
      return this.#said.get(one) ?? [];
    });
  }

  /** What a class said of a demonstration: its run inks what comes. */
  #saidOfClass(): Said[] {
    const said = this.#showing?.said;
    const line = said?.foreseen.lines.find(({ id }) => id === said.id);
    if (!said || !line) return [];
    const {
      tick,
      hands,
      foreseen: { overS },
    } = said;
    return [{ fromS: tick / TICKS_PER_S, overS, depthsM: line.depthsM, words: saidWords(line, hands), came: null }];
  }

  /** Water that has to be in the picture: of what is asked, and of what was said as long as its moment lies ahead. */
  #metres(view: StageView, asked: Asked | null, said: readonly Said[]): number {
    const host = this.#program.shell.root.querySelector('#stage');
    const { projector, coveredPx = 0, metresShown, depthM, nowS } = view;
    const room = { widthPx: host?.clientWidth ?? 0, heightPx: host?.clientHeight ?? 0, coveredPx, projector };
    const ahead = said
      .filter(({ fromS, overS }) => fromS <= nowS && nowS < fromS + overS)
      .map(({ depthsM, overS, came }) => ({
        fromM: depthM,
        overS,
        lines: [{ letter: '', depthsM }, ...(came ? [{ letter: '', depthsM: came.depthsM }] : [])],
        pin: null,
      }));
    return Math.max(metresShown, ...[...(asked ? [asked] : []), ...ahead].map((one) => metresFor(one, depthM, room)));
  }

  /** Height of the water's foot that the question covers where the diver is. */
  #coveredPx(): number {
    const { shell, stage } = this.#program;
    const sheet = shell.root.querySelector('question-sheet section')?.getBoundingClientRect();
    const water = shell.root.querySelector('#stage')!.getBoundingClientRect();
    const nowX = water.left + stage.secondsToX(this.#program.dives.flight.dive.tick / TICKS_PER_S);
    if (!sheet || !(sheet.left < nowX && nowX < sheet.right)) return 0;
    return Math.max(0, water.bottom - sheet.top);
  }

  /** Letters for the answers, and the place of the pin once it was drawn. */
  #tellSheet(asked: Asked | null, nowS: number): void {
    const { shell, stage } = this.#program;
    const sheet = shell.root.querySelector<QuestionSheet>('question-sheet');
    if (!sheet) return;
    sheet.drawn = asked?.overS ?? null;
    const water = shell.root.querySelector('#stage')!.getBoundingClientRect();
    const pin = asked?.pin && {
      x: Math.round(water.left + stage.secondsToX(nowS + asked.overS)),
      y: Math.round(water.top + stage.depthToY(asked.pin.atM)),
      pxPerM: stage.pxPerM,
    };
    if (JSON.stringify(pin) !== JSON.stringify(sheet.pin)) sheet.pin = pin ?? null;
  }

  /** What came is said aloud once, when its moment has passed. */
  #announce(said: readonly Said[], nowS: number): void {
    const over =
      said.filter(({ fromS, overS, came }) => came && nowS >= fromS + overS - ROW_S).at(-1)?.came?.words ?? '';
    if (over === this.#heard) return;
    this.#heard = over;
    if (over) queueMicrotask(() => this.#program.shell.show({ spoken: over }));
  }
}

function askedOf({ fromM, overS, lines }: Foreseen, prompt: Prompt, sheet: QuestionSheet | null): Asked | null {
  const chosen = sheet?.prompt?.id === prompt.id ? sheet.chosen : null;
  if (prompt.kind === 'place') {
    const { least, most } = prompt;
    // Until the sheet is there its middle is not known.
    if (typeof chosen !== 'number') return null;
    return { fromM, overS, lines: [], chosen: '', pin: { atM: chosen, leastM: least, mostM: most } };
  }
  const at = lines.findIndex(({ id }) => id === chosen);
  return { fromM, overS, lines, chosen: at < 0 ? '' : letterOf(at), pin: null };
}

/** Gives a program its predictions in the water. */
export function keepPredictions(program: Predicting): void {
  new Predictions(program);
}
