import { readdirSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { ran, resultOf, useFolder } from './fixture.ts';

const file = useFolder();
const setups = fileURLToPath(new URL('../../src/diver/setups/', import.meta.url));

interface Told extends Readonly<Record<'file' | 'path' | 'found' | 'allowed' | 'suggestion', string>> {
  readonly line: number;
}

interface Found {
  readonly problems: readonly Told[];
}

test('check finds nothing wrong in our own setups, a saved run and a controls file', () => {
  const run = file('good.run');
  resultOf('dive', 'halocline', '--from', 6, '--seconds', 5, '--save', run);
  const controls = file('good.yaml', '- { tS: 1, suitAdd: true }\n');
  const files = readdirSync(setups).map((name) => `${setups}${name}`);
  expect(files.length).toBeGreaterThan(15);
  expect(resultOf<Found>('check', ...files, run, controls)).toEqual({ problems: [] });
});

test('check tells every problem of every file, on stdout with all its parts and on stderr one a line', () => {
  const setup = file('setup.yaml', 'format: 1\nname: ""\nwater: { salinity: 3 }\n');
  const run = file('run.json', '{\n"name": "x",\n"format": "midwater run"\n}');
  const deflated = file('cut.run', new Uint8Array([0x1f, 0x8b, 8, 0, 1]));
  const controls = file('controls.yaml', '- { tS: 1, finsN: 9 }\n- { tS: 1 }\n');
  const { code, out, err } = ran('check', setup, run, deflated, controls);
  expect(code).toBe(1);
  const { problems } = JSON.parse(out) as Found;
  expect(new Set(problems.map((problem) => problem.file))).toEqual(new Set([setup, run, deflated, controls]));
  for (const problem of problems) {
    expect(Object.keys(problem).sort()).toEqual(['allowed', 'file', 'found', 'line', 'path', 'suggestion']);
    expect(problem.line).toBeGreaterThanOrEqual(1);
  }
  expect(problems.filter((problem) => problem.file === setup).map(({ line, path }) => [line, path])).toEqual([
    [2, 'name'],
    [3, 'water.salinity'],
  ]);
  expect(problems.find((problem) => problem.file === controls)).toMatchObject({ line: 2, path: '[1].tS' });
  expect(err.trim().split('\n')).toHaveLength(problems.length);
});

test('check refuses what is none of our files', () => {
  for (const content of [
    '',
    'hello',
    '\0\0\0',
    '%PDF-1.4',
    new Uint8Array([0xff, 0xfe, 0x00]),
    '{"format": "other"}',
    '[]]',
  ])
    expect(ran('check', file('any', content)).code).toBe(1);
});
