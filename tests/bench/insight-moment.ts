import { restingControls, type Controls, type DiveState } from '../../src/dive/index.ts';
import {
  Forecast,
  USUAL_ASK,
  USUAL_LUNGS,
  breathReach,
  hilltop,
  insightOf,
  neutralDepths,
  recovers,
  steepnessAt,
  stopping,
} from '../../src/insight/index.ts';
import { Chance, chanceControls, chanceState } from '../reference/chance.ts';
import { EXAMPLE, setupOf, weighed } from '../reference/rigs.ts';
import { DRYSUIT, FOAM, LAYERS } from './divers.ts';
import { TWO_PIECE } from './insight-map.ts';
import type { Measured } from './measure.ts';

const MOMENTS = 200;
const ROUNDS = 7;
const WARM_UP = 3;
/** What all that is said of a moment may take, milliseconds, in 95 of 100 moments. */
const MOST_MS = 1;

const LOOP = weighed({ ...setupOf('\napparatus: loop'), suit: EXAMPLE.suit }, 1);
const RIGS = [FOAM.rig, DRYSUIT.rig, LAYERS.rig, TWO_PIECE, LOOP];

type Said = (state: DiveState, controls: Controls, rig: (typeof RIGS)[number]) => unknown;

/** All that is said of a moment; and, so that it is seen where the time goes, some parts by themselves. */
const SAID: Readonly<Record<string, Said>> = {
  'all that is said of a moment': (state, controls, rig) => insightOf(rig, state, controls, USUAL_ASK),
  'its neutral depths of one breath': (state, _, rig) => neutralDepths(rig, state),
  'its steepness': (state, _, rig) => steepnessAt(rig, state),
  'its breath reach': (state, _, rig) => breathReach(rig, state, USUAL_LUNGS),
  'its stopping by all means': (state, controls, rig) => stopping(rig, state, controls, USUAL_ASK),
  'its ten seconds ahead': (state, controls, rig) => forecasts.get(rig)!.depthsM(state, controls),
  'a hilltop of 81 points besides': (state, _, rig) => hilltop(rig, state, state.lungM3, 0.7, rig.bottomM),
  'the limits of all means besides': (state, controls, rig) => recovers(rig, state, controls, USUAL_ASK),
};
const forecasts = new Map(RIGS.map((rig) => [rig, new Forecast(rig)]));

/**
 * Milliseconds of what is said of one moment, over 200 moments by chance: of each the fastest of seven rounds, since
 * whatever else the machine does can only add; of those the one that 95 of 100 do not exceed.
 */
export function momentsAsked(): Measured[] {
  const chance = new Chance(83);
  const moments = Array.from({ length: MOMENTS }, (_, i) => {
    const rig = RIGS[i % RIGS.length]!;
    return { rig, state: chanceState(chance, rig), controls: chanceControls(chance, rig, false, restingControls(320)) };
  });
  const names = Object.keys(SAID);
  const ms = moments.map(() => names.map(() => [] as number[]));
  for (let round = 0; round < WARM_UP + ROUNDS; round++)
    moments.forEach(({ rig, state, controls }, i) =>
      names.forEach((name, k) => {
        const from = performance.now();
        SAID[name]!(state, controls, rig);
        if (round >= WARM_UP) ms[i]![k]!.push(performance.now() - from);
      }),
    );
  return names.map((name, k) => {
    const least = ms.map((rounds) => Math.min(...rounds[k]!));
    return { ...overMoments(`ms of ${name}, 95 of 100 moments`, least), ...(k === 0 ? { most: MOST_MS } : {}) };
  });
}

function overMoments(name: string, ms: readonly number[]): Measured {
  const sorted = [...ms].sort((a, b) => a - b);
  const at = (share: number) => sorted[Math.floor(share * (sorted.length - 1))]!;
  return { name, value: at(0.95), spread: [at(0.25), at(0.75)] };
}
