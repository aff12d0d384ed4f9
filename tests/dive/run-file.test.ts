import { gzipSync, strToU8 } from 'fflate';
import { readFileSync } from 'node:fs';
import { gunzipSync } from 'node:zlib';
import { describe, expect, test } from 'vitest';
import { readRun, type RunFile, writeRun } from '../../src/dive/file.ts';
import { Dive, replay, restingControls } from '../../src/dive/index.ts';
import { chanceOf } from '../fixtures/setups/mutants.ts';
import { busyDive, readyRig } from './run-file-fixture.ts';

function fileOf(given: Uint8Array | string): RunFile {
  const read = readRun(given);
  if ('problems' in read) throw new Error(JSON.stringify(read.problems));
  return read.file;
}

const AT_REST = { nudgeUpN: 0, waterDownMmps: 0, waterDownMmps2: 0, gasLeftBar: 0, handLead: 0 };

const textOf = (bytes: Uint8Array) => gunzipSync(bytes).toString('utf8');

/** The text with the value of one outermost key replaced. */
function withValue(text: string, key: string, value: string): string {
  const changed = text.replace(new RegExp(`^("${key}": ).*?(,?)$`, 'm'), `$1${value}$2`);
  if (changed === text) throw new Error(`no key ${key}`);
  return changed;
}

const lineOf = (text: string, key: string) => text.split('\n').findIndex((line) => line.startsWith(`"${key}"`)) + 1;

describe('writeRun() and readRun()', () => {
  test.each(['temperate-sea', 'halocline', 'drysuit-membrane', 'drysuit-foam', 'closed-loop', 'twin', 'other-world'])(
    'bring back every bit of a dive with %s',
    (id) => {
      const rig = readyRig(id);
      const dive = busyDive(rig, 20, chanceOf(7));
      const extra = { name: 'A busy dive', lessonId: 'first-dive', pilot: 'steady', seed: 3, endHash: dive.hash() };
      const { run, ...said } = fileOf(writeRun(dive.run(), extra));
      expect(said).toEqual(extra);
      // toStrictEqual tells −0 from 0 and one last bit from the next.
      expect(run.rig).toStrictEqual(rig);
      expect(run.changes).toStrictEqual(dive.changes);
      expect(replay(run).hash()).toBe(dive.hash());
      expect(replay(run).recording.row(150)).toStrictEqual(dive.recording.row(150));
    },
  );

  test('keep a start in mid-dive, an attitude held fast, −0, and dive the hash when none is given', () => {
    const rig = readyRig('temperate-sea');
    const first = busyDive(rig, 3.5, chanceOf(1));
    first.advance(5);
    const start = { ...first.run().start, ...structuredClone(first.state), speedMps: -0 };
    const later = new Dive(rig, start, restingControls(320), true);
    later.advance(100);
    const { run, endHash } = fileOf(writeRun(later.run(), { name: 'Taken over' }));
    expect(run.locked).toBe(true);
    expect(run.ticks).toBe(100);
    expect(run.start.tick).toBe(first.tick);
    expect(Object.is(run.start.speedMps, -0)).toBe(true);
    expect(endHash).toBe(later.hash());
  });

  // Written by the version before things could go wrong by themselves: 17 controls.
  test.each([
    ['everything', 'd25d01ddc46f3311'],
    ['twin', '4456dc7b5ff39b7f'],
    ['loop', '6325143517c92e29'],
  ])('a file of version 1 opens and dives to the bit: %s', (name, hash) => {
    const { run, endHash } = fileOf(
      readFileSync(new URL(`../fixtures/runs/version-1-${name}.midwater`, import.meta.url)),
    );
    expect(endHash).toBe(hash);
    expect(replay(run).hash()).toBe(hash);
    for (const { controls } of run.changes) expect(controls).toMatchObject(AT_REST);
    expect(fileOf(writeRun(run, { name, endHash })).run.changes).toStrictEqual(run.changes);
  });

  // Written while a press waited for the next twentieth of a second.
  test.each([
    ['layers', 'fbd6cec5eda4c951'],
    ['loop', 'f804f4f56d338aa1'],
    ['gone-wrong', '5ec7dfae94f17a5a'],
  ])('a file of version 2 opens and dives to the bit: %s', (name, hash) => {
    const { run, endHash } = fileOf(
      readFileSync(new URL(`../fixtures/runs/version-2-${name}.midwater`, import.meta.url)),
    );
    expect(endHash).toBe(hash);
    expect(replay(run).hash()).toBe(hash);
    expect(run.changes.every(({ tick }) => (tick - run.start.tick) % 6 === 0)).toBe(true);
    for (const { controls } of run.changes) expect(controls.handLead).toBe(0);
    expect(fileOf(writeRun(run, { name, endHash })).run.changes).toStrictEqual(run.changes);
  });

  test('bring back a change on every tick', () => {
    const rig = readyRig('pool');
    const dive = new Dive(rig, busyDive(rig, 1, chanceOf(8)).run().start, restingControls(320));
    for (let tick = 0; tick < 100; tick++) {
      dive.steer({ ...dive.controls, jacketAdd: tick % 2, lungCl: 320 + tick });
      dive.advance(1);
    }
    const { run } = fileOf(writeRun(dive.run(), { name: 'Every tick', endHash: dive.hash() }));
    expect(run.changes).toStrictEqual(dive.changes);
    expect(run.changes).toHaveLength(100);
    expect(replay(run).hash()).toBe(dive.hash());
  });

  test('bring back what goes wrong', () => {
    const rig = readyRig('temperate-sea');
    const dive = busyDive(rig, 2, chanceOf(5));
    dive.steer({ ...dive.controls, nudgeUpN: -160, waterDownMmps: 200, waterDownMmps2: -200, gasLeftBar: 40 });
    dive.advance(60);
    const { run } = fileOf(writeRun(dive.run(), { name: 'Gone wrong', endHash: dive.hash() }));
    expect(run.changes).toStrictEqual(dive.changes);
    expect(replay(run).events).toEqual(dive.events);
    expect(replay(run).hash()).toBe(dive.hash());
  });

  test('give the same bytes for the same run, as gzip that others inflate, each outermost key on a line', () => {
    const dive = busyDive(readyRig('pool'), 5, chanceOf(2), 1);
    const bytes = writeRun(dive.run(), { name: 'Pool' });
    expect(writeRun(dive.run(), { name: 'Pool' })).toEqual(bytes);
    const text = textOf(bytes);
    const keys = Object.keys(JSON.parse(text) as object);
    expect(
      text
        .trim()
        .split('\n')
        .slice(1, -1)
        .map((line) => /^"(\w+)": /.exec(line)?.[1]),
    ).toEqual(keys);
    expect(keys).toEqual('format version name ticks locked endHash start rig controls changes'.split(' '));
  });

  test('ten minutes with controls changing 20 times a second stay below 50 kB', () => {
    const dive = busyDive(readyRig('temperate-sea'), 600, chanceOf(3), 10);
    expect(dive.changes.length).toBeGreaterThan(10_000);
    expect(writeRun(dive.run(), { name: 'Ten busy minutes', endHash: dive.hash() }).length).toBeLessThan(50_000);
  });
});

