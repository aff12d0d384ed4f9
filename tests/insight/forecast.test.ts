import { describe, expect, test } from 'vitest';
import { Dive, advance, copyState, hashOf, restingControls, startState } from '../../src/dive/index.ts';
import { FORECAST_S, Forecast, handsOff } from '../../src/insight/index.ts';
import { EXAMPLE, weighed } from '../reference/rigs.ts';

const RIG = weighed(EXAMPLE, 2);

describe('Forecast', () => {
  test('depthsM() is what the dive does when nothing is done', () => {
    const dive = new Dive(RIG, startState(RIG, { depthM: 9, jacketM3: 3e-3 }), restingControls(320));
    dive.advance(600);
    const depths = new Forecast(RIG).depthsM(dive.state, dive.controls);
    const then = [dive.state.depthM];
    for (let second = 0; second < FORECAST_S; second++) {
      dive.advance(120);
      then.push(dive.state.depthM);
    }
    expect(depths).toEqual(then);
  });

  test('depthsM() leaves the dive as it was, and twice the same question has the same answer', () => {
    const state = startState(RIG, { depthM: 9 });
    const before = hashOf(state);
    const forecast = new Forecast(RIG);
    const first = forecast.depthsM(state, restingControls(320));
    const other = startState(RIG, { depthM: 15 });
    forecast.depthsM(other, restingControls(320));
    expect(forecast.depthsM(state, restingControls(320))).toEqual(first);
    expect(hashOf(state)).toBe(before);
  });

  test('handsOff() lets go of presses and fins, keeps breath, attitude and the valve’s setting', () => {
    const busy = {
      ...restingControls(350),
      jacketAdd: 1,
      suitVent: 1,
      finsN: 40,
      oral: 1,
      holdLine: 1,
      breath: 2,
      pitchDeg: 60,
      suitValveHPa: 20,
    };
    expect(handsOff(busy)).toEqual({ ...restingControls(350), breath: 2, pitchDeg: 60, suitValveHPa: 20 });
  });

  test('depthsM() of a diver who holds the line keeps him there, while without it he would rise', () => {
    const rig = { ...RIG, line: true };
    const light = startState(rig, { depthM: 5, jacketM3: 8e-3 });
    const forecast = new Forecast(rig);
    expect(forecast.depthsM(light, restingControls(320)).at(-1)).toBeLessThan(4);
    for (const depthM of forecast.depthsM(light, { ...restingControls(320), holdLine: 1 }))
      expect(Math.abs(depthM - 5)).toBeLessThan(0.1);
  });

  test('a forecast with the inflator pressed shows the dive without it', () => {
    const state = startState(RIG, { depthM: 9 });
    const pressed = new Forecast(RIG).depthsM(state, { ...restingControls(320), jacketAdd: 1 });
    const idle = copyState(state);
    advance(RIG, idle, restingControls(320), 120 * FORECAST_S);
    expect(pressed.at(-1)).toBe(idle.depthM);
  });
});
