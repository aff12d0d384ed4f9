import { describe, expect, test } from 'vitest';
import firstDive from '../../src/diver/setups/first-dive.yaml';
import drysuit from '../../src/diver/setups/drysuit-membrane.yaml';
import { rigOf, type Setup } from '../../src/diver/index.ts';
import { advance, midBreathCl, restingControls, rowOf, startState } from '../../src/dive/index.ts';
import { stopping } from '../../src/insight/index.ts';
import {
  breathingAs,
  handsOf,
  leadLeft,
  levelRange,
  pressed,
  released,
  restingHands,
  steer,
  valveHPa,
  type Hands,
} from '../../src/app/hands.ts';
import type { Act } from '../../src/panels/index.ts';
import { EXAMPLE, changed, weighed } from '../reference/rigs.ts';

const rig = rigOf(firstDive as Setup);
const at = (pitchDeg: number, depthM = 8) => startState(rig, { depthM, pitchDeg });
const held = (...acts: Act[]) => new Set(acts);

describe('what is done once and stays', () => {
  const dry = rigOf(drysuit as Setup);

  test('the full vent is held until the jacket holds no more than it cannot lose, and then by itself no longer', () => {
    const state = startState(rig, { depthM: 8, jacketM3: 6e-3 });
    let hands = pressed(restingHands(rig, 0), 'vent-all', rig);
    for (let i = 0; i < 200 && hands.ventsAll; i++) {
      const steered = steer(hands, held(), state, rig);
      hands = steered.hands;
      advance(rig, state, steered.controls, 6);
    }
    expect(hands.ventsAll).toBe(false);
    expect(steer(hands, held(), state, rig).controls.jacketVent).toBe(0);
    const left = rowOf(rig, state).jacketM3;
    expect(left).toBeLessThanOrEqual(rig.jacket.residualM3 + 6e-5);
    expect(left).toBeLessThan(0.5e-3);
  });

  test('a second press, gas let in, and a dive that is gone back to end the full vent', () => {
    const vents = pressed(restingHands(rig, 0), 'vent-all', rig);
    const full = startState(rig, { depthM: 8, jacketM3: 6e-3 });
    expect(steer(vents, held(), full, rig).controls.jacketVent).toBe(2);
    expect(pressed(vents, 'vent-all', rig).ventsAll).toBe(false);
    for (const gas of ['add', 'blow'] as const) {
      const { hands, controls } = steer(vents, held(gas), full, rig);
      expect([hands.ventsAll, controls.jacketVent]).toEqual([false, 0]);
    }
    expect(handsOf(restingControls(320), vents).ventsAll).toBe(false);
  });

  test('the drysuit valve is turned from where the setup has it, 2 hPa at a time and no farther than it goes', () => {
    const own = valveHPa(restingHands(dry, 0), dry);
    const turned = pressed(restingHands(dry, 0), 'valve-open', dry);
    expect(valveHPa(turned, dry)).toBe(own - 2);
    expect(steer(turned, held(), startState(dry, { depthM: 8 }), dry).controls.suitValveHPa).toBe(own - 2);
    let hands = turned;
    for (let i = 0; i < 99; i++) hands = pressed(hands, 'valve-open', dry);
    expect(valveHPa(hands, dry)).toBe(0);
    for (let i = 0; i < 99; i++) hands = pressed(hands, 'valve-shut', dry);
    expect(valveHPa(hands, dry)).toBe(60);
    expect(pressed(restingHands(rig, 0), 'valve-open', rig)).toEqual(restingHands(rig, 0));
  });

  test('breath is held from direct lungs only, and let go into them', () => {
    const automatic = restingHands(rig, 0);
    expect(pressed(automatic, 'hold', rig)).toEqual(automatic);
    const direct = pressed(automatic, 'lungs', rig);
    expect(direct.breathing).toBe('direct');
    const holds = pressed(direct, 'hold', rig);
    expect(steer(holds, held(), at(0), rig).controls.breath).toBe(2);
    expect(pressed(holds, 'hold', rig).breathing).toBe('direct');
    expect(pressed(holds, 'lungs', rig).breathing).toBe('automatic');
  });
});

