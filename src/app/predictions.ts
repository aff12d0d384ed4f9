import { TICKS_PER_S } from '../dive/index.ts';
import {
  foreseen,
  letterOf,
  saidInWater,
  saidWords,
  shownNumber,
  type Answer,
  type Foreseen,
  type LockedAnswer,
  type PredictStep,
  type Prompt,
  type PromptScale,
  type ShownNumber,
} from '../lesson/index.ts';
import { WishEvent, type QuestionSheet } from '../panels/index.ts';
import { metresFor, type Asked, type Said, type Stage, type StageView } from '../stage/index.ts';
import { CountedMemory } from './counted-memory.ts';
import type { Dives } from './dives.ts';
import type { LessonFlight } from './lesson-flight.ts';
import { UP_MPS } from './rates.ts';
import type { Presenting } from './presenting.ts';
import type { Shell } from './shell.ts';

/** What predictions may do with the program. */
export interface Predicting {
  readonly shell: Shell;
  readonly dives: Dives;
  readonly stage: Pick<Stage, 'depthToY' | 'secondsToX' | 'scaleX' | 'pxPerM'>;
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
    const sheet = shell.root.querySelector<QuestionSheet>('question-sheet');
    const prompt = dives.lesson?.view().prompt ?? this.#showing?.prompt ?? null;
    const asked = prompt && this.#asked(prompt, sheet?.prompt?.id === prompt.id ? sheet.chosen : null, view.depthM);
    const said = dives.lesson ? this.#saidIn(dives.lesson) : this.#saidOfClass();
    queueMicrotask(() => this.#tellSheet(asked, view.nowS));
    const shown = { ...view, asked, said, coveredPx: Math.max(view.coveredPx ?? 0, prompt ? this.#coveredPx() : 0) };
    this.#announce(said, view.nowS);
    return { ...shown, metresShown: this.#metres(shown, asked, said) };
  }

  get #showing() {
    return this.#program.later.presenting?.showing ?? null;
  }

  /** What is asked as it is drawn, with what was chosen so far. */
  #asked(prompt: Prompt, chosen: Answer, depthM: number): Asked | null {
    const flight = this.#program.dives.lesson;
    if (!flight) return this.#showing?.foreseen ? askedOf(this.#showing.foreseen, prompt, chosen) : null;
    const step = flight.lesson.steps.find((one): one is PredictStep => one.kind === 'predict' && one.id === prompt.id);
    if (!step) return null;
    const number = shownNumber(step);
    if (number) return 'least' in prompt ? numberAsked(number, prompt, chosen, depthM) : null;
    const drawn = this.#foreseenIn(flight, step);
    return drawn && askedOf(drawn, prompt, chosen);
  }

  #foreseenIn(flight: LessonFlight, step: PredictStep): Foreseen | null {
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

  /** Height of the water's foot that is covered from the diver on to the right, where what is asked is drawn. */
  #coveredPx(): number {
    const { shell, stage } = this.#program;
    const water = shell.root.querySelector('#stage')!.getBoundingClientRect();
    const nowX = water.left + stage.secondsToX(this.#program.dives.flight.dive.tick / TICKS_PER_S);
    const cards = [...shell.root.querySelectorAll('question-sheet section, start-note aside')]
      .map((card) => card.getBoundingClientRect())
      // What hangs from the head of a small page covers no foot.
      .filter(({ left, right, top }) => left < water.right && right > nowX && top > water.top + water.height / 4);
    return Math.max(0, ...cards.map(({ top }) => water.bottom - top));
  }

  /** Letters for the answers, and the place of the pin once it was drawn. */
  #tellSheet(asked: Asked | null, nowS: number): void {
    const { shell, stage } = this.#program;
    const sheet = shell.root.querySelector<QuestionSheet>('question-sheet');
    if (!sheet) return;
    sheet.drawn = !asked ? null : asked.slope ? 'slope' : (asked.overS ?? 'scale');
    const water = shell.root.querySelector('#stage')!.getBoundingClientRect();
    const pin = asked?.pin && {
      x: Math.round(water.left + (asked.overS === null ? stage.scaleX : stage.secondsToX(nowS + asked.overS))),
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

function askedOf({ fromM, overS, lines }: Foreseen, prompt: Prompt, chosen: Answer): Asked | null {
  if (prompt.kind === 'place') {
    // Until the sheet is there its middle is not known.
    if (typeof chosen !== 'number') return null;
    return { fromM, overS, lines: [], chosen: '', pin: pinOf(prompt, chosen, ` in ${overS} s`) };
  }
  const at = lines.findIndex(({ id }) => id === chosen);
  return { fromM, overS, lines, chosen: at < 0 ? '' : letterOf(at), pin: null };
}

/** A number as it is set: on the depth scale, or as a slope beside the one that a class knows by heart. */
function numberAsked(shown: ShownNumber, prompt: PromptScale, chosen: Answer, depthM: number): Asked | null {
  if (typeof chosen !== 'number') return null;
  const asked = { overS: null, lines: [], chosen: '', pin: null };
  if (shown.as === 'depth') return { ...asked, fromM: shown.fromM ?? depthM, pin: pinOf(prompt, chosen, '') };
  const slope = {
    mps: (shown.way * chosen) / 60,
    words: `${chosen} m/min`,
    besideMps: shown.way * UP_MPS,
    besideWords: `${Math.round(UP_MPS * 60)} m/min`,
  };
  return { ...asked, fromM: shown.fromM, slope };
}

function pinOf({ least, most, step }: PromptScale, atM: number, more: string): Asked['pin'] {
  const words = `${atM.toFixed(Number.isInteger(step) ? 0 : 1)} m${more}`;
  return { atM, leastM: least, mostM: most, words };
}

/** Gives a program its predictions in the water. */
export function keepPredictions(program: Predicting): void {
  new Predictions(program);
}
