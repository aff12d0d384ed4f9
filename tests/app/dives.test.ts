// @vitest-environment happy-dom
import { describe, expect, test } from 'vitest';
import { Dives, freeDiver } from '../../src/app/dives.ts';
import * as learning from '../../src/app/learning.ts';
import { readySetup } from '../../src/app/setups.ts';
import { Shell } from '../../src/app/shell.ts';

const FIRST = 'first-dive';
const free = freeDiver(await readySetup(FIRST), FIRST);

/** Dives whose lessons come when they are let: each fetch by itself. */
function slow() {
  const shell = new Shell(document.createElement('div'), window as unknown as Window);
  const waiting: (() => void)[] = [];
  const fetchLearning = () =>
    new Promise<typeof learning>((resolve) => {
      waiting.push(() => resolve(learning));
    });
  return { shell, waiting, dives: new Dives(shell, { fetchLearning }, free, () => undefined) };
}

describe('learn()', () => {
  test('of two wishes the later one is flown, whichever comes first', async () => {
    const { dives, waiting } = slow();
    const wishes = [dives.learn('first-dive', 1), dives.learn('hover', 1)];
    waiting[1]!();
    await wishes[1];
    waiting[0]!();
    await wishes[0];
    expect(dives.lesson?.lesson.id).toBe('hover');
  });

  test.each<[string, (dives: Dives, shell: Shell) => void]>([
    ['flies freely', (dives) => dives.practise(free)],
    ['opened kit', (_, shell) => shell.show({ place: 'kit' })],
    ['went to the bench', (_, shell) => shell.show({ place: 'bench' })],
  ])('who %s before the lesson came stays there', async (_, go) => {
    const { dives, shell, waiting } = slow();
    const wished = dives.learn('first-dive', 1);
    go(dives, shell);
    const { place } = shell.view;
    waiting[0]!();
    await wished;
    expect(dives.lesson).toBeNull();
    expect(shell.view.place).toBe(place);
  });

  test('who waits where he is has his lesson', async () => {
    const { dives, shell, waiting } = slow();
    const wished = dives.learn('first-dive', 1);
    waiting[0]!();
    await wished;
    expect([dives.lesson?.lesson.id, shell.view.place]).toEqual(['first-dive', 'lesson']);
  });
});
