import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { readYaml } from '../../src/diver/file.ts';
import { BENCH_LESSONS } from '../../src/lesson/bench.ts';
import { LESSONS } from '../../src/lesson/index.ts';
import { PILOT_NAMES } from '../../src/pilot/index.ts';
import { fiveMistakes, lineOf, mistakes } from '../fixtures/lessons/five-mistakes.ts';
import { ran, resultOf, useFolder, type PrintedFlight } from './fixture.ts';

const file = useFolder();
const FIRST_DIVE = readFileSync(new URL('../../lessons/first-dive.yaml', import.meta.url), 'utf8');

interface Flown {
  readonly verdict: string;
  readonly marks: readonly {
    readonly id: string;
    readonly score: number;
    readonly ok: boolean;
    readonly parts: readonly { readonly raw: number; readonly pointsLost: number }[];
  }[];
  readonly events: readonly { readonly tS: number; readonly kind: string }[];
  readonly hash: string;
}

test('lesson: a file with five mistakes is five problems, each with its line, what stands there, what may and what to write', () => {
  const { code, err } = ran('lesson', file('five.yaml', fiveMistakes), '--pilot', 'steady');
  expect(code).toBe(1);
  const told = err.trim().split('\n').slice(-mistakes.length);
  expect(told).toHaveLength(mistakes.length);
  for (const [i, [path, , to]] of mistakes.entries()) {
    expect(told[i]).toContain(`line ${lineOf(to)}`);
    expect(told[i]).toContain(path);
    expect(told[i]).toMatch(/found .*allowed/);
  }
});

describe('lesson', () => {
  test('flown by steady passes, exit 0; flown by idler fails, exit 1, with the same marks named', () => {
    const passed = resultOf<Flown>('lesson', 'first-dive', '--pilot', 'steady');
    expect(passed.verdict).toBe('pass');
    const { code, out, err } = ran('lesson', 'first-dive', '--pilot', 'idler');
    const failed = JSON.parse(out) as Flown;
    expect([code, err, failed.verdict]).toEqual([1, '', 'fail']);
    expect(failed.marks.map(({ id }) => id)).toEqual(passed.marks.map(({ id }) => id));
    for (const { score, parts } of [...passed.marks, ...failed.marks]) {
      expect(score).toBeGreaterThanOrEqual(0);
      expect(score).toBeLessThanOrEqual(100);
      for (const { raw } of parts) expect(Number.isFinite(raw)).toBe(true);
    }
    expect(Math.min(...passed.marks.map(({ score }) => score))).toBeGreaterThan(
      Math.max(...failed.marks.map(({ score }) => score)),
    );
  });

  test('gives the same for the same seed, the first by default, and otherwise for another', () => {
    const flown = (...seed: (string | number)[]) => ran('lesson', 'first-dive', '--pilot', 'able', ...seed).out;
    expect(flown('--seed', 1)).toBe(flown());
    expect(flown('--seed', 2)).not.toBe(flown());
  });

  test('flies a lesson of a file, and saves a run that replays', () => {
    const run = file('flown.run');
    const path = file('lesson.yaml', FIRST_DIVE);
    const { hash, events } = resultOf<Flown>('lesson', path, '--pilot', 'steady', '--seed', 3, '--save', run);
    const again = resultOf<PrintedFlight>('replay', run, '--every', 60);
    expect(again).toMatchObject({ hash, hashMet: true, events });
  });

  test.each([
    ['no pilot', ['lesson', 'first-dive'], /--pilot is missing: one of steady, sparing, rescuer, able/],
    ['an unknown pilot', ['lesson', 'first-dive', '--pilot', 'stedy'], /"stedy": write steady/],
    ['an unknown lesson', ['lesson', 'frist-dive', '--pilot', 'steady'], /"frist-dive": write first-dive/],
    ['half a seed', ['lesson', 'first-dive', '--pilot', 'steady', '--seed', '1.5'], /--seed: found "1.5"/],
    ['a seed below zero', ['lesson', 'first-dive', '--pilot', 'steady', '--seed', '-1'], /--seed: found "-1"/],
  ])('refuses %s as wrong usage', (_, words, says) => {
    const { code, out, err } = ran(...words);
    expect([code, out]).toEqual([2, '']);
    expect(err).toMatch(says);
  });

  test('tells every problem of a bad lesson file, as check does', () => {
    const path = file('bad.yaml', FIRST_DIVE.replace('minutes: 6', 'minuts: 6').replace('toM: 8', 'toM: deep'));
    const { code, out, err } = ran('lesson', path, '--pilot', 'steady');
    expect([code, out]).toEqual([1, '']);
    expect(err).toContain('Write minutes');
    expect(err).toContain('"deep"');
    const checked = ran('check', path);
    expect([checked.code, checked.err]).toEqual([1, err]);
  });

  test('refuses a lesson that begins below the bottom of its setup, by name of the file', () => {
    const text = FIRST_DIVE.replace('changes: {}', 'changes: { bottomM: 3 }').replace(
      /start:\n(?: {2}.*\n)+/,
      'start:\n  place: under\n  depthM: 5\n  jacketL: 1\n',
    );
    const path = file('deep.yaml', text);
    const { code, err } = ran('lesson', path, '--pilot', 'idler');
    expect(code).toBe(1);
    expect(err.startsWith(`${path}: line `)).toBe(true);
    expect(err).toContain('the bottom at 3 m');
  });
});

