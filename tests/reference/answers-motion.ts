import { advance, restingControls, startState } from '../../src/dive/index.ts';
import { instantOf, jacketM3, netForceN, rigOf, type Rig } from '../../src/diver/index.ts';
import { pressurePa } from '../../src/water/index.ts';
import type { Answers } from './answers-water.ts';
import { EXAMPLE, changed, withLeadKg } from './rigs.ts';
import { input } from './rows.ts';

/** A diver in whom nothing is compressible: no suit, no gut gas, jacket empty; only lungs, whose volume the diver sets. */
export function rigid(rig: Rig): Rig {
  return { ...rig, gutM3: 0, foam: { solidM3: rig.foam.solidM3 + rig.foam.gasM3, gasM3: 0, softness: 1 } };
}

/** The lead that a rig needs to sink with this force at a depth, rigid, breath at mid-breath, full cylinder. */
export function sinkingWithN(setup: typeof EXAMPLE, forceN: number, depthM: number): Rig {
  let rig = rigid(withLeadKg(setup, 0));
  for (let i = 0; i < 3; i++) {
    const at = instantOf(rig, { depthM });
    const shortN = netForceN(rig, at) + forceN;
    const leadKg =
      rig.lead[0]!.massKg + shortN / (rig.column.gravityMps2 * (1 - rig.column.segments[0]!.densityKgPerM3 / 11340));
    rig = rigid(withLeadKg(setup, leadKg));
  }
  return rig;
}

/** The speed that the step settles on under a steady net force, m/s. Direct breath keeps the lungs' volume. */
const terminal = (id: string) => () => {
  const drag = input(id, 'CdA_m2');
  const setup = changed(EXAMPLE, {
    water: { densityKgPerM3: input(id, 'rho'), bottomM: 200 },
    hydrodynamics: { dragAreaLevelM2: drag, dragAreaUprightM2: drag },
  });
  const rig = sinkingWithN(setup, input(id, 'net_force_N'), 10);
  const state = startState(rig, { depthM: 10, lungM3: 3.2e-3 });
  advance(rig, state, { ...restingControls(320), breath: 1 }, 120 * 30);
  return state.speedMps;
};

/** A diver whose only compressible gas is in the jacket. */
const jacketOnly = (id: string) => {
  const { rho, g } = { rho: input(id, 'rho'), g: input(id, 'g') };
  return rigid(rigOf(changed(EXAMPLE, { water: { densityKgPerM3: rho, gravityMps2: g } })));
};

/** −dF/dz in N/m by central difference of the net force, with jacket gas alone compressible. */
const steepness = (id: string) => () => {
  const rig = jacketOnly(id);
  const depthM = input(id, 'depth_m');
  const at = instantOf(rig, { depthM, jacketM3: input(id, 'gas_L_at_depth') * 1e-3 });
  const netAt = (offM: number) => netForceN(rig, { ...at, depthM: depthM + offM });
  return -(netAt(0.01) - netAt(-0.01)) / 0.02;
};

/** Litres a second by which jacket gas grows on the way up. */
const growthLps = (id: string) => () => {
  const rig = rigOf(EXAMPLE);
  const depthM = input(id, 'depth_m');
  const mol = instantOf(rig, { depthM, jacketM3: input(id, 'gas_L') * 1e-3 }).jacketMol;
  const litres = (seconds: number) =>
    jacketM3(rig, mol, pressurePa(rig.column, depthM - seconds * input(id, 'ascent_m_s'))) * 1e3;
  return (litres(0.05) - litres(-0.05)) / 0.1;
};

/** Answers of motion and of the steepness of a neutral depth. */
export const MOTION: Answers = {
  'vt-20-0.9': terminal('vt-20-0.9'),
  'vt-100-0.3': terminal('vt-100-0.3'),
  'unstable-10-10': steepness('unstable-10-10'),
  'unstable-5-10': steepness('unstable-5-10'),
  'expand-10-10': growthLps('expand-10-10'),
  'expand-10-20': growthLps('expand-10-20'),
};
