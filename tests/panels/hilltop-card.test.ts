// @vitest-environment happy-dom
import { afterEach, expect, test } from 'vitest';
import { HilltopCard } from '../../src/panels/hilltop-card.ts';
import type { HillView } from '../../src/panels/looks.ts';

const depthsM = Array.from({ length: 41 }, (_, i) => 6 + i / 5);
/** A hill of −(z − 10)², moved so that the diver stands at 0. */
const hillAt = (depthM: number): HillView => ({
  depthsM,
  energyJ: depthsM.map((z) => (depthM - 10) ** 2 - (z - 10) ** 2),
  depthM,
  topM: 10,
  flatM: [9.6, 10.4],
});

async function drawn(hill: HillView): Promise<{ x: number; y: number; spoken: string }> {
  const card = Object.assign(new HilltopCard(), { hill });
  document.body.append(card);
  await card.updateComplete;
  const ball = card.querySelector('circle')!;
  return {
    x: Number(ball.getAttribute('cx')),
    y: Number(ball.getAttribute('cy')),
    spoken: card.querySelector('svg')!.getAttribute('aria-label')!,
  };
}

afterEach(() => document.body.replaceChildren());

test('the ball is highest on the top, lower the farther off, deeper to the right', async () => {
  const [shallow, top, deep] = [await drawn(hillAt(8)), await drawn(hillAt(10)), await drawn(hillAt(13))];
  expect(shallow.x).toBeLessThan(top.x);
  expect(deep.x).toBeGreaterThan(top.x);
  expect(top.y).toBeLessThan(shallow.y);
  expect(shallow.y).toBeLessThan(deep.y);
});

test('the picture is said in words: where the top is, how far it is flat, how far off the diver is', async () => {
  expect((await drawn(hillAt(13))).spoken).toBe(
    'The hilltop lies at 10.0 m, flat from 9.6 m to 10.4 m; you are 3.0 m deeper than it.',
  );
  expect((await drawn({ ...hillAt(13), topM: null, flatM: null })).spoken).toContain('No hilltop');
});
