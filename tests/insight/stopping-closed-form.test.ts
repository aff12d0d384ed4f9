import { expect, test } from 'vitest';
import { instantOf, ledger, netForceN, type Rig } from '../../src/diver/index.ts';
import { restingControls, startState } from '../../src/dive/index.ts';
import { USUAL_ASK, stopping, type StoppingAsk } from '../../src/insight/index.ts';
import { EXAMPLE, weighed } from '../reference/rigs.ts';

const NEUTRAL_M = 10;
const MIDDLE_M3 = 3.2e-3;
/** What the breath may add or take, m³: little, so that the offsets stay small and the filling short. */
const BREATH_M3 = 0.01e-3;
/** Fastest that air goes in and out of the model's lungs, m³/s. Practice. */
const FLOW_M3PS = { 1: 1.5e-3, [-1]: 2e-3 } as const;

/** A diver without drag and without water to carry along, whose gas weighs nothing, neutral at 10 m with the jacket. */
const RIG: Rig = {
  ...weighed(EXAMPLE),
  dragAreaLevelM2: 0,
  dragAreaUprightM2: 0,
  addedMassLevel: 0,
  addedMassUpright: 0,
  kgPerMol: 0,
  bottomM: 150,
};
const JACKET_M3 = root(0, 18e-3, (jacketM3) => netForceN(RIG, instantOf(RIG, { depthM: NEUTRAL_M, jacketM3 })));
const AT = instantOf(RIG, { depthM: NEUTRAL_M, jacketM3: JACKET_M3 });
const netN = (depthM: number) => netForceN(RIG, { ...AT, depthM });
const STEEPNESS_NPM = -(netN(NEUTRAL_M + 1e-3) - netN(NEUTRAL_M - 1e-3)) / 2e-3;
const MASS_KG = ledger(RIG, AT).reduce((kg, part) => kg + part.massKg, 0);
const GROWTH_PER_S = Math.sqrt(STEEPNESS_NPM / MASS_KG);

/** Where a quantity that changes sign once does so, by halving. */
function root(low: number, high: number, of: (x: number) => number): number {
  const rising = of(high) > of(low);
  let [a, b] = [low, high];
  for (let i = 0; i < 60; i++) {
    const middle = (a + b) / 2;
    if (of(middle) > 0 === rising) b = middle;
    else a = middle;
  }
  return (a + b) / 2;
}

// m·u″ = k·u grows as e^λt from u = z + v/λ; a breath moves the neutral depth by A/k, A = ρ g ΔL, and the diver turns exactly
// when u has not yet come past it. While the lungs fill, λ times half the time of filling is as good as a longer reaction.
test.each(
  ([1, -1] as const).flatMap((way) =>
    [0, 1, 2.5, 5].flatMap((reactionS) => [0, 0.005, -0.005].map((speedMps) => ({ way, reactionS, speedMps }))),
  ),
)(
  'stopping() by breath without drag: |z + v/λ|·e^λτ < A/k to 1 % with τ $reactionS s, v $speedMps m/s, way $way',
  ({ way, reactionS, speedMps }) => {
    const ask: StoppingAsk = {
      ...USUAL_ASK,
      lungs: { leastM3: MIDDLE_M3 - BREATH_M3, mostM3: MIDDLE_M3 + BREATH_M3 },
      reactionS,
    };
    const stops = (offM: number) => {
      const start = { depthM: NEUTRAL_M + way * offM, lungM3: MIDDLE_M3, speedMps: way * speedMps };
      const state = { ...startState(RIG, start), jacketMol: AT.jacketMol };
      const { rows } = stopping(RIG, state, { ...restingControls(320), breath: 1 }, ask, way);
      return rows.find(({ means }) => means === 'breath')!.stops;
    };
    const edgeM = root(-0.5, 0.5, (offM) => (stops(offM) ? -1 : 1));
    const density = RIG.column.segments[0]!.densityKgPerM3;
    const limitM = (density * RIG.column.gravityMps2 * BREATH_M3) / STEEPNESS_NPM;
    const waitS = reactionS + BREATH_M3 / FLOW_M3PS[way] / 2;
    const grownM = (edgeM + speedMps / GROWTH_PER_S) * Math.exp(GROWTH_PER_S * waitS);
    expect(limitM).toBeGreaterThan(0.05);
    expect(Math.abs(grownM / limitM - 1)).toBeLessThan(0.01);
  },
);
