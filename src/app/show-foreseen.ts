import { TICKS_PER_S, advance, copyState, type Moment } from '../dive/index.ts';
import { handsOff } from '../insight/index.ts';
import { FAN_DOTS, fanOf, mirroredEnds, rankedEnds, type Foreseen, type Leads } from '../lesson/index.ts';
import type { AskStep, RunStep } from './demonstration.ts';
import { speedChange, wayOf } from './show-truth.ts';

/** A line that bends from the present slope ends at least so far from the straight one, metres. */
const BENDS_M = 0.5;

/** A question of a demonstration as it is drawn in the water; null where its answers are not where one diver goes in a known time. */
export function foreseenRun(
  moment: Moment,
  { options, truth }: AskStep,
  { untilM, atMostS }: RunStep,
  neutralAtM: number | null,
): Foreseen | null {
  if (truth === 'speed' && untilM !== null) return speedsFrom(moment, options, untilM);
  if (truth !== 'way' || untilM !== null) return null;
  const comesM = comesFrom(moment, atMostS);
  const [fromM, endM] = [comesM[0]!, comesM[FAN_DOTS]!];
  const goes: Readonly<Record<string, Leads['goes']>> = {
    back: { toM: neutralAtM ?? fromM },
    stays: { toM: fromM },
    up: -1,
    down: 1,
  };
  const leads = options.map(({ id }) => ({ id, goes: goes[id] ?? { toM: fromM } }));
  const ends = mirroredEnds(fromM, leads, wayOf(fromM, endM, neutralAtM), endM);
  return { fromM, overS: atMostS, lines: fanOf(fromM, ends), comesM };
}

/** Depths of a diver for whom nobody acts, at equal steps of a time, metres. */
function comesFrom({ rig, state, controls }: Moment, overS: number): number[] {
  const ahead = copyState(state);
  const comesM = [ahead.depthM];
  const tickOf = (dot: number) => Math.round((overS * TICKS_PER_S * dot) / FAN_DOTS);
  for (let dot = 1; dot <= FAN_DOTS; dot++) {
    advance(rig, ahead, handsOff(controls), tickOf(dot) - tickOf(dot - 1));
    comesM.push(ahead.depthM);
  }
  return comesM;
}

/**
 * What his speed does on the way down to a depth, as lines that leave with the slope of the moment: the straight one keeps it and is
 * there when it says so, the others get steeper or flatter by as much, or come to rest.
 */
function speedsFrom(moment: Moment, options: AskStep['options'], untilM: number): Foreseen | null {
  const { depthM: fromM, speedMps } = moment.state;
  const overS = Math.round((untilM - fromM) / speedMps);
  if (!(speedMps > 0 && overS > 0)) return null;
  const comesM = comesFrom(moment, overS);
  const [leavesM, endM] = [speedMps * overS, comesM[FAN_DOTS]!];
  const steadyM = fromM + leavesM;
  const bendsM = Math.max(Math.abs(endM - steadyM), BENDS_M);
  const believed = [
    { id: 'stops', endM: fromM + leavesM / 2 },
    { id: 'slower', endM: steadyM - bendsM },
    { id: 'steady', endM: steadyM },
    { id: 'faster', endM: steadyM + bendsM },
  ];
  // The line bends evenly: its slope at the end differs from that at the beginning by twice what the mean differs.
  const ends = rankedEnds(believed, speedChange(leavesM + 2 * (endM - steadyM), leavesM), endM);
  const ordered = options.map(({ id }) => ends.find((end) => end.id === id) ?? { id, endM: fromM });
  return { fromM, overS, lines: fanOf(fromM, ordered, leavesM), comesM };
}
