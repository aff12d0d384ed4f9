import { instantOf, netForceN, type Rig } from '../diver/index.ts';
import { copyState, solidSums, type Controls, type DiveState } from '../dive/index.ts';
import { STANDARD_PRESSURE_PA, waterAt } from '../water/index.ts';
import { solvedColumns } from './map-columns.ts';
import type { Means, Way } from './means.ts';
import { Bodies, CASES, Recovery, attemptsOf, type Switches } from './recovery.ts';
import { groundM, type StoppingAsk } from './stopping.ts';
import { leadKg, withMoreLead } from './surplus.ts';

/** What works over a stretch of depth: the gentlest means, and which danger it answers: −1 rising, 0 none, 1 sinking. */
export interface MapBand {
  readonly fromM: number;
  readonly toM: number;
  readonly means: Means | 'lost';
  readonly way: -1 | 0 | 1;
}

/**
 * What lies across a recovery map: gas of jacket, suit or loop, as m³ at one standard atmosphere, so that it stays while nobody
 * presses; kilograms of lead more than now; or vertical speed, m/s, down positive. Values ascend.
 */
export type MapAcross =
  | { readonly kind: 'gas'; readonly of: 'jacket' | 'suit' | 'loop'; readonly values: readonly number[] }
  | { readonly kind: 'lead'; readonly values: readonly number[] }
  | { readonly kind: 'speed'; readonly values: readonly number[] };

/** The gentlest means that still works, over depth and one other quantity. */
export interface RecoveryMap {
  readonly across: MapAcross;
  readonly topM: number;
  readonly bottomM: number;
  /** Where the diver is on it. */
  readonly here: { readonly across: number; readonly depthM: number };
  /** For each value across: bands from top to bottom without gaps. */
  readonly columns: readonly (readonly MapBand[])[];
}

/** Which map is wanted; values left out are chosen about the diver. */
export interface MapWish {
  readonly across: 'gas' | 'lead' | 'speed';
  readonly columns?: number;
  readonly values?: readonly number[];
}

/** A map has so many columns unless more or fewer are wanted. */
export const MAP_COLUMNS = 96;
/** Lead less and more than now on a map, kg, and the fastest on it, m/s: 36 m/min. */
const LEAD_LESS_KG = 6;
const LEAD_MORE_KG = 10;
const FASTEST_MPS = 0.6;
/** At least so much gas across, m³. */
const LEAST_GAS_M3 = 4e-3;
/** Metres above the floor that a map of speeds shows: above them speed is forgotten before it matters. */
const SPEED_SHOWN_M = 8;

/**
 * The recovery map of a state: for each depth and each value of gas, lead or speed the gentlest means that still arrests the
 * motion before the floor, everything else being as it is. Every boundary within 0.1 m: some columns are solved by bisection
 * with short looks ahead, those between them reckoned linearly wherever a look confirms it.
 */
export function recoveryMap(
  rig: Rig,
  state: Readonly<DiveState>,
  controls: Controls,
  ask: StoppingAsk,
  wish: MapWish,
): RecoveryMap {
  const { values, kind, of, here } = acrossOf(rig, state, controls, ask, wish);
  const placed = (value: number) => placedAcross(rig, state, kind, of, value);
  // What bodies do hardly changes across: one recording serves all columns.
  const usual = placed(values[values.length >> 1]!);
  const bodies = new Bodies(usual.rig, usual.state);
  const attempts = attemptsOf(placed(values.at(-1)!).rig, controls, ask);
  const recoveries = new Array<Recovery | undefined>(values.length);
  const recoveryAt = (i: number): Recovery => {
    const known = recoveries[i];
    if (known) return known;
    const there = placed(values[i]!);
    return (recoveries[i] = new Recovery(there.rig, there.state, controls, ask, { attempts, bodies }));
  };
  const { topM: highestM, bottomM } = recoveryAt(0);
  const topM = kind === 'speed' ? Math.max(highestM, bottomM - SPEED_SHOWN_M) : highestM;
  const cases = solvedColumns(values.length, recoveryAt);
  const columns = values.map((_, i) => bandsOf(cases, i, topM, bottomM));
  const across: MapAcross = kind === 'gas' ? { kind, of, values } : { kind, values };
  return { across, topM, bottomM, here: { across: here, depthM: state.depthM }, columns };
}

/** Depths from which a means recovers from sinking, and from rising; null where it does from none. */
export interface Reach {
  readonly means: Means;
  readonly deepestM: number | null;
  readonly shallowestM: number | null;
}

/** How deep, and how shallow, a diver with this gas at this speed may be for each means to recover him. */
export function recovers(rig: Rig, state: Readonly<DiveState>, controls: Controls, ask: StoppingAsk): Reach[] {
  const recovery = new Recovery(rig, state, controls, ask);
  const edge = (means: Means, way: Way): number | null => {
    const which = CASES.findIndex((one) => one.means === means && one.way === way);
    if (which < 0) return null;
    const { worksAtTop, atM } = recovery.find(which);
    if (way > 0) return worksAtTop ? (atM[0] ?? recovery.bottomM) : null;
    const worksAtBottom = worksAtTop === (atM.length % 2 === 0);
    return worksAtBottom ? (atM.at(-1) ?? recovery.topM) : null;
  };
  const means: readonly Means[] = ['none', 'breath', 'fins', 'gas', 'all', 'lead'];
  return means.map((one) => ({ means: one, deepestM: edge(one, 1), shallowestM: edge(one, -1) }));
}

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

/** The gentlest means at each depth of a column. Where nothing done would end badly, the way that it would end counts. */
function bandsOf(cases: readonly (readonly Switches[])[], column: number, topM: number, bottomM: number): MapBand[] {
  const edges = [topM, bottomM];
  for (const columns of cases)
    for (const depthM of columns[column]!.atM) if (depthM > topM && depthM < bottomM) edges.push(depthM);
  edges.sort((a, b) => a - b);
  const bands: MapBand[] = [];
  let fromM = topM;
  for (let i = 1; i < edges.length; i++) {
    const toM = edges[i]!;
    if (toM <= fromM) continue;
    const depthM = (fromM + toM) / 2;
    let way: -1 | 0 | 1 = 1;
    let means = gentlestAt(cases, column, depthM, 1);
    if (means === 'none') means = gentlestAt(cases, column, depthM, (way = -1));
    if (means === 'none') way = 0;
    const above = bands.at(-1);
    if (above?.means === means && above.way === way) bands[bands.length - 1] = { ...above, toM };
    else bands.push({ fromM, toM, means, way });
    fromM = toM;
  }
  return bands;
}

function gentlestAt(cases: readonly (readonly Switches[])[], column: number, depthM: number, way: Way): Means | 'lost' {
  for (let which = 0; which < CASES.length; which++) {
    const one = CASES[which]!;
    if (one.way === way && worksAt(cases[which]![column]!, depthM)) return one.means;
  }
  return 'lost';
}

function worksAt({ worksAtTop, atM }: Switches, depthM: number): boolean {
  let works = worksAtTop;
  for (let i = 0; i < atM.length; i++) if (atM[i]! < depthM) works = !works;
  return works;
}

interface Across {
  readonly kind: MapAcross['kind'];
  readonly of: 'jacket' | 'suit' | 'loop';
  readonly values: readonly number[];
  readonly here: number;
}

/** The values across, and the diver's own. */
function acrossOf(rig: Rig, state: Readonly<DiveState>, controls: Controls, ask: StoppingAsk, wish: MapWish): Across {
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
