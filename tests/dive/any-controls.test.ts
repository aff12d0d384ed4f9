import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { advance, restingControls, startState, totalMol, type DiveState } from '../../src/dive/index.ts';
import { stateNumbers } from '../../src/dive/state.ts';
import { instantOf, ledger, netForceN, netOf, type Rig } from '../../src/diver/index.ts';
import { pressurePa } from '../../src/water/index.ts';
import { Chance, chanceControls, chanceRig, chanceState } from '../reference/chance.ts';
import { EXAMPLE, withLeadKg } from '../reference/rigs.ts';

const seeds = fc.integer({ min: 0, max: 0xffffffff });

/** What is wrong with a state, in words; nothing when it is sound. */
function faults(rig: Rig, s: DiveState): string[] {
  const out: string[] = [];
  const claim = (holds: boolean, words: string) => holds || out.push(words);
  claim(stateNumbers(s).every(Number.isFinite), 'a number is not finite');
  const p = pressurePa(rig.column, Math.max(0, s.depthM));
  const mol = [s.lungMol, s.jacketMol, s.suitMol, s.loopMol, s.bubbleMol, ...s.cylinderMol];
  claim(
    mol.every((amount) => amount >= 0),
    'a store holds less than nothing',
  );
  const { residualM3, totalM3 } = rig.lungs;
  if (rig.lungs.open) claim(s.lungM3 >= residualM3 - 1e-15 && s.lungM3 <= totalM3 + 1e-15, `lungs of ${s.lungM3} m³`);
  const most = (m3: number, overPa: number) => ((p + overPa) * m3 * (1 + 1e-12)) / rig.gasJPerMol;
  claim(s.jacketMol <= most(rig.jacket.capacityM3, rig.jacket.reliefPa), 'the jacket is over its relief pressure');
  if (rig.drysuit) claim(s.suitMol <= most(rig.drysuit.capacityM3, 0), 'the suit is over its capacity');
  if (rig.loop) claim(s.loopMol <= most(rig.loop.capacityM3, 0), 'the loop is over its capacity');
  claim(Math.abs(Math.hypot(s.pitchCos, s.pitchSin) - 1) < 1e-12, 'the attitude is no unit vector');
  const reachM = 0.25 + 1.05 * s.pitchSin * s.pitchSin;
  claim(s.depthM <= rig.bottomM - reachM + 1e-9, `${s.depthM} m is through the bottom`);
  claim(s.sprintS >= 0 && s.sprintS <= 5 && Math.abs(s.thrustN) <= 100, 'more thrust than there is');
  return out;
}

describe('whatever the diver does', () => {
  test('200 rigs, 5,000 ticks each of controls by chance: finite, in bounds, gas conserved to 1e-12, never through the bottom', () => {
    fc.assert(
      fc.property(seeds, (seed) => {
        const chance = new Chance(seed);
        const rig = chanceRig(chance);
        const state = chanceState(chance, rig);
        const before = totalMol(state);
        let controls = restingControls(320);
        for (let ticks = 0; ticks < 5000;) {
          controls = chanceControls(chance, rig, chance.percent(70), controls);
          const block = 6 * chance.whole(1, 4);
          for (let tick = 0; tick < block; tick++) {
            advance(rig, state, controls, 1);
            const wrong = faults(rig, state);
            if (wrong.length > 0) throw new Error(`tick ${state.tick}: ${wrong.join('; ')}`);
          }
          ticks += block;
          expect(Math.abs(totalMol(state) / before - 1)).toBeLessThan(1e-12);
        }
      }),
      { seed: 21, numRuns: 200, endOnFailure: true },
    );
  }, 60_000);

  test('the force ledger sums to the step’s own balance to 1e-9 N on 10,000 states', () => {
    let compared = 0;
    let worstN = 0;
    for (let seed = 0; compared < 10_000; seed++) {
      const chance = new Chance(seed);
      const rig = chanceRig(chance);
      const state = chanceState(chance, rig);
      let controls = restingControls(320);
      for (let change = 0; change < 25; change++) {
        controls = { ...chanceControls(chance, rig, chance.percent(60), controls), releaseMask: 0 };
        // A change from or to a held breath re-sizes trapped gas at the start of the tick: compare from the tick after.
        advance(rig, state, controls, 6);
        const ledgerN = netOf(ledger(rig, state));
        const flatN = netForceN(rig, state);
        advance(rig, state, controls, 1);
        worstN = Math.max(worstN, Math.abs(state.netN - ledgerN), Math.abs(flatN - ledgerN));
        compared++;
      }
    }
    expect(worstN).toBeLessThan(1e-9);
  }, 60_000);

  test('the ledger without released lead is the step’s balance after letting it go', () => {
    const rig = withLeadKg(EXAMPLE, 4);
    const state = startState(rig, { depthM: 10 });
    const light = netOf(ledger(rig, { ...state, releasedMask: 1 }));
    advance(rig, state, { ...restingControls(320), releaseMask: 1 }, 1);
    expect(state.releasedMask).toBe(1);
    expect(Math.abs(state.netN - light)).toBeLessThan(1e-9);
  });
});

describe('more lead', () => {
  test('is never shallower: submerged, from rest, nothing pressed', () => {
    const kg = fc.double({ min: 0, max: 8, noNaN: true });
    fc.assert(
      fc.property(
        kg,
        fc.double({ min: 1e-3, max: 4, noNaN: true }),
        fc.double({ min: 1.5, max: 30, noNaN: true }),
        seeds,
        (lead, more, depthM, seed) => {
          const jacketM3 = new Chance(seed).between(0, 8e-3);
          const [light, heavy] = [lead, lead + more].map((massKg) => {
            const rig = withLeadKg(EXAMPLE, massKg);
            return { rig, state: startState(rig, { depthM, jacketM3 }) };
          });
          for (let second = 0; second < 60; second++) {
            for (const diver of [light!, heavy!]) advance(diver.rig, diver.state, restingControls(320), 120);
            // At the surface and on the bottom they meet; drag may let one catch up, but not pass.
            if (light!.state.depthM < 0.7) break;
            expect(heavy!.state.depthM).toBeGreaterThanOrEqual(light!.state.depthM - 1e-12);
          }
        },
      ),
      { seed: 22, numRuns: 150 },
    );
  }, 60_000);

  test('weighs more wherever it is', () => {
    const net = (massKg: number) => {
      const rig = withLeadKg(EXAMPLE, massKg);
      return netForceN(rig, instantOf(rig, { depthM: 10 }));
    };
    expect(net(5)).toBeLessThan(net(4));
  });
});
