import type { Rig } from '../diver/index.ts';
import type { Controls, DiveState } from '../dive/index.ts';
import {
  recoveryMap,
  recovers,
  withMoreLead,
  type Reach,
  type RecoveryMap,
  type StoppingAsk,
} from '../insight/index.ts';
import type { Across } from '../panels/index.ts';

/** A state whose recovery map is wanted. */
export interface MapRequest {
  readonly rig: Rig;
  readonly state: Readonly<DiveState>;
  readonly controls: Controls;
  readonly ask: StoppingAsk;
  readonly across: Across;
}

/** The map, and how deep each means recovers now and with less lead. */
export interface MapAnswer {
  readonly map: RecoveryMap;
  readonly reaches: readonly Reach[];
  /** Null where there is not so much lead to take off. */
  readonly lighter: readonly Reach[] | null;
}

/** Lead taken off for comparison, kilograms. */
export const LESS_LEAD_KG = 4;

/** Answers a request; some hundredths of a second of work. */
export function answerMap({ rig, state, controls, ask, across }: MapRequest): MapAnswer {
  const lighter = rig.lead.reduce((kg, { massKg }) => kg + massKg, 0) > LESS_LEAD_KG + 0.5;
  return {
    map: recoveryMap(rig, state, controls, ask, { across }),
    reaches: recovers(rig, state, controls, ask),
    lighter: lighter ? reachesLighter(rig, state, controls, ask) : null,
  };
}

function reachesLighter(rig: Rig, state: Readonly<DiveState>, controls: Controls, ask: StoppingAsk): Reach[] {
  return recovers(withMoreLead(rig, -LESS_LEAD_KG), state, controls, ask);
}
