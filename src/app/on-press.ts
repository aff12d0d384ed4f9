import { TICKS_PER_CHANGE, type Controls, type Dive } from '../dive/index.ts';
import type { Act } from '../panels/index.ts';
import { steer, type Hands } from './hands.ts';

/** What was held, and the hands, when it was last said what a diver does. */
export interface Said {
  readonly held: ReadonlySet<Act>;
  readonly hands: Hands;
}

/**
 * What hands on a dive do from its present tick on: said on every twentieth of a second, and on any tick on which something was pressed
 * or let go since.
 * @param said what this gave the last time; null where a dive was only taken over
 * @returns null where nothing is to be said
 */
export function saidOn(
  dive: Dive,
  hands: Hands,
  held: ReadonlySet<Act>,
  said: Said | null,
): (Said & { readonly controls: Controls }) | null {
  // A dive need not begin at tick 0.
  const into = (dive.tick - dive.recording.startTick) % TICKS_PER_CHANGE;
  if (into > 0 && (!said || (said.hands === hands && isSame(said.held, held)))) return null;
  const before = into > 0 ? said?.held : undefined;
  return { held, ...steer(hands, held, dive.state, dive.rig, TICKS_PER_CHANGE - into, before) };
}

function isSame(one: ReadonlySet<Act>, other: ReadonlySet<Act>): boolean {
  return one === other || (one.size === other.size && [...one].every((act) => other.has(act)));
}
