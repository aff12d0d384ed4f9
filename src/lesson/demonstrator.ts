import type { Rig } from '../diver/index.ts';
import { PILOTS, type Pilot, type PilotName } from '../pilot/index.ts';
import type { Lesson } from './lesson.ts';
import { flyerOf } from './script.ts';
import type { Flyer } from './watch.ts';

/** Who flies a lesson that is watched: a simulated diver, or the presses by which its proof shows that it can be done. */
export type Demonstrator = PilotName | 'script';

/** Whom a class is shown: the first of the lesson's proof who passes. */
export function demonstratorOf({ proof }: Lesson): Demonstrator {
  const passes = proof.find(({ comes }) => comes === 'pass');
  return passes ? (passes.pilot ?? 'script') : 'steady';
}

/** Those who fly, at the start of a dive. @throws {RangeError} when the lesson's proof has no presses that pass */
export function demonstrates(by: Demonstrator, lesson: Lesson, rig: Rig, seed: number): Pilot {
  const flyer: Flyer | undefined =
    by === 'script' ? lesson.proof.find(({ comes, script }) => comes === 'pass' && script) : { pilot: by };
  if (!flyer) throw new RangeError(`demonstrates: the proof of ${lesson.id} has no presses that pass`);
  return flyerOf(flyer, rig, seed);
}

/** What he does, and what is wrong with it: one sentence. */
export function demonstratorDoes(by: Demonstrator): string {
  return by === 'script' ? 'Does at fixed moments what is known to work.' : PILOTS[by].does;
}
