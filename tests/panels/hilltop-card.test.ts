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

test('the bracket is told in the units of the page', async () => {
  const foot = async (units: HilltopCard['units']) => {
    const card = Object.assign(new HilltopCard(), { hill: hillAt(13), units });
    document.body.append(card);
    await card.updateComplete;
    return card.querySelector('p')!.textContent;
  };
  expect(await foot('metric')).toContain('neutral within 0.1 kg.');
  expect(await foot('imperial')).toContain('neutral within 0.2 lb.');
});

test('a stable neutral depth is a hollow: title, foot and words say that the ball comes back', async () => {
  const hollow: HillView = {
    depthsM,
    energyJ: depthsM.map((z) => (z - 10.1) ** 2 - 0.04),
    depthM: 10.3,
    topM: null,
    flatM: null,
  };
  expect((await drawn(hollow)).spoken).toBe(
    'A hollow lies at 10.1 m, and holds you; you are 0.2 m deeper than its lowest place.',
  );
  const words = () => document.body.textContent;
  expect(words()).toContain('You in the hollow');
  expect(words()).toContain('rolls back');
  expect(words()).not.toContain('rolls away');
});

test('of a top and a hollow the nearer one gives the card its title', async () => {
  // A hollow at 8 m and a top at 12 m: the force is (z − 8)(12 − z).
  const energy = (z: number) => -(z ** 3) / 3 + 10 * z ** 2 - 96 * z;
  const at = (depthM: number): HillView => ({
    depthsM,
    energyJ: depthsM.map((z) => energy(z) - energy(depthM)),
    depthM,
    topM: 12,
    flatM: [11.5, 12.5],
  });
  await drawn(at(8.4));
  expect(document.querySelector('h2')?.textContent).toBe('You in the hollow');
  document.body.replaceChildren();
  await drawn(at(11.6));
  expect(document.querySelector('h2')?.textContent).toBe('You on the hill');
});

test('who is nearer to a hollow than to a top, but where a drift already grows, is on the slope', async () => {
  // The force is (z − 8)(12 − z) as above: the curve bends down from 10 m on.
  const energy = (z: number) => -(z ** 3) / 3 + 10 * z ** 2 - 96 * z;
  const at = (depthM: number): HillView => ({
    depthsM,
    energyJ: depthsM.map((z) => energy(z) - energy(depthM)),
    depthM,
    topM: null,
    flatM: null,
  });
  for (const [depthM, title] of [
    [9.4, 'You in the hollow'],
    [10.4, 'You on the slope'],
  ] as const) {
    document.body.replaceChildren();
    await drawn(at(depthM));
    expect(document.querySelector('h2')?.textContent).toBe(title);
  }
});

test('the words of the top stand clear over the bracket, and the bracket over the ball', async () => {
  const ball = await drawn(hillAt(10));
  const words = Number(document.querySelector('hilltop-card text')!.getAttribute('y'));
  const [, bracketFoot, rise] = /M[\d.]+ ([\d.]+)v(-[\d.]+)H/
    .exec(document.querySelector('hilltop-card .flat')!.getAttribute('d')!)!
    .map(Number);
  // Letters reach a fifth of their height below their line.
  expect(words + 3).toBeLessThanOrEqual(bracketFoot! + rise!);
  expect(bracketFoot).toBeLessThanOrEqual(ball.y - 9);
  expect(words).toBeGreaterThanOrEqual(12);
});
