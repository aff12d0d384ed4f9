import { HEAD_OUT_M, jacketM3, type Rig } from '../diver/index.ts';
import { copyState, floatingDepthM, startState, type Dive, type DiveState } from '../dive/index.ts';
import { waterAt } from '../water/index.ts';

/** Above the ground a diver begins at least so far, metres. */
const OFF_GROUND_M = 0.3;

/**
 * How a second diver begins beside a first one: as deep, as fast, in the same attitude, with as much gas in the jacket, and with
 * everything else as his own kit has it. Beside one who floats he floats, as deep as he does. The same diver begins on the same bits.
 * @param moreJacketM3 gas in the jacket more than the first one's, or less, m³ at the depth where he begins
 */
export function startBeside({ rig: firstRig, kept }: Dive, rig: Rig, moreJacketM3 = 0): DiveState {
  const begun = kept[0]!;
  const same = (one: unknown, other: unknown) => JSON.stringify(one) === JSON.stringify(other);
  if (moreJacketM3 === 0 && same(rig, firstRig)) return copyState(begun);
  const { pressurePa } = waterAt(firstRig.column, Math.max(begun.depthM, 0), { densityKgPerM3: 0, pressurePa: 0 });
  const gasM3 = jacketM3(firstRig, begun.jacketMol, pressurePa) + moreJacketM3;
  const ownM3 = Math.min(Math.max(gasM3, rig.jacket.residualM3), rig.jacket.capacityM3);
  const floats = begun.depthM < HEAD_OUT_M;
  const depthM = floats ? floatingDepthM(rig, ownM3) : Math.min(begun.depthM, rig.bottomM - OFF_GROUND_M);
  const state = startState(rig, { depthM, jacketM3: ownM3, speedMps: floats ? 0 : begun.speedMps });
  const { tick, pitchCos, pitchSin, lungM3, lungMol, breathTick, breathTicks, breathIn } = begun;
  return {
    ...state,
    tick,
    pitchCos,
    pitchSin,
    // Who breathes with the same lungs is in the same breath; who has the same cylinders has as much in them.
    ...(same(rig.lungs, firstRig.lungs) && depthM === begun.depthM
      ? { lungM3, lungMol, breathTick, breathTicks, breathIn }
      : {}),
    ...(same(rig.vessels, firstRig.vessels) ? { cylinderMol: [...begun.cylinderMol] } : {}),
  };
}
