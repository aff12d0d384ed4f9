import { gunzipSync } from 'node:zlib';
import { expect, test } from 'vitest';
import { readRun, writeRun } from '../../src/dive/file.ts';
import { replay } from '../../src/dive/index.ts';
import { chanceOf, damaged } from '../fixtures/setups/mutants.ts';
import { busyDive, readyRig } from './run-file-fixture.ts';

type Json = null | boolean | number | string | Json[] | { [key: string]: Json };
type Step = string | number;

const bytes = ['temperate-sea', 'halocline', 'drysuit-foam', 'closed-loop'].map((id, i) => {
  const dive = busyDive(readyRig(id), 2, chanceOf(i));
  const extra = { name: `Run ${i}`, lessonId: 'first-dive', pilot: 'steady', seed: i, endHash: dive.hash() };
  return writeRun(dive.run(), extra);
});
const texts = bytes.map((run) => gunzipSync(run).toString('utf8'));

const pickFrom =
  (chance: () => number) =>
  <T>(list: readonly T[]): T =>
    list[Math.floor(chance() * list.length)];

/** Every place of a value that is no group or list. */
function leaves(value: Json, path: Step[] = []): Step[][] {
  if (typeof value !== 'object' || value === null) return [path];
  const entries: [Step, Json][] = Array.isArray(value) ? [...value.entries()] : Object.entries(value);
  return entries.flatMap(([step, inner]) => leaves(inner, [...path, step]));
}

/** The text again, each outermost key on its line; infinity as a number too large to hold. */
function textOf(value: Json): string {
  const lines = Object.entries(value as object).map(
    ([key, inner]) => `${JSON.stringify(key)}: ${JSON.stringify(inner)}`,
  );
  return `{\n${lines.join(',\n')}\n}\n`.replaceAll('"∞"', '1e999');
}

/** One value, bound or key spoiled in a way that no reader may accept, and the line that it stands on. */
function spoiled(text: string, kind: 'type' | 'range' | 'key', chance: () => number) {
  const pick = pickFrom(chance);
  const whole = JSON.parse(text) as Json;
  const all = leaves(whole).filter((path) => path.length > 0);
  const valueAt = (path: Step[]) => path.reduce<Json>((v, step) => (v as Record<Step, Json>)[step], whole);
  const path = pick(kind === 'range' ? all.filter((p) => typeof valueAt(p) === 'number') : all);
  const owner = valueAt(path.slice(0, -1)) as Record<Step, Json>;
  const last = path[path.length - 1];
  const was = owner[last];
  if (kind === 'range') owner[last] = pick<Json>([-1e10, 1e10, '∞', -5e12]);
  else if (kind === 'type') {
    const others: Json[] = ['five', true, [1], { a: 1 }, null, '1', 0.125].filter(
      (other) => other !== was && (was === null ? other !== null : typeof other !== typeof was),
    );
    owner[last] = pick(others);
  } else {
    // A key anywhere above the value: written otherwise, or not at all.
    const keys = path.map((step, i) => ({ step, i })).filter(({ step }) => typeof step === 'string');
    const { step, i } = pick(keys);
    const group = valueAt(path.slice(0, i)) as Record<string, Json>;
    const optional = ['lessonId', 'pilot', 'seed'].includes(String(step));
    const renamed = Object.entries(group).flatMap(([key, value]): [string, Json][] =>
      key !== step ? [[key, value]] : optional || chance() < 0.7 ? [[`${key}${pick(['s', 'X', ' '])}`, value]] : [],
    );
    for (const key of Object.keys(group)) Reflect.deleteProperty(group, key);
    Object.assign(group, Object.fromEntries(renamed));
  }
  const changed = textOf(whole);
  const line = changed.split('\n').findIndex((row) => row.startsWith(`"${String(path[0])}"`)) + 1;
  return { text: changed, what: `${path.join('.')}: ${JSON.stringify(was)} -> ${JSON.stringify(owner[last])}`, line };
}

for (const kind of ['type', 'range', 'key'] as const)
  test(`readRun() refuses each of 500 run files with a broken ${kind}, with a line`, () => {
    for (let seed = 0; seed < 500; seed++) {
      const { text, what, line } = spoiled(texts[seed % texts.length], kind, chanceOf(seed));
      const read = readRun(text);
      if (!('problems' in read)) throw new Error(`accepted ${what}`);
      const lines = read.problems.map((problem) => problem.line);
      expect(lines.length, what).toBeGreaterThan(0);
      expect(
        lines.every((n) => Number.isInteger(n) && n >= 1 && n <= text.split('\n').length),
        what,
      ).toBe(true);
      for (const { found, allowed, suggestion } of read.problems)
        for (const words of [found, allowed, suggestion]) expect(words, what).toMatch(/^\S[^\n]*$/);
      // A key that is gone has no line of its own, and lengths are compared across lines.
      if (kind === 'type') expect(lines, what).toContain(line);
    }
  });

test('readRun() survives 500 damaged texts and bytes: a run that can be dived, or problems with lines', () => {
  let accepted = 0;
  for (let seed = 0; seed < 500; seed++) {
    const chance = chanceOf(seed);
    let given: string | Uint8Array = texts[seed % texts.length];
    if (seed % 2 === 0)
      for (let times = 1 + Math.floor(chance() * 3); times > 0; times--) given = damaged(given, chance);
    else {
      given = Uint8Array.from(bytes[seed % bytes.length]);
      for (let times = 1 + Math.floor(chance() * 3); times > 0; times--)
        given[Math.floor(chance() * given.length)] ^= 1 << Math.floor(chance() * 8);
      if (chance() < 0.2) given = given.slice(0, Math.floor(chance() * given.length));
    }
    const read = readRun(given);
    if ('problems' in read) {
      expect(read.problems.length).toBeGreaterThan(0);
      for (const { line } of read.problems) expect(line).toBeGreaterThanOrEqual(1);
      if (typeof given !== 'string') expect(read.problems.map(({ line }) => line)).toEqual([1]);
    } else {
      accepted++;
      expect(replay(read.file.run).hash()).toMatch(/^[0-9a-f]{16}$/);
    }
  }
  expect(accepted).toBeLessThan(250);
});
