import { rigOf } from '../diver/index.ts';
import type { Run } from '../dive/index.ts';
import {
  advanceLesson,
  answerPrompt,
  beginLesson,
  begunSteps,
  debriefQuestion,
  demonstrates,
  demonstratorDoes,
  flownUnder,
  judgeLesson,
  limitsInForce,
  lessonSetup,
  lessonStart,
  lineEvidence,
  meddled,
  predictionDemand,
  predictionOutcomes,
  promptOf,
  withPredictions,
  taskOf,
  viewLesson,
  watchedDive,
  type Answer,
  type Demonstrator,
  type Lesson,
  type LessonResult,
  type LessonRun,
  type LessonView,
  type Prompt,
} from '../lesson/index.ts';
import type { Act, Debrief } from '../panels/index.ts';
import type { StageView } from '../stage/index.ts';
import { Flight } from './flight.ts';
import { readySetup } from './setups.ts';
import type { LeftWatch } from './watch-memory.ts';

/** How a lesson is flown. */
export interface FlownHow {
  /** 1 with all hints and gauges; with more of them they fade. */
  readonly attempt?: number;
  /** A simulated diver, whose flight is nobody's result. */
  readonly by?: Demonstrator | null;
  /** Whether questions are asked although a simulated diver flies, who answers none: a class does. */
  readonly asked?: boolean;
}

/** How far a watched lesson has come. */
type Watched = Pick<LeftWatch, 'given' | 'ticks' | 'under'>;

const NOTHING_HELD: ReadonlySet<Act> = new Set();

/** A simulated diver does the same each time that a lesson is watched. */
const WATCHED_SEED = 1;

/** A lesson that is being flown: its dive and its run, which follows the recording row by row. */
export class LessonFlight {
  readonly lesson: Lesson;
  readonly flight: Flight;
  readonly by: Demonstrator | null;
  #passesOver: boolean;
  #run: LessonRun;
  readonly #given: Answer[] = [];
  #shown: Prompt | null = null;

