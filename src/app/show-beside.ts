import type { Rig } from '../diver/index.ts';
import { startState, type Dive } from '../dive/index.ts';
import type { BeginStep, BesideDiver } from './demonstration.ts';
import type { Flight } from './flight.ts';
import type { Other } from './pair-difference.ts';
import { Second } from './pair-second.ts';
import { shownStart } from './show-start.ts';
import { secondsTo } from './show-truth.ts';

/** Two divers who are shown to a class: the one whose dive is in hand, and the second, who follows him by the same hands. */
export interface ShownBeside {
  readonly first: Flight;
  readonly rig: Rig;
  readonly other: Other;
  readonly second: Second;
}

/** The second diver of a step beside its first one, put into the water as he was. */
export function besideOf(first: Flight, rig: Rig, step: BeginStep, { words, back }: BesideDiver): ShownBeside {
  const begin = (dive: Dive) => ({ ...startState(rig, shownStart(rig, step)), tick: dive.kept[0]!.tick });
  const other = { rig, setup: null, moreJacketM3: 0, words, back };
  return { first, rig: first.rig, other, second: new Second({ rig, by: 'hands', begin }) };
}

/** How long each of the two took from a row on to a depth, seconds, null for who has not come there; and how far apart they are, metres. */
export function comparedTo({ first, second }: ShownBeside, fromRow: number, depthM: number, tookS: number) {
  second.follow(first.dive);
  const took = ({ recording, state }: Dive) => {
    const off = recording.at(Math.min(fromRow, recording.rows - 1), 'depthM') - depthM;
    // Who comes there with the last tick has no row of it yet.
    return secondsTo(recording, fromRow, depthM) ?? ((state.depthM - depthM) * off <= 0 ? tookS : null);
  };
  const apartM = Math.abs(first.dive.state.depthM - second.dive.state.depthM);
  return { firstS: took(first.dive), secondS: took(second.dive), apartM };
}
