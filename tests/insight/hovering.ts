import { direction, startState, type DiveState } from '../../src/dive/index.ts';
import { instantOf, netForceN, rigOf, type Instant, type Rig, type Setup } from '../../src/diver/index.ts';
import { Chance, chanceRig, chanceState } from '../reference/chance.ts';
import { EXAMPLE, changed, weighed } from '../reference/rigs.ts';

/** 7 mm two-piece of 2.1 m². */
export const TWO_PIECE = changed(EXAMPLE, { suit: { cut: 'two-piece', thicknessMm: 7, areaM2: 2.1 } as never });

/** A change of sign of a function between two places, by halving. */
export function halved(low: number, high: number, f: (x: number) => number): number {
  const rises = f(high) > f(low);
  let [a, b] = [low, high];
  for (let i = 0; i < 80; i++) {
    const middle = (a + b) / 2;
    if (f(middle) > 0 === rises) b = middle;
    else a = middle;
  }
  return (a + b) / 2;
}

/** Level at a depth with 120 bar, neutral by the jacket with these lungs; its gas then stays what it is. */
export function neutralAt(rig: Rig, depthM: number, lungM3 = 3.2e-3): Instant {
  const at = (jacketM3: number) => instantOf(rig, { depthM, jacketM3, lungM3, cylinderBar: 120 });
  return at(halved(0, rig.jacket.capacityM3, (jacketM3) => netForceN(rig, at(jacketM3))));
}

/** The same as a state of rest that can be stepped. */
export function restingAt(rig: Rig, at: Instant): DiveState {
  const state = startState(rig, { depthM: at.depthM, lungM3: at.lungM3 });
  return Object.assign(state, at, { cylinderMol: [...at.cylinderMol] });
}

/** A rig with all the water one could want below. */
export const deep = (rig: Rig, bottomM = 120): Rig => ({ ...rig, bottomM });

/** Lighter water over denser, or the other way round, with a mixing zone about 10 m. */
export function layered(mixingM: number, abovePsu = 5, belowPsu = 33, setup: Setup = EXAMPLE): Setup {
  const layers = [
    { fromM: 0, salinityPsu: abovePsu, temperatureC: 15, mixingM: 0 },
    { fromM: 10, salinityPsu: belowPsu, temperatureC: 15, mixingM },
  ];
  return changed(setup, { water: { layers } });
}

/**
 * Rigs and moments by chance: any water, suit, circuit, attitude; afloat, full bags, squeezed suits; and every third a diver who is
 * neutral somewhere about a change of water, which is where neutral depths come in pairs.
 */
export function* chances(count: number, seed: number): Generator<readonly [Rig, DiveState]> {
  const chance = new Chance(seed);
  for (let i = 0; i < count; i++) {
    if (i % 3 !== 0) {
      const rig = chanceRig(chance);
      const state = chanceState(chance, rig);
      if (rig.loop) state.loopMol *= chance.between(0.3, 2.5);
      if (rig.drysuit) state.suitMol *= chance.between(0.2, 4);
      yield [rig, state];
    } else {
      const [abovePsu, belowPsu] = chance.one([
        [5, 33],
        [14, 33],
        [35, 20],
      ] as const);
      const setup = layered(chance.one([0, 0.2, 1, 4, 12]), abovePsu, belowPsu);
      const rig = rigOf({ ...setup, lead: weighed(setup, chance.between(0, 6)).lead.map(pieceOf) });
      const state = restingAt(rig, neutralAt(rig, chance.between(9, 11)));
      const facing = direction(chance.one([0, 5, 90]));
      yield [rig, { ...state, pitchCos: facing.cos, pitchSin: facing.sin }];
    }
  }
}

const pieceOf = ({ massKg }: { readonly massKg: number }) => ({ massKg, place: 'belt', releasable: true }) as const;
