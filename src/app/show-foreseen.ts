import { TICKS_PER_S, advance, copyState, type Moment } from '../dive/index.ts';
import { handsOff } from '../insight/index.ts';
import { FAN_DOTS, fanOf, mirroredEnds, type Foreseen, type Leads } from '../lesson/index.ts';
import type { AskStep, RunStep } from './demonstration.ts';
import { wayOf } from './show-truth.ts';

/** A question of a demonstration as it is drawn in the water; null where its answers are not where one diver goes in a known time. */
export function foreseenRun(
  { rig, state, controls }: Moment,
  { options, truth }: AskStep,
  { untilM, atMostS }: RunStep,
  neutralAtM: number | null,
): Foreseen | null {
  if (truth !== 'way' || untilM !== null) return null;
  const ahead = copyState(state);
  const fromM = ahead.depthM;
  const comesM = [fromM];
  for (let dot = 0; dot < FAN_DOTS; dot++) {
    advance(rig, ahead, handsOff(controls), (atMostS * TICKS_PER_S) / FAN_DOTS);
    comesM.push(ahead.depthM);
  }
  const goes: Readonly<Record<string, Leads['goes']>> = {
    back: { toM: neutralAtM ?? fromM },
    stays: { toM: fromM },
    up: -1,
    down: 1,
  };
  const leads = options.map(({ id }) => ({ id, goes: goes[id] ?? { toM: fromM } }));
  const ends = mirroredEnds(fromM, leads, wayOf(fromM, ahead.depthM, neutralAtM), ahead.depthM);
  return { fromM, overS: atMostS, lines: fanOf(fromM, ends), comesM };
}
