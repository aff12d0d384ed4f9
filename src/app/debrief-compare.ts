import type { Dive, Run } from '../dive/index.ts';
import { flownUnder, flyingLesson, type Answer, type Lesson, type Mark, type StepDemand } from '../lesson/index.ts';
import type { CompareChoice } from '../panels/index.ts';
import { PILOTS, PILOT_NAMES, type PilotName } from '../pilot/index.ts';
import type { KeptSummary, Store } from '../store/index.ts';
import { LessonFlight } from './lesson-flight.ts';

/** Another flight of a lesson. */
export interface Beside {
  readonly name: string;
  /** Who that is, in a sentence. */
  readonly says: string;
  readonly dive: Dive;
  readonly marks: readonly Mark[];
}

/** A pilot flies always the same for a start. */
const SEED = 1;
/** For so long a page may be kept from its frames, milliseconds. */
const SLICE_MS = 8;
/** How a pilot's line is named, here and where it was kept with a dive. */
const SIMULATED = ', simulated';

const WHEN = new Intl.DateTimeFormat('en-GB', { dateStyle: 'medium', timeStyle: 'short' });

/** Whoever can be flown beside a lesson: divers of a certain skill and with habits, and the person's own kept flights of it. */
export function choicesOf(lessonId: string, kept: readonly KeptSummary[]): CompareChoice[] {
  const pilots = PILOT_NAMES.filter((name) => ['diver', 'habit'].includes(PILOTS[name].sort));
  const flights = kept.filter((one) => one.lessonId === lessonId && !one.damaged && !one.inHand);
  return [
    ...pilots.map((name): CompareChoice => ({ id: `pilot:${name}`, name, sort: 'pilot' })),
    ...flights.map(({ id, savedMs }): CompareChoice => ({
      id: `dive:${id}`,
      name: WHEN.format(savedMs),
      sort: 'flight',
    })),
  ];
}

/** The choice that a ghost was made by; empty where it is none of ours. */
export function choiceOfGhost(name: string | undefined): string {
  return name?.endsWith(SIMULATED) ? `pilot:${name.slice(0, -SIMULATED.length)}` : '';
}

/**
 * Flies what was chosen from the very start of a flight, or brings it back, in slices that leave the page its frames.
 * @param wanted whether it is still wanted
 * @returns null when it is not wanted any more
 * @throws {Error} with a sentence when it cannot be compared
 */
export async function besideOf(
  flown: LessonFlight,
  choice: string,
  store: Store,
  wanted: () => boolean,
): Promise<Beside | null> {
  const [sort, name = ''] = choice.split(':');
  if (sort === 'dive') return keptFlight(flown, Number(name), store);
  const pilot = PILOT_NAMES.find((one) => one === name);
  if (!pilot) throw new Error('There is no such simulated diver.');
  return flownBy(pilot, flown, wanted);
}

async function flownBy(
  pilot: PilotName,
  { lesson, flight }: LessonFlight,
  wanted: () => boolean,
): Promise<Beside | null> {
  const flying = flyingLesson(lesson, flight.rig, pilot, SEED, flight.dive.run().start);
  let fromMs = performance.now();
  for (;;) {
    const next = flying.next();
    if (next.done) {
      const { dive, marks, demands } = next.value;
      return {
        name: `${pilot}${SIMULATED}`,
        says: `A simulated diver. ${PILOTS[pilot].does}${metWords(demands)}`,
        dive,
        marks,
      };
    }
    if (performance.now() - fromMs < SLICE_MS) continue;
    await new Promise((resolve) => setTimeout(resolve, 0));
    if (!wanted()) return null;
    fromMs = performance.now();
  }
}

async function keptFlight(flown: LessonFlight, id: number, store: Store): Promise<Beside> {
  const { run, given, attempt = 1, savedMs } = await store.read(id);
  if (flownUnder(flown.lesson, run.rig) !== flown.under)
    throw new Error('It was flown in another kit or with other tasks: it is not compared.');
  const other = resumed(flown.lesson, run, given, attempt);
  if (!other.view().done) throw new Error('It was not flown to its end: there is nothing to compare yet.');
  const when = WHEN.format(savedMs);
  const { marks, demands } = other.debrief().result;
  return { name: when, says: `Your flight of ${when}.${metWords(demands)}`, dive: other.flight.dive, marks };
}

/** What the steps of a lesson asked for beside its marks. */
function metWords(demands: readonly StepDemand[]): string {
  if (demands.length === 0) return '';
  const met = demands.filter((one) => one.met).length;
  return ` Of ${demands.length} that the steps ask for, ${met} met.`;
}

function resumed(lesson: Lesson, run: Run, given: readonly Answer[], attempt: number): LessonFlight {
  try {
    return LessonFlight.resumed(lesson, run, given, { attempt });
  } catch {
    throw new Error('The lesson asks otherwise by now: it is not compared.');
  }
}