describe('steer()', () => {
  test('moves the level by 0.6 L in a second of holding, and stops half a breath short of full', () => {
    let hands = restingHands(rig, 0);
    for (let i = 0; i < 20; i++) hands = steer(hands, held('in'), at(0), rig).hands;
    expect(hands.levelCl - midBreathCl(rig)).toBeCloseTo(60, 9);
    for (let i = 0; i < 400; i++) hands = steer(hands, held('in'), at(0), rig).hands;
    expect(hands.levelCl * 1e-5).toBeCloseTo(rig.lungs.totalM3 - rig.lungs.tidalM3 / 2, 4);
  });

  test('vents by the vent that the gas lies under: rear when level, shoulder when upright', () => {
    expect(steer(restingHands(rig, 0), held('vent'), at(0), rig).controls.jacketVent).toBe(2);
    expect(steer(restingHands(rig, 90), held('vent'), at(90), rig).controls.jacketVent).toBe(1);
  });

  test('turns to 60° before it thrusts, and back to level afterwards', () => {
    const turning = steer(restingHands(rig, 0), held('kick-down'), at(0), rig);
    expect(turning.controls).toMatchObject({ pitchDeg: -60, finsN: 0 });
    const thrusting = steer(turning.hands, held('kick-down'), at(-60), rig);
    expect(thrusting.controls.finsN).toBeGreaterThan(0);
    expect(steer(thrusting.hands, held(), at(-60), rig).controls).toMatchObject({ pitchDeg: 0, finsN: 0 });
  });

  test('a kick that is held on grows from 30 N to as hard as it goes, and a new one begins gently', () => {
    let { hands, controls } = steer(restingHands(rig, 60), held('kick-up'), at(60), rig);
    expect(controls.finsN).toBe(30);
    for (let i = 0; i < 40; i++) ({ hands, controls } = steer(hands, held('kick-up'), at(60), rig));
    expect(controls.finsN).toBe(100);
    ({ hands } = steer(hands, held(), at(60), rig));
    expect(steer(hands, held('kick-up'), at(60), rig).controls.finsN).toBe(30);
  });

  test('what is held in mid-twentieth is reckoned to its end, and once', () => {
    const before = restingHands(rig, 0);
    const first = steer(before, held('in', 'kick-up'), at(60), rig, 4).hands;
    expect(first.levelCl - before.levelCl).toBeCloseTo(2, 12);
    expect(first.kickedS).toBeCloseTo(4 / 120, 12);
    const more = steer(first, held('in', 'kick-up', 'add'), at(60), rig, 3, held('in', 'kick-up')).hands;
    expect([more.levelCl, more.kickedS]).toEqual([first.levelCl, first.kickedS]);
    const done = steer(more, held('add'), at(60), rig, 2, held('in', 'kick-up', 'add')).hands;
    expect(done.levelCl - before.levelCl).toBeCloseTo(1, 12);
    expect(done.kickedS).toBe(0);
  });

  test('fins stop a diver who holds the key down where the forecast says that fins stop him', () => {
    const heavy = weighed(changed(EXAMPLE, { suit: { cut: 'two-piece', thicknessMm: 7, areaM2: 2.1 } as never }), 4);
    const state = startState(heavy, { depthM: 2, jacketM3: 0 });
    const idle = restingControls(320);
    const fins = stopping(heavy, state, idle).rows.find(({ means }) => means === 'fins')!;
    let hands: Hands = { ...restingHands(heavy, 0), posture: 'level' };
    for (let ticks = 0; ticks < 120 || state.speedMps > 0; ticks += 6) {
      const steered = steer(hands, ticks < 120 ? held() : held('kick-up'), state, heavy);
      hands = steered.hands;
      advance(heavy, state, steered.controls, 6);
      if (ticks > 120 * 20) break;
    }
    expect(fins.stops).toBe(true);
    expect(Math.abs(state.depthM - fins.depthM!)).toBeLessThan(0.1);
  });

  test('hangs upright above a metre and lies level below', () => {
    expect(steer(restingHands(rig, 90), held(), at(90, 0.4), rig).controls.pitchDeg).toBe(90);
    expect(steer(restingHands(rig, 90), held(), at(90, 1.5), rig).controls.pitchDeg).toBe(0);
  });

  test('works suit valves only where there is a suit', () => {
    expect(steer(restingHands(rig, 0), held('suit-add'), at(0), rig).controls.suitAdd).toBe(0);
    const dry = rigOf(drysuit as Setup);
    const state = startState(dry, { depthM: 8 });
    expect(steer(restingHands(dry, 0), held('suit-add'), state, dry).controls.suitAdd).toBe(1);
  });
});

describe('hands', () => {
  test('pressed() brings the level back to the middle, and a posture pressed twice follows the depth again', () => {
    const low = { ...restingHands(rig, 0), levelCl: 200 };
    expect(pressed(low, 'middle', rig).levelCl).toBe(midBreathCl(rig));
    const up = pressed(low, 'head-up', rig);
    expect(up.posture).toBe('head-up');
    expect(pressed(up, 'head-up', rig).posture).toBeNull();
  });

  test('released() lets one piece go at a time, never one that cannot be', () => {
    const start = restingHands(rig, 0);
    expect(leadLeft(start, rig)).toBe(2);
    const once = released(start, rig, false);
    expect(leadLeft(once, rig)).toBe(1);
    const all = released(once, rig, true);
    expect(all.releaseMask).toBe(0b011);
    expect(released(all, rig, true)).toEqual(all);
  });

  test('lead comes off and goes back on a piece a press, at the surface, and is not there to be let go meanwhile', () => {
    const state = startState(rig, { depthM: 0.3, jacketM3: 9e-3, pitchDeg: 90 });
    const press = (act: Act, before: Hands) => {
      const { hands, controls } = steer(pressed(before, act, rig), held(), state, rig);
      advance(rig, state, controls, 6);
      return { hands, handLead: controls.handLead };
    };
    const once = press('lead-off', restingHands(rig, 90));
    expect(once.handLead).toBe(2);
    expect(state.releasedMask).toBe(0b010);
    expect(steer(once.hands, held(), state, rig).controls.handLead).toBe(0);
    expect(leadLeft(once.hands, rig, state.releasedMask)).toBe(1);
    expect(released(once.hands, rig, true, state.releasedMask).releaseMask).toBe(0b001);
    expect(press('lead-on', once.hands).handLead).toBe(-2);
    expect(state.releasedMask).toBe(0);
    expect(press('lead-on', once.hands).handLead).toBe(0);
  });

  test('breathingAs() brings a direct level back into the range of the automatic breath', () => {
    const [least] = levelRange(rig, 'direct');
    const direct = { ...restingHands(rig, 0), breathing: 'direct' as const, levelCl: least };
    expect(breathingAs(direct, 'automatic', rig).levelCl).toBe(levelRange(rig, 'automatic')[0]);
  });
});
