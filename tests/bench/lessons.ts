import { flyLesson } from '../../src/lesson/fly.ts';
import { trialLesson } from '../../src/lesson/trials.ts';
import { FOAM } from './divers.ts';

/** Flies lessons, each with a seed of its own, until so many minutes have been dived. @returns seconds dived */
export function flownLessons(minutes: number): number {
  let seconds = 0;
  for (let seed = 1; seconds < minutes * 60; seed++)
    seconds += flyLesson(trialLesson('ascent', seed), FOAM.rig, 'steady', seed).dive.tick / 120;
  return seconds;
}
