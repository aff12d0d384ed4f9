import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { readLesson } from '../../src/lesson/file.ts';

const file = (id: string) => readFileSync(new URL(`../../lessons/${id}.yaml`, import.meta.url), 'utf8');
/** What is wrong with one of our lessons once a piece of it is written otherwise; the piece must be there. */
function problems(id: string, ...changes: readonly (readonly [string, string])[]) {
  let text = file(id);
  for (const [from, to] of changes) {
    if (!text.includes(from)) throw new Error(`no "${from}" in ${id}`);
    text = text.replace(from, to);
  }
  const read = readLesson(text);
  const lineOf = (piece: string) => text.slice(0, text.indexOf(piece)).split('\n').length;
  return { found: 'problems' in read ? read.problems : [], lineOf };
}

test('five mistakes are five problems, each on its line, with what is allowed and what to write', () => {
  const { found, lineOf } = problems(
    'hover',
    ['minutes: 5', 'minutes: five'],
    ['ready: temperate-sea', 'ready: temperate-see'],
    ['topic: drift-leads', 'topic: drift-leeds'],
    ['bandM: 1,', 'bandM: 12,'],
    ['comes: pass }', 'comes: passes }'],
  );
  expect(found.map(({ path }) => path)).toEqual([
    'minutes',
    'setup.ready',
    'steps[0].topic',
    'steps[2].goal.bandM',
    'proof[0].comes',
  ]);
  expect(found[2]).toMatchObject({ line: lineOf('drift-leeds'), suggestion: 'Write drift-leads' });
  expect(found[3]?.allowed).toBe('a number from 0.2 to 5');
  // What joins keys is told once every key is sound by itself.
  const { found: whole } = problems('hover', ['ready: temperate-sea', 'ready: temperate-see']);
  expect(whole).toEqual([expect.objectContaining({ path: 'setup.ready', suggestion: 'Write temperate-sea' })]);
});

test.each([
  ['gas given twice', 'hover', 'wrongByL: [0.4, 0.9]', 'wrongByL: [0.4, 0.9], jacketL: 3', 'wrongByL'],
  ['no gas', 'hover', ', wrongByL: [0.4, 0.9]', '', 'start'],
  ['a pair the wrong way round', 'hover', 'wrongByL: [0.4, 0.9]', 'wrongByL: [0.9, 0.4]', 'wrongByL'],
  ['a depth afloat', 'surface-check', 'place: afloat,', 'place: afloat, depthM: 3,', 'depthM'],
  ['a hold without its time', 'one-breath', ', forS: 3', '', 'goal.each[0]'],
  ['no limit', 'one-breath', 'what: finsNs, most: 1,', 'what: finsNs,', 'keep[1]'],
  ['limits crossed', 'one-breath', 'least: -3, most: 3', 'least: 3, most: -3', 'each[0].least'],
  ['a time where none belongs', 'hover', 'do: stay,', 'do: stay, atS: 3,', 'keep[0].atS'],
  ['an event that is not there', 'last-five-metres', 'atS: 30,', 'atS: 30, of: event,', 'keep[0].of'],
  ['an event without its measure', 'stuck-inflator', ', forS: 4 }', ' }', 'events[0]'],
  ['an event with the measure of another', 'stuck-inflator', 'forS: 4 }', 'forS: 4, upNs: 3 }', 'events[0].upNs'],
  ['nobody who flies', 'hover', '{ pilot: steady, comes: pass }', '{ comes: pass }', 'proof[0]'],
  ['two who fly', 'one-breath', 'pilot: idler,', 'pilot: idler, script: [{ atS: 1 }],', 'proof[1]'],
  ['a script that goes back', 'one-breath', 'atS: 3.2', 'atS: 0.2', 'proof[0].script[1].atS'],
  ['an unknown fault', 'hover', 'fault: hover', 'fault: hovr', 'proof[1].fault'],
  ['a parameter that is missing', 'hover', '    afterS: 10\n', '', 'steps[0]'],
  ['a parameter that is not asked for', 'hover', '    afterS: 10\n', '    afterS: 10\n    kg: 3\n', 'steps[0].kg'],
  ['a limit of marks without why', 'hover', 'marks:', 'markLimits: { inBandPercent: 60 }\nmarks:', 'markLimits'],
  ['a limit out of its range', 'hover', 'marks:', 'markLimits: { excessM: 9, why: so }\nmarks:', 'markLimits.excessM'],
  ['limits of nothing', 'one-breath', 'marks: []', 'marks: []\nmarkLimits: { excessM: 2, why: so }', 'markLimits'],
  [
    'a fast rate below the usual one',
    'ascent-with-stop',
    'marks:',
    'markLimits: { fastMpmin: 8, why: so }\nmarks:',
    'markLimits',
  ],
  [
    'a rate that is marked otherwise than drawn',
    'ascent-with-stop',
    'limits: { upMpmin: 9 }',
    'limits: { upMpmin: 6 }',
    'limits.upMpmin',
  ],
  ['the unit of another curve', 'gas-used', 'alongUnit: bar', 'alongUnit: m', 'steps[0].alongUnit'],
])('readLesson() refuses %s, where it stands', (_, id, from, to, path) => {
  const { found } = problems(id, [from, to]);
  expect(found.length, JSON.stringify(found)).toBeGreaterThan(0);
  expect(
    found.some((one) => one.path.includes(path)),
    JSON.stringify(found),
  ).toBe(true);
  for (const { line, allowed, suggestion } of found) {
    expect(line).toBeGreaterThan(1);
    expect(allowed).not.toBe('');
    expect(suggestion).not.toBe('');
  }
});
