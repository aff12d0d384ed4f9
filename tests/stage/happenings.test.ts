// @vitest-environment happy-dom
import { describe, expect, test } from 'vitest';
import { FLAG, restingControls, type DiveEvent } from '../../src/dive/index.ts';
import { rigOf, type Setup } from '../../src/diver/index.ts';
import drysuit from '../../src/diver/setups/drysuit-foam.yaml';
import { doingsOf } from '../../src/stage/doings.ts';
import { looseOf } from '../../src/stage/loose-lead.ts';
import { siltAt } from '../../src/stage/silt.ts';
import { diveAt, rig, viewOf } from './views.ts';

const controls = restingControls(320);
const state = viewOf().state;

describe('doingsOf()', () => {
  test('says nothing where nothing is pressed and nothing is wrong', () => {
    const { words, hoses, spouts } = doingsOf(viewOf());
    expect([words, hoses, spouts]).toEqual([[], [], []]);
  });

  test('has a word and a place on the figure for gas that goes in and out', () => {
    const adds = doingsOf(viewOf({ controls: { ...controls, jacketAdd: 1 } }));
    expect(adds.words).toEqual(['gas into the jacket']);
    expect(adds.hoses).toHaveLength(1);
    const vents = doingsOf(viewOf({ controls: { ...controls, jacketVent: 2 } }));
    expect(vents.words).toEqual(['gas out of the jacket']);
    expect(vents.spouts).toHaveLength(1);
  });

  test('shows no gas where there is none to move, and says why', () => {
    const empty = doingsOf(viewOf({ controls: { ...controls, jacketVent: 2 }, state: { ...state, jacketMol: 0 } }));
    expect(empty).toMatchObject({ words: ['jacket is empty'], spouts: [] });
    const dead = { ...state, flags: FLAG.inflatorDead };
    expect(doingsOf(viewOf({ controls: { ...controls, jacketAdd: 1 }, state: dead }))).toMatchObject({
      words: ['inflator gives no more'],
      hoses: [],
    });
  });

  test('names what hurts first, and shows it on the figure', () => {
    const flags = FLAG.overpressure | FLAG.relief;
    const hurt = doingsOf(viewOf({ state: { ...state, flags } }));
    expect(hurt.words).toEqual(['lungs stretched', 'relief valve lets gas out']);
    expect(hurt.lungsStretched).toBe(true);
    expect(doingsOf(viewOf({ state: { ...state, flags: FLAG.overpressure | FLAG.critical } })).words).toEqual([
      'lungs stretched too far',
    ]);
    const dry = rigOf(drysuit as Setup);
    expect(doingsOf(viewOf({ rig: dry, state: { ...state, flags: FLAG.suitSqueeze } }))).toMatchObject({
      words: ['suit squeezes'],
      suitSqueezed: true,
    });
  });
});

describe('looseOf()', () => {
  /** A dive that lets its first piece go after a second. */
  function letGo() {
    const dive = diveAt(8);
    dive.advance(120);
    dive.steer({ ...controls, releaseMask: 1 });
    dive.advance(600);
    return dive;
  }

  test('has the piece from the moment it goes, near the waist it hung at, and before that none', () => {
    const { events, recording } = letGo();
    const view = { events, recording };
    expect(looseOf(viewOf({ ...view, nowS: 0.9 }))).toEqual([]);
    const [piece] = looseOf(viewOf({ ...view, nowS: 1.2 }));
    expect(piece!.drop.massKg).toBe(rig.lead[0]!.massKg);
    expect(piece!.drop.depthM).toBeCloseTo(8.1, 0);
    expect(piece!.drop.besideM).toBeGreaterThan(-0.5);
    expect(piece!.drop.besideM).toBeLessThan(-0.2);
    expect(piece!.water.groundM).toBe(rig.bottomM);
  });

  test('says the same of a piece at every later moment, whatever the diver does by then', () => {
    const { events, recording, state: later } = letGo();
    const at = (nowS: number, wish = {}) => looseOf(viewOf({ events, recording, nowS, ...wish }));
    expect(at(5, { state: { ...later, thrustN: 45 }, reducedMotion: true })).toEqual(at(1.2));
  });
});

describe('siltAt()', () => {
  const touched: DiveEvent = { tick: 240, kind: 'bottom-touched', speedMps: 0.3 };
  const dive = diveAt(11.5);
  dive.advance(120 * 20);
  const { recording } = dive;
  const at = (nowS: number, wish = {}) => siltAt(viewOf({ events: [touched], recording, nowS, ...wish }));

  test('hangs over the ground after a touch, thins out and is gone', () => {
    expect(at(1.9)).toEqual([]);
    const dense = [2.5, 4, 7, 10.5].map((nowS) => Math.max(...at(nowS).map((puff) => puff.dense)));
    expect(dense).toEqual([...dense].sort((a, b) => b - a));
    expect(at(11.1)).toEqual([]);
    for (const { depthM } of at(4)) {
      expect(depthM).toBeLessThanOrEqual(rig.bottomM);
      expect(depthM).toBeGreaterThan(rig.bottomM - 0.5);
    }
  });

  test('is as much as the diver was fast', () => {
    const soft = at(4, { events: [{ ...touched, speedMps: 0.05 }] });
    const dense = (puffs: ReturnType<typeof at>) => puffs.reduce((sum, puff) => sum + puff.dense, 0);
    expect(dense(soft)).toBeLessThan(dense(at(4)) / 2);
  });

  test('stands still where motion is unwelcome', () => {
    expect(at(3, { reducedMotion: true })).toEqual(at(8, { reducedMotion: true }));
    expect(at(3)).not.toEqual(at(8));
  });

  test('counts a burst of touches as one', () => {
    const burst = [0, 30, 60].map((more) => ({ ...touched, tick: 240 + more }));
    expect(at(4, { events: burst })).toHaveLength(at(4).length);
  });
});
