import type { Rig } from '../diver/index.ts';
import { Dive, TICKS_PER_CHANGE, TICKS_PER_S, startState, type Recording } from '../dive/index.ts';
import { withMoreLead } from '../insight/index.ts';
import { STANDARD_GRAVITY_MPS2 } from '../water/index.ts';
import { lessonStart } from './begin.ts';
import type { Lesson } from './lesson.ts';
import { ROWS_PER_S } from './rows.ts';
import { flyerOf } from './script.ts';
import type { WatchStep } from './watch.ts';

/** A moment at which a dive that is shown is frozen: what is said, and what the instruments read. */
export interface Frame {
  readonly atS: number;
  readonly words: string;
  readonly depthM: number;
  /** Over the last 3 s, positive down. */
  readonly speedMpmin: number;
  readonly jacketL: number;
  /** Net pull at mid-breath, kilograms, up positive. */
  readonly netKg: number;
}

/** A dive that is shown, up to its last freeze: the same every time. */
export function watchedDive(
  lesson: Lesson,
  rig: Rig,
  step: WatchStep,
): { readonly dive: Dive; readonly frames: Frame[]; readonly line: (readonly [atS: number, depthM: number])[] } {
  const worn = withMoreLead(rig, step.moreLeadKg);
  const pilot = flyerOf(step.by, worn, 1);
  const dive = new Dive(worn, startState(worn, lessonStart(lesson, worn, 1, step.start)));
  const endS = Math.max(...step.freezes.map(({ atS }) => atS));
  const ends = dive.tick + Math.ceil(endS * TICKS_PER_S);
  while (dive.tick < ends) {
    const task = step.aimM > 0 ? { kind: 'hold' as const, depthM: step.aimM } : { kind: 'surface' as const };
    dive.steer(pilot.decide(dive.state, task));
    dive.advance(TICKS_PER_CHANGE);
  }
  const frames = step.freezes.map(({ atS, words }) => frameAt(dive.recording, atS, words));
  return { dive, frames, line: lineOf(dive.recording) };
}

/** Points of its line, metres each second; more often where the dive is short. */
function lineOf(recording: Recording): (readonly [atS: number, depthM: number])[] {
  const every = recording.rows > 60 * ROWS_PER_S ? ROWS_PER_S : 2;
  const points: (readonly [number, number])[] = [];
  for (let row = 0; row < recording.rows; row += every) points.push([row / ROWS_PER_S, recording.at(row, 'depthM')]);
  return points;
}

function frameAt(recording: Recording, atS: number, words: string): Frame {
  const row = Math.min(Math.round(atS * ROWS_PER_S), recording.rows - 1);
  const from = Math.max(0, row - 3 * ROWS_PER_S);
  const depthM = recording.at(row, 'depthM');
  const lastedS = (row - from) / ROWS_PER_S;
  const speedMps = lastedS > 0 ? (depthM - recording.at(from, 'depthM')) / lastedS : recording.at(row, 'speedMps');
  const jacketL = recording.at(row, 'jacketM3') * 1e3;
  return {
    atS,
    words,
    depthM,
    speedMpmin: speedMps * 60,
    jacketL,
    netKg: recording.at(row, 'midNetN') / STANDARD_GRAVITY_MPS2,
  };
}
