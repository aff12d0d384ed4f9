import { netForceN, type Rig } from '../diver/index.ts';
import { TICKS_PER_S, advance, copyState, type Controls, type DiveState } from '../dive/index.ts';
import {
  handsOff,
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
import { FLOATS_M, midBreath } from './look-data.ts';

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
  readonly depthM: number;
  /** Net force in the middle of the breath where doing nothing ends the motion, newtons, up positive; null where it does not. */
  readonly restN: number | null;
}

/** What comes of a request: of one for stops the forecast, of any other a map. */
export type LookAnswer = MapAnswer | StopsAnswer;

/** Lead taken off for comparison, kilograms. Chosen. */
export const LESS_LEAD_KG = 4;
/** So much lead besides must be left, kilograms. Chosen. */
const LEFT_KG = 0.5;

/** Answers a request; some milliseconds of work, or some hundredths of a second for a map. */
export function answerLook(request: LookRequest): LookAnswer {
  const { rig, state, controls, ask, nowS, wanted } = request;
  if (wanted === 'stops') {
    const forecast = stopping(rig, state, controls, ask);
    return { kind: 'stops', forecast, nowS, depthM: state.depthM, restN: restN(request, forecast) };
  }
  const wornKg = rig.lead.reduce((kg, { massKg }) => kg + massKg, 0);
  const lighter = wornKg > LESS_LEAD_KG + LEFT_KG ? withMoreLead(rig, -LESS_LEAD_KG) : null;
  return {
    kind: 'map',
    map: recoveryMap(rig, state, controls, ask, { across: wanted }),
    reaches: recovers(rig, state, controls, ask),
    lighter: lighter ? recovers(lighter, state, controls, ask) : null,
  };
}

/** The force where he comes to rest by himself, gas through valves included: the dive is gone through until then. */
function restN({ rig, state, controls }: LookRequest, { rows }: StoppingForecast): number | null {
  const alone = rows.find(({ means }) => means === 'none');
  if (!alone?.stops || alone.timeS === null || alone.depthM === null) return null;
  // Who floats is carried up wherever he dips, and stays where he is.
  if (alone.depthM < FLOATS_M) return null;
  const then = copyState(state);
  const idle = handsOff(controls);
  advance(rig, then, idle, Math.round(alone.timeS * TICKS_PER_S));
  return netForceN(rig, midBreath(rig, then, idle));
}
