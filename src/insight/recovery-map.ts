import type { Rig } from '../diver/index.ts';
import type { Controls, DiveState } from '../dive/index.ts';
import type { StoppingAsk } from './attempt.ts';
import { acrossOf, placedAcross, type MapAcross, type MapWish } from './map-axis.ts';
import { solvedColumns } from './map-columns.ts';
import { IN_DEPTH, IN_RECIPROCAL } from './map-curves.ts';
import type { Means, Way } from './means.ts';
import { wayOf } from './stopping.ts';
import { Bodies, CASES, Recovery, attemptsOf, worksAt, type Switches } from './recovery.ts';

/** What works over a stretch of depth: the gentlest means, and which danger it answers: −1 rising, 0 none, 1 sinking. */
export interface MapBand {
  readonly fromM: number;
  readonly toM: number;
  readonly means: Means | 'lost';
  readonly way: -1 | 0 | 1;
}

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

/** Metres before the floor, or the surface, that a map of speeds shows: farther away speed is forgotten before it matters. Chosen. */
const SPEED_SHOWN_M = 8;

/**
 * The recovery map of a state: for each depth and each value of gas, lead or speed the gentlest means that still arrests the
 * motion before the floor, everything else being as it is. Every boundary within 0.1 m: some columns are solved by bisection
 * with short looks ahead; those between them follow a curve that a look in its middle has confirmed.
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
  const { topM: highestM, bottomM: groundedM } = recoveryAt(0);
  const near = kind === 'speed';
  const rising = near && wayOf(rig, state, controls) < 0;
  const topM = near && !rising ? Math.max(highestM, groundedM - SPEED_SHOWN_M) : highestM;
  const bottomM = rising ? Math.min(groundedM, highestM + SPEED_SHOWN_M) : groundedM;
  const cases = solvedColumns(values.length, recoveryAt, kind === 'lead' ? IN_RECIPROCAL : IN_DEPTH);
  const columns = values.map((_, i) => bandsOf(cases, i, topM, bottomM));
  const across: MapAcross = kind === 'gas' ? { kind, of, values } : { kind, values };
  return { across, topM, bottomM, here: { across: here, depthM: state.depthM }, columns };
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
