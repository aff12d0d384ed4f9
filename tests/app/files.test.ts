import { describe, expect, test } from 'vitest';
import firstDive from '../../src/diver/setups/first-dive.yaml';
import { rigOf, type Setup } from '../../src/diver/index.ts';
import { writeRun } from '../../src/dive/file.ts';
import { openFile } from '../../src/app/files.ts';
import { Flight, afloatStart } from '../../src/app/flight.ts';
import type { Act } from '../../src/panels/index.ts';

describe('openFile()', () => {
  test('a saved dive comes back to the bit, and can be flown on', async () => {
    const rig = rigOf(firstDive as Setup);
    const flight = new Flight(rig, afloatStart(rig));
    flight.run(
      1000,
      () => new Set<Act>(['vent', 'out']),
      () => true,
    );
    const bytes = writeRun(flight.dive.run(), { name: 'a dive', endHash: flight.dive.hash() });
    const opened = await openFile(new Blob([bytes as Uint8Array<ArrayBuffer>]));
    if (opened.kind !== 'run') throw new Error(`opened as ${opened.kind}`);
    const again = Flight.ofRun(opened.run);
    expect(again.dive.hash()).toBe(flight.dive.hash());
    expect(opened.endHash).toBe(flight.dive.hash());
    expect(again.hands.levelCl).toBe(Math.round(flight.hands.levelCl));
    again.run(
      120,
      () => new Set(),
      () => true,
    );
    expect(again.dive.tick).toBe(1120);
  });

  test('a setup is a setup', async () => {
    const opened = await openFile(new Blob(['format: 1\nname: Mine\n']));
    expect(opened).toMatchObject({ kind: 'setup', setup: { name: 'Mine' } });
  });

  test.each(['water: [', '{"format": 7}', 'format: 1\nwater:\n  bottomM: deep\n'])(
    'what cannot be read is told with its lines: %j',
    async (text) => {
      const opened = await openFile(new Blob([text]));
      if (opened.kind !== 'problems') throw new Error(`opened as ${opened.kind}`);
      expect(opened.problems.length).toBeGreaterThan(0);
      for (const { line } of opened.problems) expect(line).toBeGreaterThanOrEqual(1);
    },
  );
});
