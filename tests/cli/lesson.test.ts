import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
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
    ['no pilot', ['lesson', 'first-dive'], /--pilot is missing: one of steady, able/],
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
