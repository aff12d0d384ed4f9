import { readFileSync, readdirSync } from 'node:fs';
import { expect, test } from 'vitest';
import { loadLessonText, readLesson } from '../../src/lesson/file.ts';
import { LESSONS } from '../../src/lesson/index.ts';
import { FIRST_DIVE_TEXT as text, firstDive } from '../fixtures/lessons/first-dive.ts';

/** The text with one piece changed; the piece must be there. */
function with_(from: string, to: string, base = text): string {
  if (!base.includes(from)) throw new Error(`no "${from}" in the lesson`);
  return base.replace(from, to);
}
function problems(changed: string) {
  const read = readLesson(changed);
  return 'problems' in read ? read.problems : [];
}
const lineOf = (piece: string, base = text) => base.slice(0, base.indexOf(piece)).split('\n').length;

test('our own lessons are complete: what the reader gives is what the file says', () => {
  const folder = new URL('../../lessons/', import.meta.url);
  const files = readdirSync(folder).filter((name) => name.endsWith('.yaml') && name !== 'template.yaml');
  expect(files.sort()).toEqual(LESSONS.map(({ id }) => `${id}.yaml`).sort());
  for (const lesson of LESSONS)
    expect(loadLessonText(readFileSync(new URL(`${lesson.id}.yaml`, folder), 'utf8')), lesson.id).toEqual(lesson);
});

test('the first dive asks one prediction at the start of each of its phases', () => {
  const kinds = firstDive.steps.map((step) => (step.kind === 'fly' ? step.id : step.kind)).join(' ');
  expect(kinds).toBe('predict surface predict descent predict hover predict ascent stop predict surface-again ask');
  expect(firstDive.caution).toContain('Never hold your breath');
  expect(firstDive.waterAdds).not.toBe('');
});

test('readLesson() refuses a typed-in answer to a topic, at the answer', () => {
  const typed = with_('topic: what-sinks\n', 'topic: what-sinks\n    answer: gas\n');
  expect(problems(typed)).toEqual([
    expect.objectContaining({ line: lineOf('answer: gas', typed), suggestion: 'Delete answer' }),
  ]);
});

test('readLesson() refuses a typed-in answer instead of a topic that would compute it', () => {
  const typed = with_('topic: what-sinks\n', 'answer: gas\n');
  expect(problems(typed)).toEqual([
    expect.objectContaining({ allowed: 'topic: what-sinks', line: lineOf('answer: gas', typed) }),
  ]);
});

test('readLesson() refuses a number without a topic, and quantities to choose from', () => {
  const [number] = problems(with_('    topic: jacket-for-floating\n', ''));
  expect(number?.suggestion).toContain('computed by the model');
  const chosen = with_('    topic: what-sinks\n', '    answer: none\n')
    .replace('id: breath, words: Breathing out is enough', 'id: none, words: About 3 litres')
    .replace('id: gas, words: Letting', 'id: other, words: Letting');
  expect(problems(chosen).map(({ suggestion }) => suggestion)).toEqual([expect.stringContaining('Ask for the number')]);
});

test('readLesson() takes a typed-in answer where nothing can compute it', () => {
  const typed = with_(
    'steps:\n',
    `steps:
  - kind: predict
    id: sign
    shape: choice
    answer: thumb
    question: Which hand signal says that you end the dive?
    options:
      - { id: thumb, words: Thumb up }
      - { id: flat, words: Flat hand }
    why: A thumb up is the sign for going up.
`,
  );
  expect(problems(typed)).toEqual([]);
  expect(problems(typed.replace('answer: thumb', 'answer: fist'))).toEqual([
    expect.objectContaining({ path: 'steps[0].answer', allowed: expect.stringContaining('thumb, flat') }),
  ]);
});

test('readLesson() wants every outcome of a topic among the options', () => {
  const [problem] = problems(with_('      - { id: both, words: It takes both }\n', ''));
  expect(problem?.allowed).toBe('each outcome once: breath, gas, both, nothing');
});

test('readLesson() wants the keys of a shape and the depths of a topic, and no others', () => {
  expect(problems(with_('    within: 1\n', ''))[0]).toMatchObject({ suggestion: 'Add within' });
  expect(problems(with_('    toM: 5\n', ''))[0]).toMatchObject({ suggestion: 'Add toM, in metres' });
  expect(problems(with_('topic: what-sinks\n', 'topic: what-sinks\n    atM: 5\n'))[0]).toMatchObject({
    suggestion: 'Delete atM',
  });
});

test('readLesson() wants steps that marks can look at, each with its kind of goal', () => {
  const wrong = with_('{ mark: hover, hold: hover,', '{ mark: hover, hold: stopp,');
  expect(problems(wrong)[0]).toMatchObject({ line: lineOf('hold: stopp', wrong), suggestion: 'Write stop' });
  const backwards = with_('travel: descent, hold: hover', 'travel: ascent, hold: hover');
  expect(problems(backwards)[0]?.suggestion).toBe('Change the order');
});

test('readLesson() wants questions at the end, different ids, something to fly and a setup that is there', () => {
  const early = with_('steps:\n', 'steps:\n  - { kind: ask, id: early, question: Why? }\n');
  expect(problems(early)[0]).toMatchObject({ line: lineOf('kind: ask, id: early', early) });
  expect(problems(with_('id: leaving', 'id: afloat'))[0]?.found).toBe('afloat, as in step 1');
  expect(problems(with_('ready: first-dive', 'ready: first-dve'))[0]?.suggestion).toBe('Write first-dive');
  const shortened = text.replace(/steps:\n[\s\S]*?(?= {2}- kind: ask)/, 'steps:\n');
  expect(problems(shortened).some(({ found }) => found === 'nothing to fly')).toBe(true);
});

test('readLesson() finds what is wrong in far places of a file together', () => {
  const many = with_('minutes: 6', 'minutes: many', with_('topic: what-sinks\n', 'answer: gas\n')).replace(
    'settleS: 10, forS: 60',
    'settleS: 10, forS: 6000',
  );
  expect(problems(many).map(({ path }) => path)).toEqual(['minutes', 'steps[2].answer', 'steps[8].goal.forS']);
});

test('readLesson() says what is wrong with an empty file and with a list', () => {
  for (const odd of ['', '[]', '- a', '"text"', 'null', '7']) expect(problems(odd).length).toBeGreaterThan(0);
});

test('loadLessonText() throws every problem, one a line', () => {
  expect(() => loadLessonText(with_('minutes: 6', 'minutes: many'))).toThrow(/line 4: minutes: found "many"/);
});
