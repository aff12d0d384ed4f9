import { STANDARD_GRAVITY_MPS2, waterDensityKgPerM3 } from '../water/index.ts';
import type { BenchSet, BenchWaterName } from './desk.ts';
import type { BenchWater } from './forces.ts';
import { PUTTY_BALL } from './putty.ts';
import { gasNeutralAtJ, type GasBody, type Under } from './squeezed.ts';
import type { ThingSpec } from './thing.ts';

/*
 * What stands on the bench before anybody touches it. Sizes and masses are chosen: what fits the tank and can be seen from the
 * back of a room.
 */

/** The tank: inside width and depth, and how far below its lip the water stands at first, metres. */
export const TANK_SIZES = { widthM: 0.8, heightM: 0.36, filledM: 0.07 } as const;

const AIR_PA = 101_325;

/** Salinity and temperature of the waters, by EOS-80: tap, a fjord's top, the open sea. Practice. */
const WATERS: Readonly<Record<BenchWaterName, readonly [salinityPsu: number, temperatureC: number]>> = {
  fresh: [0, 18],
  brackish: [10, 15],
  salt: [35, 15],
};

/** One of the waters of the bench. */
export function benchWater(name: BenchWaterName): BenchWater {
  return { densityKgPerM3: waterDensityKgPerM3(...WATERS[name]), gravityMps2: STANDARD_GRAVITY_MPS2 };
}

/** Five stones of one volume, kg for half a litre: the middle one as heavy as fresh water. */
const STONES_KG = [0.3, 0.45, 0.4993, 0.56, 1.3] as const;
const STONE_M3 = 5e-4;
export const STONE_NAMES = [
  'stone of 300 g',
  'stone of 450 g',
  'stone of 499 g',
  'stone of 560 g',
  'stone of 1.3 kg',
] as const;

/** Ten stuffs in blocks of one size, from light to heavy. */
const STUFFS = [
  'cork',
  'pine',
  'ice',
  'beeswax',
  'polystyrene',
  'rubber',
  'glass',
  'aluminium',
  'steel',
  'lead',
] as const;

/** What is put into the tank together. */
export const TANK_SETS: Readonly<Record<BenchSet, readonly ThingSpec[]>> = {
  putty: [{ kind: 'putty', massKg: 0.35, shape: PUTTY_BALL }],
  stones: STONES_KG.map((massKg) => ({ kind: 'stone', massKg, volumeM3: STONE_M3 })),
  'odd-stone': [{ kind: 'odd-stone', material: 'granite', massKg: 0.8 }],
  can: [{ kind: 'can', widthM: 0.08, heightM: 0.12, wallM: 0.002 }],
  block: [{ kind: 'block', material: 'pine', widthM: 0.16, heightM: 0.06 }],
  stuffs: STUFFS.map((material) => ({ kind: 'block', material, widthM: 0.05, heightM: 0.05 })),
};

/** A column of water with something in it that gives way, or does not: metres, m². */
export interface Column {
  readonly bottomM: number;
  readonly densityKgPerM3: number;
  /** Where its bodies are neutral, and where they wait at first. */
  readonly neutralM: number;
  readonly firstM: number;
}

/** The deep tank of sea water, and the flask of fresh water. */
export const COLUMNS = {
  deep: { bottomM: 40, densityKgPerM3: 1026, neutralM: 5, firstM: 5 },
  bottle: { bottomM: 0.4, densityKgPerM3: 998.6, neutralM: 0.25, firstM: 0.05 },
} as const satisfies Readonly<Record<string, Column>>;
export type ColumnId = keyof typeof COLUMNS;

const BAG = { massKg: 1, firmM3: 6e-5, mostM3: 1.5e-3 };
const BALL: GasBody = { massKg: 1, firmM3: 1 / COLUMNS.deep.densityKgPerM3, gasJ: 0, mostM3: 0 };
/** A small glass bottle, its own glass of 2500 kg/m³ and 8 g. */
const BOTTLE = { massKg: 0.012, firmM3: 4.8e-6, mostM3: 1e-5 };

/** The water of a column under air and the squeeze of a hand, pascals. */
export function underIn(id: ColumnId, squeezePa = 0): Under {
  return {
    densityKgPerM3: COLUMNS[id].densityKgPerM3,
    gravityMps2: STANDARD_GRAVITY_MPS2,
    surfacePa: AIR_PA + squeezePa,
  };
}

/** Bodies of the columns by name, each filled so that it is neutral where its column says. */
export function columnBody(name: 'bag' | 'ball' | 'bottle'): GasBody {
  if (name === 'ball') return BALL;
  const [body, id] = name === 'bag' ? ([BAG, 'deep'] as const) : ([BOTTLE, 'bottle'] as const);
  return { ...body, gasJ: gasNeutralAtJ(body, underIn(id), COLUMNS[id].neutralM) };
}