describe('readRun() refuses', () => {
  const dive = busyDive(readyRig('halocline'), 4, chanceOf(4));
  const bytes = writeRun(dive.run(), { name: 'Short', endHash: dive.hash() });
  const text = textOf(bytes);
  const { changes, start } = JSON.parse(text) as {
    changes: { ticks: number[]; control: number[]; by: number[] };
    start: number[];
  };
  const columns = (change: (c: typeof changes) => void) => {
    const copy = structuredClone(changes);
    change(copy);
    return JSON.stringify(copy);
  };

  test.each<[what: string, key: string, value: string]>([
    ['another format', 'format', '"some run"'],
    ['another version', 'version', '5'],
    ['an older version, with more controls than it had', 'version', '1'],
    ['a hash of other digits', 'endHash', '"12345678ABCDEF00"'],
    ['a dive longer than six hours', 'ticks', '2592001'],
    ['half a tick', 'ticks', '479.5'],
    ['fewer ticks than the changes need', 'ticks', '60'],
    ['a change between two ticks', 'changes', columns((c) => (c.ticks[3] -= 0.5))],
    ['a change at the start, which has its own controls', 'changes', columns((c) => (c.ticks[0] = 0))],
    ['a change backwards in time', 'changes', columns((c) => (c.ticks[5] = -6))],
    ['columns of different lengths', 'changes', columns((c) => c.by.pop())],
    ['a control that there is none of', 'changes', columns((c) => (c.control[2] = 21))],
    [
      'a control twice on a tick',
      'changes',
      columns((c) => {
        c.ticks.splice(1, 0, 0);
        c.control.splice(1, 0, c.control[0]);
        c.by.splice(1, 0, 1);
      }),
    ],
    ['a value out of its range', 'changes', columns((c) => (c.by[4] = 2000))],
    ['a change of nothing', 'changes', columns((c) => (c.by[4] = 0))],
    ['text in a column', 'changes', columns((c) => ((c.by as unknown[])[4] = '2'))],
    ['first controls out of range', 'controls', JSON.stringify([2, ...Array<number>(20).fill(0)])],
    ['too few state numbers', 'start', JSON.stringify(start.slice(1))],
    ['an attitude that is no direction', 'start', JSON.stringify(start.map((n, i) => (i === 3 ? 0.5 : n)))],
    ['a state below the bottom', 'start', JSON.stringify(start.map((n, i) => (i === 1 ? 26 : n)))],
    ['sums of other parts', 'start', JSON.stringify(start.map((n, i) => (i === 21 ? n + 1e-5 : n)))],
    [
      'an endless number',
      'start',
      JSON.stringify(start)
        .replace('[', '[1e999,')
        .replace(/,[^,]*\]/, ']'),
    ],
  ])('%s, on its line', (_, key, value) => {
    const spoiled = withValue(text, key, value);
    const read = readRun(spoiled);
    expect('problems' in read && read.problems.map(({ line }) => line)).toContain(
      lineOf(
        spoiled,
        key === 'ticks' && value === '60' ? 'changes' : key === 'version' && value === '1' ? 'controls' : key,
      ),
    );
  });

  test('in a file of version 2 a change between twentieths, on its line', () => {
    const older = readFileSync(new URL('../fixtures/runs/version-2-loop.midwater', import.meta.url));
    const [was, later] = [textOf(older), JSON.parse(textOf(older)) as { changes: { ticks: number[] } }];
    const place = later.changes.ticks.findIndex((ticks, i) => i > 0 && ticks > 6);
    later.changes.ticks[place] -= 1;
    const spoiled = withValue(was, 'changes', JSON.stringify(later.changes));
    const read = readRun(spoiled);
    expect('problems' in read && read.problems).toMatchObject([
      { line: lineOf(spoiled, 'changes'), path: `changes.ticks[${place}]` },
    ]);
    expect(readRun(withValue(spoiled, 'version', '3'))).toHaveProperty('file');
  });

  test('a rig whose sums, water or shells do not fit together', () => {
    const spoiled = (from: RegExp, to: string) => {
      const changed = text.replace(from, to);
      expect(changed).not.toBe(text);
      const read = readRun(changed);
      return 'problems' in read ? read.problems.map(({ path }) => path) : [];
    };
    expect(spoiled(/"bareKg":([\d.]+)/, '"bareKg":99.5')).toEqual(['rig.bareKg']);
    expect(spoiled(/"cylinder-1"/, '"cylinder-2"')).toEqual(['rig.solids']);
    expect(spoiled(/("fromM":)6\.?\d*/, '$18.5')).toContain('rig.column.segments[2].fromM');
    expect(spoiled(/"open":true/, '"open":false')).toEqual(['rig.lungs.open']);
  });

  test('bytes that cannot be inflated, on line 1', () => {
    const cut = bytes.slice(0, bytes.length / 2);
    const flipped = bytes.map((byte, i) => (i === 200 ? byte ^ 1 : byte));
    const twice = new Uint8Array([...bytes, ...bytes]);
    for (const wrong of [cut, flipped, twice, bytes.slice(0, 12), new Uint8Array([0x1f, 0x8b, 8]), new Uint8Array()]) {
      const read = readRun(wrong);
      expect('problems' in read && read.problems.map(({ line }) => line)).toEqual([1]);
    }
  });

  test('a file that inflates without end, without inflating it', () => {
    const bomb = gzipSync(new Uint8Array(60 * 1024 * 1024), { level: 9 });
    expect(bomb.length).toBeLessThan(100_000);
    const read = readRun(bomb);
    expect('problems' in read && read.problems[0].found).toBe('a file that inflates to very much');
  });

  test('megabytes of brackets, keys, entries and quotes, in the time of a test', { timeout: 60_000 }, () => {
    const size = 2 * 1024 * 1024;
    const swollen = [
      '['.repeat(size),
      `{"start": [${'1,'.repeat(size / 2)}1]}`,
      `{${Array.from({ length: size / 16 }, (_, i) => `"key${i}":0`).join()}}`,
      `{${'"a":0,'.repeat(size / 6)}"a":0}`,
      `{"name": "${'x'.repeat(size)}`,
      withValue(text, 'changes', `{"ticks":[${'0,'.repeat(size / 2)}0],"control":[],"by":[]}`),
      'x'.repeat(6 * 1024 * 1024),
    ];
    for (const hostile of swollen) {
      for (const given of [hostile, gzipSync(strToU8(hostile))]) {
        const read = readRun(given);
        expect('problems' in read && read.problems[0].line).toBeGreaterThan(0);
      }
    }
  });
});
