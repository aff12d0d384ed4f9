import { midBreathM3 } from '../../src/diver/index.ts';
import { restingControls, type Controls, type DiveState } from '../../src/dive/index.ts';
import {
  Forecast,
  USUAL_ASK,
  USUAL_LUNGS,
  breathReach,
  hilltop,
  neutralDepths,
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

/** All that is said of a moment, each part by itself. */
const PARTS: Readonly<Record<string, (state: DiveState, controls: Controls, rig: (typeof RIGS)[number]) => unknown>> = {
  'neutral depths of four breaths': (state, _, rig) =>
    [state.lungM3, USUAL_LUNGS.leastM3, midBreathM3(rig), USUAL_LUNGS.mostM3].map((lungM3) =>
      neutralDepths(rig, state, lungM3),
    ),
  steepness: (state, _, rig) => steepnessAt(rig, state),
  'hilltop of 81 points': (state, _, rig) => hilltop(rig, state, state.lungM3, 0.7, rig.bottomM),
  'breath reach': (state, _, rig) => breathReach(rig, state, USUAL_LUNGS),
  'stopping by all means': (state, controls, rig) => stopping(rig, state, controls, USUAL_ASK),
  'ten seconds ahead': (state, controls, rig) => forecasts.get(rig)!.depthsM(state, controls),
};
const forecasts = new Map(RIGS.map((rig) => [rig, new Forecast(rig)]));

/**
 * Milliseconds of what is said of one moment, over 200 moments by chance: of each the fastest of seven rounds, since
 * whatever else the machine does can only add; of those the one that 95 of 100 do not exceed; first all, then each part.
 */
export function momentsAsked(): Measured[] {
  const chance = new Chance(83);
  const moments = Array.from({ length: MOMENTS }, (_, i) => {
    const rig = RIGS[i % RIGS.length]!;
    return { rig, state: chanceState(chance, rig), controls: chanceControls(chance, rig, false, restingControls(320)) };
  });
  const names = Object.keys(PARTS);
  const ms = moments.map(() => names.map(() => [] as number[]));
  for (let round = 0; round < WARM_UP + ROUNDS; round++)
    moments.forEach(({ rig, state, controls }, i) =>
      names.forEach((name, k) => {
        const from = performance.now();
        PARTS[name]!(state, controls, rig);
        if (round >= WARM_UP) ms[i]![k]!.push(performance.now() - from);
      }),
    );
  const each = ms.map((rounds) => rounds.map((one) => Math.min(...one)));
  const sums = each.map((parts) => parts.reduce((sum, one) => sum + one, 0));
  return [
    { ...overMoments('ms of all that is said of a moment, 95 of 100 moments', sums), most: MOST_MS },
    ...names.map((name, k) =>
      overMoments(
        `ms of it: ${name}, 95 of 100 moments`,
        each.map((parts) => parts[k]!),
      ),
    ),
  ];
}

function overMoments(name: string, ms: readonly number[]): Measured {
  const sorted = [...ms].sort((a, b) => a - b);
  const at = (share: number) => sorted[Math.floor(share * (sorted.length - 1))]!;
  return { name, value: at(0.95), spread: [at(0.25), at(0.75)] };
}
