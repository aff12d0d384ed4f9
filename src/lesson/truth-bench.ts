import {
  COLUMNS,
  LENGTH_M,
  PUTTY_BALL,
  PUTTY_TRAY,
  areaOf,
  balanceN,
  benchWater,
  columnBody,
  floatingAt,
  gasM3,
  netAtN,
  noReturnM,
  pressureAt,
  restingAngles,
  thingOf,
  underIn,
  weighed,
  type BenchWaterName,
  type Thing,
} from '../bench/index.ts';
import type { BenchLesson, BenchPredict, BenchScene } from './bench-lesson.ts';
import { specsOf } from './bench-scene.ts';
import type { BenchTopic } from './bench-topics.ts';
import type { Truth } from './truth.ts';

/* Answers of the bench, by its closed forms: no engine has a part in them. */

/** Within this share of its weight a thing stays where it is. */
const NEUTRAL = 2e-3;

/**
 * What the bench says to a prediction, from the lesson's own things.
 * @throws {RangeError} when a parameter that the topic needs is missing
 */
export function benchTruth({ bench }: BenchLesson, step: BenchPredict): Truth {
  const given = <K extends 'of' | 'thing' | 'atM' | 'toWater'>(key: K) => {
    const found = step[key];
    if (found === undefined) throw new RangeError(`benchTruth: ${step.id} needs ${key} for ${step.topic}`);
    return found;
  };
  const along = step.shape === 'curve' ? step.along : [];
  const topics: Readonly<Record<BenchTopic, () => Truth>> = {
    'which-floats': () => whichFloats(bench),
    'putty-reads': () => puttyReadsN(bench, given('of') === 'tray'),
    'comes-to-rest': () => comesToRest(bench, given('thing')),
    'let-go-deep': () => letGoDeep(given('of') === 'ball' ? 'ball' : 'bag', given('atM')),
    'bag-curve': () => along.map((depthM) => gasM3(columnBody('bag'), pressureAt(underIn('deep'), depthM)) * 1e3),
    'stone-volume': () => stone(bench).volumeM3 * 1e6,
    'stone-density': () => stone(bench).densityKgPerM3,
    'block-rides': () => {
      const upM = lessDeepM(bench, given('toWater'));
      return Math.abs(upM) < 1e-5 ? 'same' : upM > 0 ? 'higher' : 'lower';
    },
    'draught-change': () => lessDeepM(bench, given('toWater')) * 1e3,
    'no-return': () => (noReturnM(columnBody('bottle'), underIn('bottle')) ?? 0) * 100,
    'squeeze-to-sink': () => squeezeToSinkPa(given('atM')) / 1e3,
  };
  return topics[step.topic]();
}

function first(scene: BenchScene): Thing {
  return thingOf(specsOf(scene)[0]!);
}

function putty(scene: BenchScene, tray: boolean): Thing {
  const { spec } = first(scene);
  return thingOf(spec.kind === 'putty' ? { ...spec, shape: tray ? PUTTY_TRAY : PUTTY_BALL } : spec);
}

const floaterOf = (thing: Thing) => ({ hull: thing.hull, lengthM: LENGTH_M, massKg: thing.massKg });

function floats(thing: Thing, densityKgPerM3: number): boolean {
  return floatingAt(floaterOf(thing), 0, densityKgPerM3) !== null;
}

function whichFloats(scene: BenchScene): string {
  const { densityKgPerM3 } = benchWater(scene.water);
  const [lump, tray] = [false, true].map((shape) => floats(putty(scene, shape), densityKgPerM3));
  return lump ? (tray ? 'both' : 'lump') : tray ? 'tray' : 'neither';
}

/** Nothing for what floats: the water carries all of it. */
function puttyReadsN(scene: BenchScene, tray: boolean): number {
  const { densityKgPerM3, gravityMps2 } = benchWater(scene.water);
  const thing = putty(scene, tray);
  if (floats(thing, densityKgPerM3)) return 0;
  return balanceN({ massKg: thing.massKg, submergedM3: volumeM3(thing) }, densityKgPerM3, gravityMps2);
}

function volumeM3({ solid }: Thing): number {
  return areaOf(solid).areaM2 * LENGTH_M;
}

function comesToRest(scene: BenchScene, nth: number): string {
  const spec = specsOf(scene)[nth - 1];
  if (!spec) throw new RangeError(`benchTruth: there is no thing ${nth}`);
  const { densityKgPerM3 } = benchWater(scene.water);
  const thing = thingOf(spec);
  const netKg = densityKgPerM3 * volumeM3(thing) - thing.massKg;
  return Math.abs(netKg) < NEUTRAL * thing.massKg ? 'stays' : netKg > 0 ? 'surface' : 'bottom';
}

function letGoDeep(name: 'bag' | 'ball', depthM: number): string {
  const body = columnBody(name);
  const under = underIn('deep');
  const netN = netAtN(body, under, depthM);
  return Math.abs(netN) < NEUTRAL * body.massKg * under.gravityMps2 ? 'stays' : netN > 0 ? 'rises' : 'sinks';
}

/** The stone as two weighings give it, in air and under water. */
function stone(scene: BenchScene) {
  const { densityKgPerM3, gravityMps2 } = benchWater(scene.water);
  const thing = first(scene);
  const under = balanceN({ massKg: thing.massKg, submergedM3: volumeM3(thing) }, densityKgPerM3, gravityMps2);
  return weighed(thing.massKg * gravityMps2, under, densityKgPerM3, gravityMps2);
}

/** How much less deep the block lies in other water, lying as it rests nearest to upright in both. */
function lessDeepM(scene: BenchScene, to: BenchWaterName): number {
  const floater = floaterOf(first(scene));
  const draughtM = (name: BenchWaterName) => {
    const { densityKgPerM3 } = benchWater(name);
    const angle = restingAngles(floater, densityKgPerM3).reduce((a, b) => (Math.abs(b) < Math.abs(a) ? b : a), Math.PI);
    return floatingAt(floater, angle, densityKgPerM3)?.draughtM ?? 0;
  };
  return draughtM(scene.water) - draughtM(to);
}

/** Net force falls as the squeeze grows: p = p(neutral) − p(there) with nobody squeezing. */
function squeezeToSinkPa(depthM: number): number {
  const { neutralM } = COLUMNS.bottle;
  return pressureAt(underIn('bottle'), neutralM) - pressureAt(underIn('bottle'), depthM);
}
