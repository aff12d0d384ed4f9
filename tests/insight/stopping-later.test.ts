import { describe, expect, test } from 'vitest';
import { copyState } from '../../src/dive/index.ts';
import { USUAL_ASK, stopping, type Means } from '../../src/insight/index.ts';
import { Chance } from '../reference/chance.ts';
import { READY, chanceMoment } from './stopping-moments.ts';

/** Water of one density, where the pull only grows on the way; over a halocline a later start can be the better one. */
const PLAIN = [...READY.keys()].filter((id) => id !== 'halocline');

describe('stopping(): a second later is never better', () => {
  // Automatic breathing within the range of the ask never does better than the ends of it.
  const moments = Array.from({ length: 400 }, (_, i) => {
    const chance = new Chance(9000 + i);
    const moment = chanceMoment(chance, PLAIN);
    const controls = { ...moment.controls, breath: 0, lungCl: 320 };
    const state = copyState(moment.state);
    state.lungM3 = Math.min(Math.max(state.lungM3, 2.7e-3), 3.7e-3);
    const ask = { ...moment.ask, lungs: USUAL_ASK.lungs, above: USUAL_ASK.above };
    return { ...moment, controls, state, ask, laterS: ask.reactionS + chance.whole(1, 60) / 20 };
  });
  // Fins are left out: turning head-up costs drag, and a sprint that comes too early is spent before it counts.
  const without: readonly Means[] = ['none', 'breath', 'gas', 'all', 'lead'];

  test.each(without)(
    'reactionS: who acts later by %s stops no nearer, to 5 mm, and not at all if he could not before',
    (means) => {
      let both = 0;
      for (const { rig, state, controls, ask, laterS, id } of moments) {
        const soon = stopping(rig, state, controls, ask);
        const late = stopping(rig, state, controls, { ...ask, reactionS: laterS }, soon.way);
        const [a, b] = [soon, late].map(({ rows }) => rows.find((row) => row.means === means));
        // Nobody lets lead go on the way up.
        if (!b?.stops) continue;
        both++;
        expect(a!.stops, id).toBe(true);
        expect(soon.way * (b.depthM! - a!.depthM!), id).toBeGreaterThan(-5e-3);
      }
      expect(both).toBeGreaterThan(150);
    },
  );

  test.each([
    ['none', 'breath'],
    ['none', 'gas'],
  ] as const)('rows: who does nothing and stops stops by %s as %s, no farther', (less, more) => {
    let stops = 0;
    for (const { rig, state, controls, ask, id } of moments) {
      const { way, rows } = stopping(rig, state, controls, ask);
      const [a, b] = [less, more].map((means) => rows.find((row) => row.means === means)!);
      if (!a!.stops) continue;
      stops++;
      expect(b!.stops, id).toBe(true);
      expect(way * (b!.depthM! - a!.depthM!), id).toBeLessThan(5e-3);
    }
    expect(stops).toBeGreaterThan(100);
  });

  test('rows: lead let go besides all other means never stops a diver deeper', () => {
    let stops = 0;
    for (const { rig, state, controls, ask, id } of moments) {
      const { way, rows } = stopping(rig, state, controls, ask);
      const all = rows.find(({ means }) => means === 'all')!;
      const lead = rows.find(({ means }) => means === 'lead');
      if (way < 0 || !all.stops) continue;
      stops++;
      expect(lead!.stops, id).toBe(true);
      expect(lead!.depthM! - all.depthM!, id).toBeLessThan(5e-3);
    }
    expect(stops).toBeGreaterThan(100);
  });
});
