import { expect, test } from 'vitest';
import { advance, restingControls, startState } from '../../src/dive/index.ts';
import { MEANS, USUAL_ASK, stopping, type Means } from '../../src/insight/index.ts';
import { EXAMPLE, changed, weighed } from '../reference/rigs.ts';
import { fly } from './full-stepping.ts';

const TWO_PIECE = changed(EXAMPLE, { suit: { cut: 'two-piece', thicknessMm: 7, areaM2: 2.1 } as never });
/** Ticks between two looks: a quarter of a second, in which he sinks 15 cm at most. */
const LOOK_TICKS = 30;

/** Depth down to which a means is still enough, as forecast and as flown; undefined where it never is. */
interface Enough {
  saidM?: number;
  flownM?: number;
}

// The depths below are a record of what the model makes of 40 m of sea, 200 bar, a second to react.
test('stopping(): 7 mm two-piece with 4 kg too much, let go at 2 m with an empty jacket: breath is too late at once, then fins, then gas stop being enough, at the depths flown', () => {
  const rig = weighed(TWO_PIECE, 4);
  const controls = restingControls(320);
  const state = startState(rig, { depthM: 2, jacketM3: 0 });
  const enough = new Map<Means, Enough>(MEANS.map((means) => [means, {}]));
  while (state.resting === 0) {
    for (const { means, stops } of stopping(rig, state, controls, USUAL_ASK, 1).rows) {
      const one = enough.get(means)!;
      if (stops) one.saidM = state.depthM;
      if (fly(rig, state, controls, USUAL_ASK, means, 1).stops) one.flownM = state.depthM;
    }
    advance(rig, state, controls, LOOK_TICKS);
  }
  const metres = (depthM?: number) => (depthM === undefined ? 'never' : `to ${depthM.toFixed(1)} m`);
  process.stdout.write(
    `\nLet go at 2 m, 7 mm two-piece, 4 kg too much, jacket empty, 1 s to react: ${[...enough].map(([means, { flownM }]) => `${means} ${metres(flownM)}`).join(', ')}.\n`,
  );
  for (const [means, { saidM, flownM }] of enough) expect(saidM, means).toBe(flownM);
  const depth = (means: Means) => enough.get(means)!.flownM ?? 2;
  expect(enough.get('none')).toEqual({});
  expect(enough.get('breath')).toEqual({});
  expect(Math.abs(depth('fins') - 2.4)).toBeLessThan(0.1);
  expect(Math.abs(depth('gas') - 32.9)).toBeLessThan(0.1);
  expect(Math.abs(depth('all') - 36.7)).toBeLessThan(0.1);
  expect(Math.abs(depth('lead') - 38.2)).toBeLessThan(0.1);
});
