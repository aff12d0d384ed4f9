import type { Rig } from '../diver/index.ts';
import type { Recorded } from '../dive/index.ts';
import { STANDARD_GRAVITY_MPS2, STANDARD_PRESSURE_PA } from '../water/index.ts';
import type { Units } from './settings.ts';
import { FOOT_M, POUND_KG, PSI_PA } from './units.ts';

/** What can be traced over time. */
export type TraceId = 'depth' | 'speed' | 'force' | 'lungs' | 'loop' | 'jacket' | 'suit' | 'cylinder';

/** How a value is written in one system of units. */
export interface Measure {
  readonly unit: string;
  readonly of: (si: number) => number;
  readonly digits: number;
}

/** One trace: where its values come from, and how it is drawn and written. */
export interface TraceKind {
  readonly id: TraceId;
  /** On its button and at the end of its line. */
  readonly words: string;
  /** In the head of a table or file. */
  readonly full: string;
  readonly column: Recorded;
  readonly si: string;
  readonly gas: boolean;
  /** Larger values stand lower: depth, and speed downward. */
  readonly down: boolean;
  /** Ink and gaps, pixels; empty is solid. */
  readonly dash: readonly number[];
  readonly shown: Readonly<Record<Units, Measure>>;
}

const LITRES: Measure = { unit: 'L', of: (m3) => m3 * 1e3, digits: 1 };
/** Both systems write lungs and jacket in litres. */
const litres = { metric: LITRES, imperial: LITRES };

const KINDS: readonly TraceKind[] = [
  {
    id: 'depth',
    words: 'depth',
    full: 'depth',
    column: 'depthM',
    si: 'm',
    gas: false,
    down: true,
    dash: [],
    shown: {
      metric: { unit: 'm', of: (m) => m, digits: 1 },
      imperial: { unit: 'ft', of: (m) => m / FOOT_M, digits: 0 },
    },
  },
  {
    id: 'speed',
    words: 'speed',
    full: 'speed, downward positive',
    column: 'speedMps',
    si: 'm/s',
    gas: false,
    down: true,
    dash: [11, 5],
    shown: {
      metric: { unit: 'm/min', of: (mps) => mps * 60, digits: 0 },
      imperial: { unit: 'ft/min', of: (mps) => (mps * 60) / FOOT_M, digits: 0 },
    },
  },
  {
    id: 'force',
    words: 'force',
    full: 'net force at mid-breath, upward positive',
    column: 'midNetN',
    si: 'N',
    gas: false,
    down: false,
    dash: [3, 4],
    shown: {
      metric: { unit: 'kg', of: (n) => n / STANDARD_GRAVITY_MPS2, digits: 1 },
      imperial: { unit: 'lb', of: (n) => n / STANDARD_GRAVITY_MPS2 / POUND_KG, digits: 1 },
    },
  },
  gas('lungs', 'lungs', 'lungs', 'lungM3', []),
  gas('loop', 'loop', 'lungs and loop', 'loopM3', []),
  gas('jacket', 'jacket', 'jacket', 'jacketM3', [12, 4]),
  gas('suit', 'suit', 'suit gas', 'suitGasM3', [5, 4]),
  {
    ...gas('cylinder', 'cylinder', 'cylinder', 'cylinderPa', [14, 4, 4, 4]),
    si: 'Pa absolute',
    shown: {
      metric: { unit: 'bar', of: (pa) => (pa - STANDARD_PRESSURE_PA) * 1e-5, digits: 0 },
      imperial: { unit: 'psi', of: (pa) => (pa - STANDARD_PRESSURE_PA) / PSI_PA, digits: 0 },
    },
  },
];

function gas(id: TraceId, words: string, full: string, column: Recorded, dash: readonly number[]): TraceKind {
  return { id, words, full, column, si: 'm³', gas: true, down: false, dash, shown: litres };
}

/** What there is to trace of a diver: what the kit does not have is left out. */
export function traceKinds({
  loop,
  drysuit,
  vessels,
}: Pick<Rig, 'loop' | 'drysuit' | 'vessels'>): readonly TraceKind[] {
  const has: Partial<Record<TraceId, boolean>> = {
    lungs: loop === null,
    loop: loop !== null,
    suit: drysuit !== null,
    cylinder: vessels.length > 0,
  };
  return KINDS.filter(({ id }) => has[id] ?? true);
}

/** A value with its unit: "8.2 m". */
export function valueText(shown: number, { unit, digits }: Measure): string {
  const text = shown.toFixed(digits);
  return `${Number(text) === 0 ? text.replace('-', '') : text.replace('-', '−')} ${unit}`;
}
