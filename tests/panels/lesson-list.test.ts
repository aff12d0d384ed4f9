// @vitest-environment happy-dom
import { afterEach, expect, test } from 'vitest';
import { LESSONS } from '../../src/lesson/index.ts';
import type { LearnView } from '../../src/panels/learn-view.ts';
import { LessonList } from '../../src/panels/lesson-list.ts';
import { WatchChoice } from '../../src/panels/watch-choice.ts';
import { PILOTS } from '../../src/pilot/index.ts';
import { WishEvent, type Wish } from '../../src/panels/wish.ts';

afterEach(() => document.body.replaceChildren());

test('every lesson stands in its part of the course with its caution, and can be begun; some once they are opened', async () => {
  const list = Object.assign(new LessonList(), { lessons: LESSONS });
  const heard: Wish[] = [];
  list.addEventListener('wish', (event) => {
    if (event instanceof WishEvent) heard.push(event.wish);
  });
  document.body.append(list);
  await list.updateComplete;
  expect([...list.querySelectorAll('h4')].map((head) => head.textContent)).toEqual(
    LESSONS.map(({ title, minutes }) => `${title} ${minutes} minutes`),
  );
  expect([...list.querySelectorAll('.caution')].map((caution) => caution.textContent)).toEqual(
    LESSONS.map(({ caution }) => caution),
  );
  const begins = () => [...list.querySelectorAll<HTMLButtonElement>('.main')];
  const open = LESSONS.filter(({ opens }) => opens === 'always');
  expect(begins().map((button) => button.textContent?.trim())).toEqual(open.map(({ title }) => `begin ${title}`));
  for (const button of begins()) button.click();
  expect(heard).toEqual(open.map(({ id }) => ({ kind: 'lesson', id })));
  [...list.querySelectorAll('button')].find((button) => button.textContent?.includes('I am the instructor'))!.click();
  expect(heard.at(-1)).toEqual({ kind: 'settings', settings: { opened: true } });
  list.opened = true;
  await list.updateComplete;
  expect(begins()).toHaveLength(LESSONS.length);
});

const learn: LearnView = {
  paths: [
    { id: 'theory', title: 'Theory hour', about: 'For a class.', minutes: 57 },
    { id: 'self-study', title: 'Self-study', about: 'Alone.', minutes: null },
  ],
  path: 'self-study',
  stops: [{ kind: 'lesson', id: 'hover', title: 'Hover', about: '', minutes: 5 }],
  next: { kind: 'lesson', id: 'hover', title: 'Hover', about: '', minutes: 5 },
  known: { hover: { word: 'nearly', of: 2, predictions: { right: 1, of: 2 } } },
  own: null,
  tried: null,
  walk: null,
};

test('where all lessons stand, what is next stands before them', async () => {
  const list = Object.assign(new LessonList(), { lessons: LESSONS, learn: { ...learn, path: null, stops: [] } });
  const heard: Wish[] = [];
  list.addEventListener('wish', (event) => {
    if (event instanceof WishEvent) heard.push(event.wish);
  });
  document.body.append(list);
  await list.updateComplete;
  const first = list.querySelector<HTMLButtonElement>('button')!;
  expect(first.textContent).toBe('next for you: Hover');
  first.click();
  expect(heard).toEqual([{ kind: 'learn', ask: { do: 'next' } }]);
  list.learn = { ...learn, path: null, stops: [], next: null };
  await list.updateComplete;
  expect(list.querySelector('.next')).toBeNull();
});

test('a path shows its stops with what is known of each, never a decimal, and leads to the next', async () => {
  const list = Object.assign(new LessonList(), { lessons: LESSONS, learn });
  const heard: Wish[] = [];
  list.addEventListener('wish', (event) => {
    if (event instanceof WishEvent) heard.push(event.wish);
  });
  document.body.append(list);
  await list.updateComplete;
  expect([...list.querySelectorAll('.known')].map((known) => known.textContent)).toEqual([
    'nearly, over 2 flights; 1 of 2 predictions right',
  ]);
  [...list.querySelectorAll('button')].find((button) => button.textContent?.includes('next in this path'))!.click();
  expect(heard).toEqual([{ kind: 'learn', ask: { do: 'next' } }]);
  list.learn = { ...learn, path: null };
  await list.updateComplete;
  const known = [...list.querySelectorAll('.known')].map((one) => one.textContent);
  expect(known.filter((words) => words === 'not flown')).toHaveLength(LESSONS.length - 1);
});

test('a simulated diver is chosen by what he does, and watched', async () => {
  const choice = Object.assign(new WatchChoice(), { lessonId: 'hover', lessonTitle: 'Hover' });
  const heard: Wish[] = [];
  choice.addEventListener('wish', (event) => {
    if (event instanceof WishEvent) heard.push(event.wish);
  });
  document.body.append(choice);
  await choice.updateComplete;
  const select = choice.querySelector('select')!;
  select.value = 'latecomer';
  select.dispatchEvent(new Event('change'));
  await choice.updateComplete;
  expect(choice.querySelector('p')!.textContent).toBe(PILOTS.latecomer.does);
  choice.querySelector('button')!.click();
  expect(heard).toEqual([{ kind: 'lesson', id: 'hover', by: 'latecomer' }]);
});
