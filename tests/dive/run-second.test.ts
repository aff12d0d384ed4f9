import { gunzipSync } from 'node:zlib';
import { describe, expect, test } from 'vitest';
import { READY_SETUPS, type Setup } from '../../src/diver/index.ts';
import { loadSetupText } from '../../src/diver/file.ts';
import { readRun, writeRun, type RunSecond } from '../../src/dive/file.ts';
import { readySetup } from '../../src/app/setups.ts';
import { chanceOf } from '../fixtures/setups/mutants.ts';
import { busyDive, readyRig } from './run-file-fixture.ts';

const dive = busyDive(readyRig('temperate-sea'), 2, chanceOf(5));
const saved = (second?: RunSecond) =>
  gunzipSync(writeRun(dive.run(), { name: 'Two divers', endHash: dive.hash(), second })).toString('utf8');
const own: Setup = loadSetupText('format: 1\nname: Mine\nlead:\n  - massKg: 6\n    place: belt\n');
const MINE: RunSecond = { difference: 'own', by: 'steady', words: 'another lead', first: null, own };

/** Problems of a run file whose second diver was changed by hand. */
function problemsOf(change: (second: Record<string, unknown>) => void) {
  const text = saved(MINE);
  const line = text.split('\n').findIndex((row) => row.startsWith('"second"')) + 1;
  const whole = JSON.parse(text) as { second: Record<string, unknown> };
  change(whole.second);
  const read = readRun(text.replace(/^"second": .*,$/m, `"second": ${JSON.stringify(whole.second)},`));
  if (!('problems' in read)) throw new Error('it was read');
  for (const problem of read.problems) expect(problem.line).toBe(line);
  return read.problems;
}

describe('the second diver of a run file', () => {
  test('comes back as he was written, with the setups of both', async () => {
    for (const { id } of READY_SETUPS) {
      const second: RunSecond = { difference: 'change:7 mm suit', by: 'hands', first: await readySetup(id), own };
      const read = readRun(saved(second));
      if ('problems' in read) throw new Error(JSON.stringify(read.problems));
      expect(read.file.second).toStrictEqual(second);
    }
  });

  test('is a key that may be left out: a dive that is flown alone has none', () => {
    expect(saved()).not.toContain('"second"');
    expect(readRun(saved())).not.toHaveProperty('file.second');
  });

  test('is refused where a setup of his is none, with line and path', () => {
    const lead = problemsOf((second) => (second.own = { ...own, lead: [{ massKg: 500, place: 'belt' }] }));
    expect(lead.map(({ path }) => path)).toEqual(['second.own.lead[0].massKg']);
    expect(lead[0]!.allowed).toContain('0.05 to 20');
    expect(problemsOf((second) => (second.first = { format: 1, colour: 'red' }))[0]!.path).toContain('second.first');
    expect(problemsOf((second) => (second.first = [1]))[0]!.path).toBe('second.first');
    // Each number alone may stand, together they float nobody's lungs: a rule over several keys.
    const lungs = { ...own.diver, residualL: 4, totalLungL: 2 };
    expect(problemsOf((second) => (second.own = { ...own, diver: lungs })).length).toBeGreaterThan(0);
  });

  test('is refused where his words are none, or where there is a word too many', () => {
    expect(problemsOf((second) => (second.by = 7))[0]!.path).toBe('second.by');
    expect(problemsOf((second) => delete second.difference)[0]!.allowed).toContain('difference');
    expect(problemsOf((second) => (second.friend = 'nobody'))[0]!.path).toContain('second');
  });
});
