import { HEAD_CLEAR_M, instantOf, jacketM3, midBreathM3, netForceN, type Rig } from '../diver/index.ts';
import { TICKS_PER_S, advance, midBreathCl, restingControls, startState, type Controls } from '../dive/index.ts';
import { waterAt } from '../water/index.ts';
import { lessonStart } from './begin.ts';
import type { Lesson, PredictStep } from './lesson.ts';
import type { Topic } from './topics.ts';

/** An outcome, a number in the topic's unit, or item ids in order. */
export type Truth = string | number | readonly string[];

/** Under this depth, metres, the head is covered even at the top of a breath. */
const COVERED_M = 0.7;
const SINKS_M = 1.5;
/** How long somebody waits to see whether he sinks, and whether he stays afloat, seconds. */
const WAITS_S = 30;
const AFLOAT_S = 10;
/** Sinking at 6 m/min, m/s, and one litre in centilitres. */
const SINKING_MPS = 0.1;
const LITRE_CL = 100;
/** Jacket gas that is worth a press, m³. Practice. */
const NOTICED_M3 = 0.1e-3;

/**
 * What the model says to a prediction, from the lesson's own setup. The few answers that it cannot compute stand in the file.
 * @throws {RangeError} when a depth that the topic needs is missing
 */
export function truthOf(lesson: Lesson, rig: Rig, step: PredictStep): Truth {
  if (step.topic === undefined) return step.answer ?? '';
  const depthM = (key: 'atM' | 'toM') => {
    const found = step[key];
    if (found === undefined) throw new RangeError(`truthOf: ${step.id} needs ${key} for ${step.topic}`);
    return found;
  };
  const topics: Readonly<Record<Topic, () => Truth>> = {
    'floats-hands-off': () => handsOffOutcome(lesson, rig),
    'what-sinks': () => leastThatSinks(lesson, rig),
    'jacket-for-neutral': () => neutralJacketM3(rig, depthM('atM')) * 1e3,
    'breath-lag': () => breathLagS(rig, depthM('atM')),
    'gas-on-the-way-up': () => gasOnTheWay(rig, depthM('atM'), depthM('toM')),
    'jacket-for-floating': () => floatingJacketM3(rig) * 1e3,
    'gas-growth-order': () => growthOrder(rig, step.shape === 'order' ? step.items.map(({ id }) => id) : []),
  };
  return topics[step.topic]();
}

/** Jacket gas at which the diver is neutral, m³: at a depth, half a breath in, cylinders as filled; 0 where he is light anyway. */
export function neutralJacketM3(rig: Rig, depthM: number): number {
  return carryingJacketM3(rig, depthM, 0);
}

/** The least jacket gas that floats the head clear at rest, m³, half a breath in, cylinders as filled. */
export function floatingJacketM3(rig: Rig): number {
  return carryingJacketM3(rig, HEAD_CLEAR_M, 90);
}

/**
 * How soon a breath of one litre more ends sinking at 6 m/min, seconds: level, neutral at mid-breath before it, and no further
 * breath; a minute where it never does.
 */
function breathLagS(rig: Rig, depthM: number): number {
  const lungs = rig.lungs.open ? { lungM3: midBreathM3(rig) } : {};
  const jacketM3 = neutralJacketM3(rig, depthM);
  const state = startState(rig, { depthM, jacketM3, speedMps: SINKING_MPS, ...lungs });
  const breathing: Controls = { ...restingControls(midBreathCl(rig) + LITRE_CL), breath: 1 };
  for (let ticks = 1; ticks <= 60 * TICKS_PER_S; ticks++) {
    advance(rig, state, breathing, 1);
    if (state.speedMps <= 0) return ticks / TICKS_PER_S;
  }
  return 60;
}

/** Jacket gas with which nothing is left over at a depth and attitude, m³, between what never leaves the jacket and its capacity. */
function carryingJacketM3(rig: Rig, depthM: number, pitchDeg: number): number {
  const lungs = rig.lungs.open ? { lungM3: midBreathM3(rig) } : {};
  const netN = (jacketM3: number) => netForceN(rig, startState(rig, { depthM, jacketM3, pitchDeg, ...lungs }));
  let low = rig.jacket.residualM3;
  let high = rig.jacket.capacityM3;
  if (netN(low) >= 0) return low;
  for (let i = 0; i < 50; i++) {
    const middle = (low + high) / 2;
    if (netN(middle) < 0) low = middle;
    else high = middle;
  }
  return low;
}

/** Item ids such as m10, the depth at which gas grows fastest for each metre up first: share = ρ g / p. */
function growthOrder(rig: Rig, ids: readonly string[]): readonly string[] {
  const water = { densityKgPerM3: 0, pressurePa: 0 };
  const shareOf = (id: string) => {
    const { densityKgPerM3, pressurePa } = waterAt(rig.column, Number(id.slice(1)), water);
    return densityKgPerM3 / pressurePa;
  };
  return [...ids].sort((a, b) => shareOf(b) - shareOf(a));
}

function gasOnTheWay(rig: Rig, atM: number, toM: number): string {
  const { jacketMol } = instantOf(rig, { depthM: atM, jacketM3: neutralJacketM3(rig, atM) });
  const { pressurePa } = waterAt(rig.column, toM, { densityKgPerM3: 0, pressurePa: 0 });
  const surplus = jacketM3(rig, jacketMol, pressurePa) - neutralJacketM3(rig, toM);
  return surplus > NOTICED_M3 ? 'let-out' : surplus < -NOTICED_M3 ? 'add' : 'leave';
}

function handsOffOutcome(lesson: Lesson, rig: Rig): string {
  const depths = depthsM(lesson, rig, {}, AFLOAT_S);
  if (depths.some((depth) => depth > SINKS_M)) return 'sinks';
  return depths.some((depth) => depth >= HEAD_CLEAR_M) ? 'goes-under' : 'stays-clear';
}

function leastThatSinks(lesson: Lesson, rig: Rig): string {
  const out: Partial<Controls> = { breath: 1, lungCl: Math.floor(rig.lungs.residualM3 * 1e5) + 20 };
  const vent: Partial<Controls> = { jacketVent: 1 };
  const sinks = (...what: Partial<Controls>[]) =>
    depthsM(lesson, rig, Object.assign({}, ...what) as Partial<Controls>, WAITS_S).some((depth) => depth > COVERED_M);
  if (sinks(out)) return 'breath';
  if (sinks(vent)) return 'gas';
  return sinks(out, vent) ? 'both' : 'nothing';
}

/** Depths at each tenth of a second from the lesson's start, held upright under unchanging controls, metres. */
function depthsM(lesson: Lesson, rig: Rig, controls: Partial<Controls>, seconds: number): number[] {
  const state = startState(rig, lessonStart(lesson, rig));
  const steady: Controls = { ...restingControls(midBreathCl(rig)), pitchDeg: 90, ...controls };
  return Array.from({ length: seconds * 10 }, () => {
    advance(rig, state, steady, TICKS_PER_S / 10);
    return state.depthM;
  });
}