  private constructor(lesson: Lesson, flight: Flight, { attempt = 1, by = null, asked = true }: FlownHow) {
    this.lesson = lesson;
    this.flight = flight;
    this.by = by;
    this.#passesOver = by !== null && !asked;
    this.#run = beginLesson(lesson, attempt);
    const pilot = by === null ? null : demonstrates(by, lesson, flight.rig, WATCHED_SEED);
    let wanted = flight.dive.controls;
    flight.meddle = (hands, state) => {
      // A press of somebody who only watches makes no pilot decide more often.
      if (!pilot) wanted = hands;
      else if (flight.dive.onTwentieth) wanted = pilot.decide(state, taskOf(lesson, this.#run));
      return meddled(begunSteps(lesson, this.#run), flight.rig, flight.dive.recording, wanted, state);
    };
  }

  /** The lesson at its beginning, its setup fetched. */
  static async begin(lesson: Lesson, how: FlownHow = {}): Promise<LessonFlight> {
    const rig = rigOf(lessonSetup(lesson, await readySetup(lesson.setup.ready)));
    const [chance] = crypto.getRandomValues(new Uint32Array(1));
    const seed = how.by ? WATCHED_SEED : chance;
    const begun = new LessonFlight(lesson, new Flight(rig, lessonStart(lesson, rig, seed)), how);
    // Whoever only watches is asked nothing, from the first moment on.
    if (how.by) begun.advance();
    return begun;
  }

  /**
   * A lesson that was left in the middle: its dive again, and its answers again where they were given.
   * @throws {Error} when the lesson does not take them: it is another one by now
   */
  static resumed(lesson: Lesson, run: Run, given: readonly Answer[], how: FlownHow = {}): LessonFlight {
    const resumed = new LessonFlight(lesson, Flight.ofRun(run), how);
    const passesOver = resumed.#passesOver;
    // What was answered was answered by the person, whoever flies on.
    resumed.#passesOver = false;
    resumed.advance();
    for (const answer of given) resumed.answer(answer);
    resumed.#passesOver = passesOver;
    resumed.advance();
    return resumed;
  }

  /**
   * A lesson that a simulated diver flew, up to where it was left: he flies it again, and the same is answered.
   * @throws {Error} when the lesson does not take the answers, or is flown under something else by now
   */
  static async watchedAgain(lesson: Lesson, how: FlownHow, left: Watched): Promise<LessonFlight> {
    const again = await LessonFlight.begin(lesson, how);
    if (again.under !== left.under) throw new Error('watchedAgain: flown under something else');
    const { dive } = again.flight;
    const given = [...left.given];
    for (let goesOn = true; goesOn;) {
      if (again.view().prompt) {
        goesOn = given.length > 0;
        if (goesOn) again.answer(given.shift()!);
      } else {
        const ticks = again.view().done ? 0 : left.ticks - dive.tick;
        goesOn = ticks > 0;
        if (goesOn)
          again.flight.run(
            ticks,
            () => NOTHING_HELD,
            () => again.advance(),
          );
      }
    }
    return again;
  }

  /** All that was answered so far, in order; what was only to be read counts too. */
  get given(): readonly Answer[] {
    return this.#given;
  }

  /** Predictions that can no longer be changed. */
  get locked(): LessonRun['answers'] {
    return this.#run.answers;
  }

  /** Which flight of the lesson it is, as its hints and gauges have it. */
  get attempt(): number {
    return this.#run.attempt;
  }

  /** What it is flown under: only flights of the same are compared. */
  get under(): string {
    return flownUnder(this.lesson, this.flight.rig);
  }

  /** Takes the rows that are new. @returns whether the dive goes on: not while something is asked, not when all is flown */
  advance(): boolean {
    this.#run = advanceLesson(this.lesson, this.#run, this.flight.dive.recording);
    while (this.#passesOver && promptOf(this.lesson, this.#run)) {
      this.#run = answerPrompt(this.lesson, this.#run, null);
      this.#run = advanceLesson(this.lesson, this.#run, this.flight.dive.recording);
    }
    return this.#run.ended === null && this.view().prompt === null;
  }

  answer(answer: Answer): void {
    this.#run = answerPrompt(this.lesson, this.#run, answer);
    this.#given.push(answer);
    this.advance();
  }

  view(): LessonView {
    const view = viewLesson(this.lesson, this.#run, this.flight.dive.recording);
    return view.prompt?.kind === 'watch' ? { ...view, prompt: this.#watched(view.prompt) } : view;
  }

  /** A dive that is shown, with what it came to; reckoned once. */
  #watched(prompt: Extract<Prompt, { kind: 'watch' }>): Prompt {
    if (this.#shown?.id === prompt.id) return this.#shown;
    const step = this.lesson.steps.find((one) => one.kind === 'watch' && one.id === prompt.id);
    if (step?.kind !== 'watch') return prompt;
    const { frames, line } = watchedDive(this.lesson, this.flight.rig, step);
    this.#shown = { ...prompt, frames, line };
    return this.#shown;
  }

  /** Kind of the goal that is flown or asked about now. */
  goal(): 'float' | 'travel' | 'hold' {
    const step = this.lesson.steps.slice(this.#run.step).find((next) => next.kind === 'fly');
    return step?.kind === 'fly' && step.goal.kind !== 'meet' ? step.goal.kind : 'hold';
  }

  /** Rates that were in force, each from the start of its phase on: the line keeps what it was drawn under. */
  limitsBefore(): NonNullable<StageView['limitsBefore']> {
    return this.view().phases.flatMap(({ id, fromS }) => {
      const step = this.lesson.steps.find((one) => one.kind === 'fly' && one.id === id);
      if (fromS === null || step?.kind !== 'fly') return [];
      const { upMpmin, downMpmin } = step.limits;
      return [{ fromS, limits: { upMps: perS(upMpmin), downMps: perS(downMpmin) } }];
    });
  }

  debrief(): Debrief {
    const { rig, dive } = this.flight;
    const flown = { rig, recording: dive.recording, changes: dive.changes };
    const judged = judgeLesson(this.lesson, this.#run, flown);
    const predictions = predictionOutcomes(this.lesson, rig, this.#run);
    const result = withPredictions(judged, predictionDemand(this.lesson, predictions));
    // Who was asked nothing has passed nothing over.
    const wasAsked = !this.#passesOver || predictions.some(({ said }) => said !== null);
    return {
      lesson: this.lesson,
      result,
      moments: momentsOf(result),
      line: lineEvidence(this.lesson, this.#run, flown, judged.marks),
      predictions: wasAsked ? predictions : [],
      question: debriefQuestion(this.lesson, this.by !== null),
      limits: limitsInForce(
        this.lesson.markLimits,
        this.lesson.marks.map(({ mark }) => mark),
      ),
      attempt: this.attempt,
      flownBy: this.by === null ? '' : demonstratorDoes(this.by),
      known: null,
      compare: { choices: [], chosen: '', name: '', says: '', marks: null },
    };
  }
}

function perS(perMinute: number | null): number | null {
  return perMinute === null ? null : perMinute / 60;
}

/** Rings on the line, at most. */
const MOST_MOMENTS = 7;

/** Moments that marks and habits point at, the costliest first come, in order of time. */
function momentsOf(result: LessonResult): number[] {
  const lost = result.marks.flatMap(({ parts }) => parts.filter(({ pointsLost }) => pointsLost > 0));
  const worst = [...lost].sort((a, b) => b.pointsLost - a.pointsLost).map(({ atS }) => atS);
  const unmet = result.marks.flatMap(({ criteria }) => criteria.filter(({ met }) => !met).map(({ atS }) => atS));
  const all = [...result.habits.map(({ fromS }) => fromS), ...unmet, ...worst].filter((atS) => atS !== null);
  return [...new Set(all)].slice(0, MOST_MOMENTS).sort((a, b) => a - b);
}
