import { instantOf, netForceN, type Rig } from '../diver/index.ts';
import { copyState, solidSums, type Controls, type DiveState } from '../dive/index.ts';
import { STANDARD_PRESSURE_PA, waterAt } from '../water/index.ts';
import { groundM, type StoppingAsk } from './attempt.ts';
import { leadKg, withMoreLead } from './surplus.ts';

/**
 * What lies across a recovery map: gas of jacket, suit or loop, as m³ at one standard atmosphere, so that it stays while nobody
 * presses; kilograms of lead more than now; or vertical speed, m/s, down positive. Values ascend.
 */
export type MapAcross =
  | { readonly kind: 'gas'; readonly of: 'jacket' | 'suit' | 'loop'; readonly values: readonly number[] }
  | { readonly kind: 'lead'; readonly values: readonly number[] }
  | { readonly kind: 'speed'; readonly values: readonly number[] };

/** Which map is wanted; values left out are chosen about the diver. */
export interface MapWish {
  readonly across: 'gas' | 'lead' | 'speed';
  readonly columns?: number;
  readonly values?: readonly number[];
}

/** A map has so many columns unless more or fewer are wanted. */
const MAP_COLUMNS = 96;
/** Lead less and more than now on a map, kg, and the fastest on it, m/s: 36 m/min. Chosen. */
const LEAD_LESS_KG = 6;
const LEAD_MORE_KG = 10;
const FASTEST_MPS = 0.6;
/** At least so much gas across, m³. Chosen. */
const LEAST_GAS_M3 = 4e-3;

/** The state with another value across, and the rig that goes with it. */
export function placedAcross(
  rig: Rig,
  state: Readonly<DiveState>,
  kind: MapAcross['kind'],
  of: 'jacket' | 'suit' | 'loop',
  value: number,
): { readonly rig: Rig; readonly state: DiveState } {
  const placed = copyState(state);
  placed.calmUntil = 0;
  if (kind === 'speed') placed.speedMps = value;
  if (kind === 'gas') placed[`${of}Mol`] = (value * STANDARD_PRESSURE_PA) / rig.gasJPerMol;
  if (kind !== 'lead') return { rig, state: placed };
  const heavier = withMoreLead(rig, value);
  Object.assign(placed, solidSums(heavier, placed.releasedMask));
  return { rig: heavier, state: placed };
}

interface Across {
  readonly kind: MapAcross['kind'];
  readonly of: 'jacket' | 'suit' | 'loop';
  readonly values: readonly number[];
  readonly here: number;
}

/** The values across, and the diver's own. */
export function acrossOf(
  rig: Rig,
  state: Readonly<DiveState>,
  controls: Controls,
  ask: StoppingAsk,
  wish: MapWish,
): Across {
  const of = rig.loop ? 'loop' : rig.drysuit ? 'suit' : 'jacket';
  const kind = wish.across;
  const count = wish.columns ?? MAP_COLUMNS;
  const surfaceM3 = (mol: number) => (mol * rig.gasJPerMol) / STANDARD_PRESSURE_PA;
  const here = kind === 'gas' ? surfaceM3(state[`${of}Mol`]) : kind === 'lead' ? 0 : state.speedMps;
  if (wish.values) return { kind, of, values: wish.values, here };
  if (kind === 'lead')
    return { kind, of, values: spread(-Math.min(LEAD_LESS_KG, leadKg(rig)), LEAD_MORE_KG, count), here };
  if (kind === 'speed') return { kind, of, values: spread(-FASTEST_MPS, FASTEST_MPS, count), here };
  return {
    kind,
    of,
    values: spread(0, mostGasM3(rig, state, of, here, groundM(rig, state, controls, ask)), count),
    here,
  };
}

/**
 * The most gas on a map, m³ at one atmosphere: a quarter more than makes the diver neutral at the floor, and more than there is
 * now, in whole litres; no more than the bag holds there.
 */
function mostGasM3(
  rig: Rig,
  state: Readonly<DiveState>,
  of: 'jacket' | 'suit' | 'loop',
  hereM3: number,
  floorM: number,
): number {
  const { densityKgPerM3, pressurePa } = waterAt(rig.column, floorM, { densityKgPerM3: NaN, pressurePa: NaN });
  const empty = {
    ...instantOf(rig, { depthM: floorM }),
    jacketMol: of === 'jacket' ? 0 : state.jacketMol,
    suitMol: of === 'suit' ? 0 : state.suitMol,
    loopMol: of === 'loop' ? 0 : state.loopMol,
    releasedMask: state.releasedMask,
  };
  const wantedM3 = Math.max(0, -netForceN(rig, empty)) / (densityKgPerM3 * rig.column.gravityMps2);
  const capacityM3 = of === 'jacket' ? rig.jacket.capacityM3 : (rig.drysuit ?? rig.loop)!.capacityM3;
  const grows = pressurePa / STANDARD_PRESSURE_PA;
  const most = Math.max(1.25 * wantedM3 * grows, 1.2 * hereM3, LEAST_GAS_M3);
  return Math.min(Math.ceil(most * 1e3) * 1e-3, Math.max(capacityM3 * grows, hereM3));
}

function spread(from: number, to: number, count: number): number[] {
  return Array.from({ length: count }, (_, i) => from + ((to - from) * i) / (count - 1));
}
