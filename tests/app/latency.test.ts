import { describe, expect, test } from 'vitest';
import { restingControls, type Controls } from '../../src/dive/index.ts';
import { Latency } from '../../src/app/latency.ts';

/** A page that hears nothing by itself. */
const silent = { addEventListener: () => undefined } as unknown as Window;

describe('Latency', () => {
  test('a press counts from its own time to the first ticks that know of it', () => {
    const latency = new Latency(silent);
    const before: Controls = restingControls(320);
    const after: Controls = { ...before, jacketAdd: 1 };
    expect(latency.words).toBe('Nothing was pressed yet.');
    for (let i = 0; i < 6; i++) latency.frame(i * 16);
    latency.heard(100);
    latency.acted(before);
    latency.ran(before, 110);
    latency.ran(before, 126);
    latency.ran(after, 142);
    expect(latency.words).toBe(
      'From a press to the diver: half within 42 ms, the longest 42 ms, of 1 press. A frame takes 16 ms.',
    );
  });

  test('a press that changes nothing is not counted', () => {
    const latency = new Latency(silent);
    const before: Controls = restingControls(320);
    latency.heard(100);
    latency.acted(before);
    latency.ran({ ...before, jacketVent: 1 }, 109);
    latency.heard(200);
    latency.acted(before);
    latency.ran(before, 210);
    latency.heard(400);
    latency.acted(before);
    latency.ran({ ...before, jacketVent: 1 }, 408);
    latency.heard(500);
    latency.acted(before);
    latency.ran(before, 1100);
    expect(latency.words).toContain('the longest 9 ms, of 2 presses.');
  });
});
