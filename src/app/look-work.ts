import type { Rig } from '../diver/index.ts';
import type { Controls, DiveState } from '../dive/index.ts';
import {
  recoveryMap,
  recovers,
  stopping,
  withMoreLead,
  type Reach,
  type RecoveryMap,
  type StoppingAsk,
  type StoppingForecast,
} from '../insight/index.ts';
import type { Across } from '../panels/index.ts';

/** A moment of which the stopping forecast or a recovery map is wanted: what takes longer than a frame has. */
export interface LookRequest {
  readonly rig: Rig;
  readonly state: Readonly<DiveState>;
  readonly controls: Controls;
  readonly ask: StoppingAsk;
  /** When it is, seconds since the start of the dive. */
  readonly nowS: number;
  readonly wanted: 'stops' | Across;
}

/** The map, and how deep each means recovers now and with less lead. */
export interface MapAnswer {
  readonly kind: 'map';
  readonly map: RecoveryMap;
  readonly reaches: readonly Reach[];
  /** Null where there is not so much lead to take off. */
  readonly lighter: readonly Reach[] | null;
}

/** The stopping forecast of a moment. */
export interface StopsAnswer {
  readonly kind: 'stops';
  readonly forecast: StoppingForecast;
  readonly nowS: number;
}

export type LookAnswer = MapAnswer | StopsAnswer;

/** Lead taken off for comparison, kilograms. */
export const LESS_LEAD_KG = 4;
/** So much lead besides must be left, kilograms. */
const LEFT_KG = 0.5;

/** Answers a request; some milliseconds of work, or some hundredths of a second for a map. */
export function answerLook(request: LookRequest): LookAnswer {
  const { rig, state, controls, ask, nowS, wanted } = request;
  if (wanted === 'stops') return { kind: 'stops', forecast: stopping(rig, state, controls, ask), nowS };
  const wornKg = rig.lead.reduce((kg, { massKg }) => kg + massKg, 0);
  const lighter = wornKg > LESS_LEAD_KG + LEFT_KG ? withMoreLead(rig, -LESS_LEAD_KG) : null;
  return {
    kind: 'map',
    map: recoveryMap(rig, state, controls, ask, { across: wanted }),
    reaches: recovers(rig, state, controls, ask),
    lighter: lighter ? recovers(lighter, state, controls, ask) : null,
  };
}
