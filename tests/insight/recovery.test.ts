import { describe, expect, test } from 'vitest';
import { HEAD_OUT_M } from '../../src/diver/index.ts';
import { restingControls, startState } from '../../src/dive/index.ts';
import { MEANS, USUAL_ASK, recovers, withMoreLead, type Floor, type Means, type Way } from '../../src/insight/index.ts';
import { Chance } from '../reference/chance.ts';
import { carried, fly, groundM } from './full-stepping.ts';
import { READY, RIGS, chanceMoment, type Moment } from './stopping-moments.ts';

const MOMENTS = 40;
/** As near to its limit as this, metres, a means may do either. */
const NEAR_M = 0.15;
const PLAIN = [...READY.keys()].filter((id) => id !== 'halocline');

interface Limit {
  readonly what: string;
  readonly moment: Moment;
  readonly means: Means;
  readonly way: Way;
  readonly limitM: number | null;
  /** Mid-chest where the ground, or the depth that is asked not to be passed, is reached. */
  readonly bottomM: number;
}

function limitsOf(chance: Chance, above?: Floor, ids = PLAIN): Limit[] {
  return Array.from({ length: MOMENTS }, (_, i) => {
    const usual = chanceMoment(chance, ids);
    const moment = { ...usual, ask: { ...usual.ask, above: above ?? USUAL_ASK.above } };
    const { id, rig, state, controls, ask } = moment;
    const groundDepthM = groundM(rig, state, controls);
    const bottomM = ask.below.kind === 'depth' ? Math.min(groundDepthM, ask.below.depthM) : groundDepthM;
    return recovers(rig, state, controls, ask).flatMap(({ means, deepestM, shallowestM }) =>
      ([1, -1] as const)
        .filter((way) => means !== 'lead' || way > 0)
        .map((way) => ({
          what: `${i} ${id} ${means} ${way}`,
          moment,
          means,
          way,
          limitM: way > 0 ? deepestM : shallowestM,
          bottomM,
        })),
    );
  }).flat();
}

function stopsFrom({ moment: { rig, state, controls, ask }, means, way }: Limit, depthM: number): boolean {
  return fly(rig, carried(rig, state, depthM), controls, ask, means, way).stops;
}

/** Where a dive from 0.15 m to either side of its limit does what is not said of it. */
function wrongBesides(limits: readonly Limit[]): { looked: number; wrong: string[] } {
  const wrong: string[] = [];
  let looked = 0;
  for (const limit of limits) {
    const { way, limitM, bottomM, what } = limit;
    if (limitM === null) continue;
    for (const side of [-1, 1] as const) {
      const depthM = limitM + side * way * NEAR_M;
      if (depthM < HEAD_OUT_M || depthM > bottomM) continue;
      looked++;
      if (stopsFrom(limit, depthM) !== side < 0) wrong.push(`${what}: said ${limitM}, flown from ${depthM}`);
    }
  }
  return { looked, wrong };
}

/** Where a dive from any depth does what is not said of it, and how many dives stop, and do not. */
function wrongAnywhere(chance: Chance, limits: readonly Limit[]): { stops: number; lost: number; wrong: string[] } {
  const wrong: string[] = [];
  let stops = 0;
  let lost = 0;
  for (const limit of limits) {
    const { way, limitM, bottomM, what } = limit;
    const depthM = chance.between(HEAD_OUT_M, bottomM);
    if (limitM !== null && Math.abs(depthM - limitM) < NEAR_M) continue;
    const said = limitM !== null && way * (limitM - depthM) > 0;
    if (said) stops++;
    else lost++;
    if (stopsFrom(limit, depthM) !== said) wrong.push(`${what}: said ${limitM}, flown from ${depthM}`);
  }
  return { stops, lost, wrong };
}

describe('recovers() against the full model, 40 moments by chance in water of one density', () => {
  const chance = new Chance(41);
  const limits = limitsOf(chance);

  test('deepestM, shallowestM: 0.15 m on the safe side of it a means stops the dive, 0.15 m on the other it does not', () => {
    const { looked, wrong } = wrongBesides(limits);
    expect(wrong).toEqual([]);
    expect(looked).toBeGreaterThan(300);
  });

  test('deepestM, shallowestM: from any depth a means stops the dive exactly on the safe side of it; null says from none', () => {
    const { stops, lost, wrong } = wrongAnywhere(chance, limits);
    expect(wrong).toEqual([]);
    expect(Math.min(stops, lost)).toBeGreaterThan(50);
  });

  test('shallowestM: a limit of speed instead of the surface is kept from any depth below it', () => {
    const slow = limitsOf(chance, { kind: 'rate', mps: 0.3 }).filter(({ way }) => way < 0);
    // Near the surface there is no way left in which to become too fast: the limit may be kept there as well.
    const below = slow.map((limit) => ({ limit, depthM: chance.between(Math.min(4, limit.bottomM), limit.bottomM) }));
    const wrong = below.filter(({ limit, depthM }) => {
      if (limit.limitM === null || depthM - limit.limitM < NEAR_M) return false;
      return !stopsFrom(limit, depthM);
    });
    expect(wrong.map(({ limit, depthM }) => `${limit.what}: said ${limit.limitM}, flown from ${depthM}`)).toEqual([]);
  });

  test('recovers() names every means once, the gentlest first; who rises is offered no lead', () => {
    const { rig, state, controls, ask } = chanceMoment(chance, PLAIN);
    const rows = recovers(rig, state, controls, ask);
    expect(rows.map(({ means }) => means)).toEqual(MEANS);
    expect(rows.at(-1)!.shallowestM).toBeNull();
  });
});

// In layers what recovers may lie in several stretches: the ends are those of the one about the diver.
test('recovers() over a halocline: 0.15 m inside its limits a means stops the dive, 0.15 m outside it does not; where the diver is it says what his own dive does', () => {
  const limits = limitsOf(new Chance(43), undefined, ['halocline']);
  const { looked, wrong } = wrongBesides(limits);
  expect(wrong).toEqual([]);
  expect(looked).toBeGreaterThan(150);
  let inside = 0;
  for (const limit of limits) {
    const { depthM } = limit.moment.state;
    if (limit.limitM === null || Math.abs(depthM - limit.limitM) < NEAR_M || !stopsFrom(limit, depthM)) continue;
    expect(limit.way * (limit.limitM - depthM), limit.what).toBeGreaterThan(0);
    inside++;
  }
  expect(inside).toBeGreaterThan(100);
});

test('recovers() of a rig with less lead is that of the lighter diver, whatever lead the state was of', () => {
  const rig = RIGS.get('two-piece-heavy')!;
  const state = startState(rig, { depthM: 8, jacketM3: 3e-3, speedMps: 0.1 });
  const controls = restingControls(320);
  const lighter = withMoreLead(rig, -4);
  const breath = recovers(lighter, state, controls, USUAL_ASK).find(({ means }) => means === 'breath')!;
  const own = { ...startState(lighter, { depthM: 8, jacketM3: 3e-3, speedMps: 0.1 }) };
  for (const side of [-1, 1] as const) {
    const from = carried(lighter, own, breath.deepestM! + side * NEAR_M);
    expect(fly(lighter, from, controls, USUAL_ASK, 'breath', 1).stops).toBe(side < 0);
  }
  expect(breath.deepestM!).toBeGreaterThan(recovers(rig, state, controls, USUAL_ASK)[1]!.deepestM! + 5);
});
