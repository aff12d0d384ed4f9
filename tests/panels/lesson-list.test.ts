// @vitest-environment happy-dom
import { afterEach, expect, test } from 'vitest';
import { LESSONS } from '../../src/lesson/index.ts';
import { LessonList } from '../../src/panels/lesson-list.ts';
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
  const behind = [...list.querySelectorAll('details .main')].map((button) => button.textContent?.trim());
  expect(behind).toEqual(LESSONS.filter(({ opens }) => opens === 'instructor').map(({ title }) => `begin ${title}`));
  for (const button of list.querySelectorAll<HTMLButtonElement>('.main')) button.click();
  expect(heard).toEqual(LESSONS.map(({ id }) => ({ kind: 'lesson', id })));
});
