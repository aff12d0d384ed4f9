import { rigOf, type Setup } from '../diver/index.ts';
import type { Lesson } from '../lesson/index.ts';
import type { KeptDive } from '../store/index.ts';
import type { FreeDiver } from './dives.ts';
import { Flight } from './flight.ts';
import type * as Learning from './learning.ts';
import type { LessonFlight } from './lesson-flight.ts';
import { readySetup } from './setups.ts';

/** What a lesson comes back by. */
export interface Lessons extends Pick<typeof Learning, 'LessonFlight'> {
  /** A lesson by its id; null where it is gone. */
  find(id: string): Promise<Lesson | null>;
}

/** A kept dive as it can be taken in hand again. */
export interface BackInHand {
  readonly flight: Flight;
  readonly lesson: LessonFlight | null;
  readonly free: FreeDiver;
  /** It ends on the very bits that it ended on when it was kept. */
  readonly same: boolean;
}

/**
 * Dives a kept dive again. A lesson is rebuilt by giving the answers again while the dive goes through it; where the lesson is
 * gone, or takes other answers now, the dive comes back as free practice.
 * @param learning fetches the lessons
 */
export async function backInHand(kept: KeptDive, learning: () => Promise<Lessons>): Promise<BackInHand> {
  const lesson = kept.lessonId === null ? null : await lessonOf(kept, kept.lessonId, await learning());
  const flight = lesson?.flight ?? Flight.ofRun(kept.run);
  const setup = lesson ? null : await setupOf(kept);
  const letGo = kept.letGoM === null ? {} : { letGoM: kept.letGoM };
  const free = { rig: kept.run.rig, id: setup ? kept.setupId : '', setup, ...letGo };
  return { flight, lesson, free, same: flight.dive.hash() === kept.endHash };
}

async function lessonOf(kept: KeptDive, id: string, { find, LessonFlight }: Lessons): Promise<LessonFlight | null> {
  const lesson = await find(id);
  if (!lesson) return null;
  try {
    return LessonFlight.resumed(lesson, kept.run, kept.given, { attempt: kept.attempt ?? 1 });
  } catch {
    return null;
  }
}

/** The setup that a dive was begun with; null where it cannot be had, and the dive stands alone. */
async function setupOf({ setup, setupId }: KeptDive): Promise<Setup | null> {
  try {
    if (setupId) return await readySetup(setupId);
    // A damaged one gives no rig.
    if (setup) rigOf(setup);
    return setup;
  } catch {
    return null;
  }
}
