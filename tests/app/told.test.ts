import { describe, expect, test } from 'vitest';
import { isElsewhere } from '../../src/app/told.ts';
import {
  LESSONS,
  beginLesson,
  viewLesson,
  answerPrompt,
  type Lesson,
  type LessonView,
} from '../../src/lesson/index.ts';
import { diveAt } from '../stage/views.ts';

const { recording } = diveAt(8);

/** What a lesson asks or shows before its first flight, one view after another. */
function asked(lesson: Lesson): LessonView[] {
  const views: LessonView[] = [];
  let run = beginLesson(lesson);
  for (let view = viewLesson(lesson, run, recording); view.prompt; view = viewLesson(lesson, run, recording)) {
    views.push(view);
    run = answerPrompt(lesson, run, null);
  }
  return views;
}

describe('isElsewhere()', () => {
  const of = (id: string) => LESSONS.find((one) => one.id === id)!;
  const here = (id: string, depthM: number, mpmin: number) =>
    asked(of(id)).map(({ prompt, about }) => !isElsewhere(prompt!, about, { depthM, speedMps: mpmin / 60 }));

  test('a question about another depth or another speed than the diver who hangs there has none of his numbers beside it', () => {
    // All eight states of the breath reach are others than the one that is flown.
    expect(here('breath-reach', 8, 8)).toEqual(Array.from({ length: 8 }, () => false));
    expect(here('breath-reach', 8, 4)[0]).toBe(true);
    expect(here('breath-reach', 8, 4)[1]).toBe(false);
  });

  test('a question about the diver who hangs there keeps them, and so does one that places nobody', () => {
    expect(here('one-breath', 6, 6)).toEqual([true, true]);
    expect(here('positive-negative-neutral', 6, 0)).toEqual([true, true]);
    expect(here('hilltop', 8, 0)).toEqual([true, true, true]);
  });

  test('a question about a place keeps the numbers of who is on his way there', () => {
    const { prompt, about } = asked(of('hilltop'))[0]!;
    expect(about).toEqual({ atM: 8, speedMpmin: null });
    expect(isElsewhere(prompt!, about, { depthM: 0.4, speedMps: 0 })).toBe(false);
  });

  test('what is watched first is another dive', () => {
    expect(here('two-and-six-kilograms', 10, 0)).toEqual([true, true, true, false, false]);
  });
});