test('check finds nothing wrong in our own lessons', () => {
  expect(resultOf('check', file('first.yaml', FIRST_DIVE))).toEqual({ problems: [] });
});

describe('lesson tables and help for authors', () => {
  test('--all of one lesson prints who was to pass and who to fail, and exits 1 where one comes otherwise', () => {
    const { code, out } = ran('lesson', 'one-breath', '--all', '--seeds', 2);
    expect(code).toBe(0);
    expect(out).toMatch(/one-breath +script 1 +1\/1 +pass/);
    expect(out).toMatch(/one-breath +idler +0\/2 +fail \(stop\) +stop/);
    const lying = readFileSync(new URL('../../lessons/one-breath.yaml', import.meta.url), 'utf8').replace(
      '{ pilot: idler, comes: fail, fault: stop }',
      '{ pilot: idler, comes: pass }',
    );
    const wrong = ran('lesson', file('lying.yaml', lying), '--all', '--seeds', 1);
    expect(wrong.code).toBe(1);
    expect(wrong.out).toMatch(/idler +0\/1 +pass: NOT SO/);
  });

  test('--all-pilots prints a line for every pilot', () => {
    const { code, out } = ran('lesson', 'one-breath', '--all-pilots', '--seeds', 1);
    expect(code).toBe(0);
    for (const pilot of PILOT_NAMES) expect(out).toContain(` ${pilot} `);
  });

  test('--template prints a lesson that check finds nothing wrong with and steady passes', () => {
    const { out } = ran('lesson', '--template');
    const path = file('template.yaml', out);
    expect(resultOf('check', path)).toEqual({ problems: [] });
    expect(ran('lesson', path, '--pilot', 'steady').code).toBe(0);
    expect(ran('lesson', path, '--all', '--seeds', 2).code).toBe(0);
  });

  test('a lesson at the bench is gone through by the hands of its proof, and no pilot flies it', () => {
    interface Worked {
      readonly verdict: string;
      readonly answers: readonly { readonly id: string; readonly came: unknown }[];
    }
    const { verdict, answers } = resultOf<Worked>('lesson', 'five-stones');
    expect(verdict).toBe('pass');
    expect(answers.map(({ came }) => came)).toEqual(['surface', 'surface', 'stays', 'bottom', 'bottom']);
    expect(ran('lesson', 'five-stones', '--pilot', 'steady').err).toMatch(/No pilot flies at the bench/);
    const { code, out } = ran('lesson', 'five-stones', '--all');
    expect([code, /hands 3 +0\/1 +fail \(let-go\) +let-go/.test(out)]).toEqual([0, true]);
    const path = file('bench.yaml', ran('lesson', '--template', '--bench').out);
    expect(resultOf('check', path)).toEqual({ problems: [] });
    expect(ran('lesson', path, '--all').code).toBe(0);
  });

  test('--schema prints a JSON Schema that knows every key of our lessons and refuses strange ones', () => {
    interface Node {
      readonly properties?: Readonly<Record<string, Node>>;
      readonly items?: Node;
      readonly anyOf?: readonly Node[];
      readonly oneOf?: readonly Node[];
      readonly additionalProperties?: boolean;
      readonly required?: readonly string[];
    }
    const schema = resultOf<Node>('lesson', '--schema');
    expect(schema.anyOf?.[0]?.required).toEqual(
      expect.arrayContaining(['format', 'id', 'setup', 'start', 'steps', 'marks']),
    );
    /** Whether a value has only keys that one of the shapes knows, all the way down. */
    const knows = (node: Node, value: unknown): boolean => {
      const shapes = node.anyOf ?? node.oneOf;
      if (shapes) return shapes.some((shape) => knows(shape, value));
      if (Array.isArray(value)) return value.every((entry) => node.items !== undefined && knows(node.items, entry));
      if (typeof value !== 'object' || value === null) return node.properties === undefined;
      const { properties } = node;
      if (!properties || node.additionalProperties !== false) return false;
      return Object.entries(value).every(
        ([key, inner]) => properties[key] !== undefined && knows(properties[key], inner),
      );
    };
    const ids = [...LESSONS.map(({ id }) => id), ...BENCH_LESSONS.map(({ id }) => `bench/${id}`)];
    for (const id of ids) {
      const yaml = readYaml(readFileSync(new URL(`../../lessons/${id}.yaml`, import.meta.url), 'utf8'));
      if (!('value' in yaml)) throw new Error(id);
      expect(knows(schema, yaml.value), id).toBe(true);
      expect(knows(schema, { ...(yaml.value as object), strange: 1 }), id).toBe(false);
    }
  });
});
