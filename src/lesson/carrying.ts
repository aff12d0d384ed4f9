import { HEAD_CLEAR_M, midBreathM3, netForceN, type Rig } from '../diver/index.ts';
import { startState } from '../dive/index.ts';

/** Jacket gas at which the diver is neutral, m³: at a depth, half a breath in, cylinders as filled; 0 where he is light anyway. */
export function neutralJacketM3(rig: Rig, depthM: number): number {
  return carryingJacketM3(rig, depthM, 0);
}

/** The least jacket gas that floats the head clear at rest, m³, half a breath in, cylinders as filled. */
export function floatingJacketM3(rig: Rig): number {
  return carryingJacketM3(rig, HEAD_CLEAR_M, 90);
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
