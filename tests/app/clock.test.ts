import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { NEW_CLOCK, betweenTicks, passTime, type Clock } from '../../src/app/clock.ts';

function ticksOf(frames: readonly number[], speed = 1): { ticks: number; clock: Clock } {
  return frames.reduce(
    (sum, realS) => {
      const { clock, ticks } = passTime(sum.clock, realS, speed);
      return { clock, ticks: sum.ticks + ticks };
    },
    { ticks: 0, clock: NEW_CLOCK },
  );
}

describe('passTime()', () => {
  test.each([30, 60, 90, 144, 240])('gives 1200 ticks in ten seconds at %i frames a second', (hertz) => {
    const { ticks, clock } = ticksOf(Array.from({ length: hertz * 10 }, () => 1 / hertz));
    expect(ticks).toBe(1200);
    expect(clock.droppedS).toBe(0);
  });

  test('runs a quarter as many ticks at a quarter speed and twice as many at double', () => {
    const frames = Array.from({ length: 600 }, () => 1 / 60);
    expect(ticksOf(frames, 0.25).ticks).toBe(300);
    expect(ticksOf(frames, 2).ticks).toBe(2400);
  });

  test('drops what a stall of five seconds has beyond a quarter second, and counts it', () => {
    const { ticks, clock } = passTime(NEW_CLOCK, 5, 1);
    expect(ticks).toBe(30);
    expect(clock.droppedS).toBeCloseTo(4.75, 12);
  });

  test('never goes back: a frame of negative length runs nothing', () => {
    expect(passTime(NEW_CLOCK, -3, 1)).toEqual({ clock: NEW_CLOCK, ticks: 0 });
  });

  test('loses no time: ticks, what waits and what was dropped add up to what passed', () => {
    fc.assert(
      fc.property(fc.array(fc.double({ min: 0, max: 2, noNaN: true }), { maxLength: 200 }), (frames) => {
        const { ticks, clock } = ticksOf(frames);
        const passedS = frames.reduce((sum, realS) => sum + realS, 0);
        expect(ticks / 120 + clock.waitingS + clock.droppedS).toBeCloseTo(passedS, 5);
        expect(betweenTicks(clock)).toBeGreaterThanOrEqual(0);
        expect(betweenTicks(clock)).toBeLessThanOrEqual(1);
      }),
    );
  });
});
