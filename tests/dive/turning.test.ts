import { describe, expect, test } from 'vitest';
import { advance, direction, restingControls, startState, type DiveState } from '../../src/dive/index.ts';
import { ledger, lungMol, type Rig } from '../../src/diver/index.ts';
import { pressurePa } from '../../src/water/index.ts';
import { Chance, chanceRig, chanceState } from '../reference/chance.ts';
import { EXAMPLE, setupOf, weighed } from '../reference/rigs.ts';

/** Inertia with water, kg m²; damping, N m s and N m s². Practice: the model's own page. */
const INERTIA = 50;
const DAMPING = 40;
const DAMPING_2 = 60;

/** Moment of the ledger about the centre of mass, N m, head-up positive: each buoyant force on its lever. */
function momentNm(rig: Rig, at: DiveState): number {
  const parts = ledger(rig, at);
  const lever = (part: (typeof parts)[number]) => part.headwardM * at.pitchCos - part.backwardM * at.pitchSin;
  const massKg = parts.reduce((kg, part) => kg + part.massKg, 0);
  const centreM = parts.reduce((sum, part) => sum + part.massKg * lever(part), 0) / massKg;
  return parts.reduce((sum, part) => sum + part.buoyancyN * (lever(part) - centreM), 0);
}

const LIMP = { ...restingControls(320), breath: 1, attitude: 1 };

describe('turning', () => {
  test('a limp diver begins to turn by the ledger’s moment about the centre of mass, under water and at the surface', () => {
    let atSurface = 0;
    for (let seed = 0; seed < 400; seed++) {
      const chance = new Chance(seed);
      const rig = chanceRig(chance);
      const state = chanceState(chance, rig);
      if (chance.percent(40)) state.depthM = chance.between(-0.3, 0.6);
      const { cos, sin } = direction(chance.whole(-180, 180));
      Object.assign(state, { pitchCos: cos, pitchSin: sin, speedMps: 0 });
      // Lungs of whole centilitres, which a control can ask for, holding the gas of the depth: they stand still.
      const lungCl = Math.round(state.lungM3 * 1e5);
      if (rig.lungs.open) {
        state.lungM3 = lungCl * 1e-5;
        state.lungMol = lungMol(rig, state.lungM3, pressurePa(rig.column, Math.max(0, state.depthM)));
      }
      if (ledger(rig, state).some(({ part }) => part === 'above-water')) atSurface++;
      const moment = momentNm(rig, state);
      advance(rig, state, { ...LIMP, lungCl }, 1);
      // One tick from rest: M/d·(1 − exp(−d t/I)), less what quadratic damping takes of a rate that grows evenly; what
      // attitude, depth and gas change in 8 ms is under a thousandth of it.
      const linear = (moment / DAMPING) * (1 - Math.exp(-DAMPING / INERTIA / 120));
      const expected = linear - (DAMPING_2 / INERTIA) * ((Math.abs(linear) * linear) / 3 / 120);
      expect(Math.abs(state.pitchRateRadps - expected), `seed ${seed}`).toBeLessThan(5e-4 * Math.abs(expected) + 2e-6);
    }
    expect(atSurface).toBeGreaterThan(100);
  });

  test('limp, a diver turns until the centre of buoyancy stands over the centre of mass', () => {
    const rig = weighed(EXAMPLE);
    const state = startState({ ...rig, bottomM: 500 }, { depthM: 20, jacketM3: 2e-3, pitchDeg: 30 });
    advance({ ...rig, bottomM: 500 }, state, LIMP, 120 * 60);
    expect(Math.abs(momentNm(rig, state))).toBeLessThan(0.1);
    expect(Math.abs(state.pitchRateRadps)).toBeLessThan(0.01);
  });

  test('a commanded attitude is reached and then held exactly', () => {
    const rig = weighed(EXAMPLE);
    for (const pitchDeg of [90, 45, -60]) {
      const state = startState(rig, { depthM: 20 });
      advance(rig, state, { ...restingControls(320), pitchDeg }, 120 * 12);
      const { cos, sin } = direction(pitchDeg);
      expect([state.pitchCos, state.pitchSin, state.pitchRateRadps]).toEqual([cos, sin, 0]);
    }
  });

  test('drysuit gas in the feet turns a diver head-down with more than he can hold', () => {
    const rig = weighed(setupOf('\nsuit: { kind: drysuit }'));
    const state = startState(rig, { depthM: 20, suitGasM3: 30e-3, pitchDeg: -60 });
    advance(rig, state, { ...restingControls(320), pitchDeg: 0 }, 120 * 3);
    expect(state.pitchSin).toBeLessThan(-0.5);
  });
});
