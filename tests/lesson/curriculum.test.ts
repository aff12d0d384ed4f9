import { describe, expect, test } from 'vitest';
import { loadSetupText } from '../../src/diver/file.ts';
import { rigOf, type Rig } from '../../src/diver/index.ts';
import {
  MENU,
  LESSONS,
  asExpected,
  flights,
  lessonSetup,
  type Lesson,
  type PredictStep,
} from '../../src/lesson/index.ts';
import { truthOf } from '../../src/lesson/truth.ts';
import { TOPICS } from '../../src/lesson/topics.ts';
import { READY_TEXTS } from '../fixtures/setups/texts.ts';

// A sample of what the table of the command flies: who passes twice, who fails once, scripts once.
const rigFor = (lesson: Lesson): Rig =>
  rigOf(lessonSetup(lesson, loadSetupText(READY_TEXTS.get(lesson.setup.ready) ?? '')));
const predictions = (lesson: Lesson) => lesson.steps.filter((step): step is PredictStep => step.kind === 'predict');

describe.each(LESSONS.map((lesson) => [lesson.id, lesson] as const))('%s', (_, lesson) => {
  test('comes as its proof says, within its minutes', { timeout: 60_000 }, () => {
    const rig = rigFor(lesson);
    expect(lesson.proof.some(({ comes }) => comes === 'pass')).toBe(true);
    expect(lesson.proof.some(({ comes }) => comes === 'fail')).toBe(true);
    for (const proof of lesson.proof) {
      const seeds = proof.script || proof.comes === 'fail' ? [101] : [101, 102];
      const flown = flights(lesson, rig, proof, seeds);
      const who = proof.pilot ?? 'script';
      expect(
        asExpected(proof, flown),
        `${who}: ${flown.passed} of ${flown.flown}, ${[...flown.faults.keys()].join()}`,
      ).toBe(true);
      if (proof.comes === 'pass') expect(flown.longestS, who).toBeLessThan(lesson.minutes * 60);
    }
  });

  test('asks what lies on its scales, and says what a lesson has to say', () => {
    const rig = rigFor(lesson);
    for (const step of predictions(lesson)) {
      const truth = truthOf(lesson, rig, step);
      if (step.shape === 'number' || step.shape === 'place' || step.shape === 'curve')
        for (const value of [truth].flat().map(Number)) {
          expect(value - step.least, `${step.id} came to ${value}`).toBeGreaterThan(0);
          expect(step.most - value, `${step.id} came to ${value}`).toBeGreaterThan(0);
          // What is right is no more than a third of the scale: nobody is right by chance.
          expect(step.within * 2, step.id).toBeLessThan((step.most - step.least) / 3);
        }
      if (step.shape === 'choice') expect(step.options.map(({ id }) => id)).toContain(truth);
    }
    expect(lesson.steps.at(-1)?.kind).toBe('ask');
    expect(lesson.values.length).toBeGreaterThan(0);
    for (const { why } of lesson.values) expect(why).toMatch(/^Practice: |^30 ft\/min: US Navy Diving Manual/);
  });
});

test('what goes wrong is opened by the instructor and shown before it is flown', () => {
  const wrong = LESSONS.filter(({ phase }) => phase === 'when-it-goes-wrong');
  expect(wrong.length).toBeGreaterThanOrEqual(4);
  for (const { id, opens, steps } of wrong) {
    expect(opens, id).toBe('instructor');
    const kinds = steps.map(({ kind }) => kind);
    expect(kinds.indexOf('watch'), id).toBeGreaterThanOrEqual(0);
    expect(kinds.indexOf('watch'), id).toBeLessThan(kinds.indexOf('fly'));
  }
});

test('every topic is asked somewhere, and every part of the course has its lessons', () => {
  const asked = new Set(LESSONS.flatMap(predictions).map(({ topic }) => topic));
  expect(Object.keys(TOPICS).filter((topic) => !asked.has(topic as keyof typeof TOPICS))).toEqual([]);
  const phases = new Set(MENU.map(({ phase }) => phase));
  expect([...phases]).toEqual([
    'first-dive',
    'bench',
    'three-phases',
    'weighting',
    'under-control',
    'when-it-goes-wrong',
    'limits',
  ]);
});

test('a lesson warns of a held breath wherever it is mended by breathing', () => {
  for (const id of ['first-dive', 'hilltop', 'one-breath', 'hover', 'ascent-with-stop', 'last-five-metres']) {
    const caution = LESSONS.find((lesson) => lesson.id === id)?.caution;
    expect(caution, id).toMatch(/never hold your breath/i);
  }
});
