import { describe, expect, test } from 'vitest';
import { DEMONSTRATIONS } from '../../src/app/demonstrations.ts';
import { MENU, minutesOf, pathsThrough } from '../../src/lesson/index.ts';

const paths = pathsThrough(MENU);

describe('pathsThrough()', () => {
  test('each stop of a path exists, and stands in it once', () => {
    const lessons = MENU.map(({ id }) => id);
    const shows = DEMONSTRATIONS.map(({ id }) => id);
    for (const { steps } of paths) {
      expect(new Set(steps.map(({ kind, id }) => kind + id)).size).toBe(steps.length);
      for (const { kind, id } of steps) expect(kind === 'lesson' ? lessons : shows).toContain(id);
    }
  });

  test('the minutes of its stops fill the time of a path and no more', () => {
    for (const path of paths) {
      if (path.minutes === null) continue;
      const sum = minutesOf(path, MENU);
      expect(sum, path.id).toBeLessThanOrEqual(path.minutes);
      expect(sum, path.id).toBeGreaterThanOrEqual(0.9 * path.minutes);
    }
  });

  test('a lesson says itself that it belongs to the path; no path for a class leads into what the instructor opens', () => {
    for (const { id, steps } of paths)
      for (const step of steps.filter(({ kind }) => kind === 'lesson')) {
        const lesson = MENU.find((one) => one.id === step.id)!;
        expect(lesson.paths, `${id}: ${step.id}`).toContain(id);
        if (id !== 'self-study') expect(lesson.opens).toBe('always');
      }
  });

  test('self-study goes through every lesson in the order of the menu', () => {
    expect(paths.find(({ id }) => id === 'self-study')!.steps.map(({ id }) => id)).toEqual(MENU.map(({ id }) => id));
  });
});
