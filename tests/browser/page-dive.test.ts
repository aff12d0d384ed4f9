import type { Page } from 'playwright';
import { expect, test } from 'vitest';
import { useChromium } from './chromium.ts';
import {
  answer,
  begin,
  dive,
  finger,
  keyboard,
  middle,
  named,
  phone,
  press,
  read,
  shown,
  touch,
  type Hands,
  type Seen,
} from './flown-page.ts';
import { pass } from './made-time.ts';

const visit = useChromium();

/** Depth that the title of the phase speaks of; 0 at the surface. */
function targetM(title: string): number {
  if (title.startsWith('Going down') || title.startsWith('Neutral')) return 8;
  return title.startsWith('Coming up') || title.startsWith('Stop') ? 5 : 0;
}

/** One decision of a plain pilot: wants a speed for the distance, and the gas that brings it about. */
async function decide(page: Page, hands: Hands, { title, depthM, mpmin, lightKg }: Seen): Promise<void> {
  const hold = (act: 'vent' | 'add', ms: number) => press(page, hands, act, ms);
  if (title.startsWith('Positive') || title.includes('positive again')) {
    if (depthM > 0.7) {
      // On the way up: slower than 9 m/min, and gas once the head is out.
      if (mpmin < -6) await hold('vent', 250);
      else if (mpmin > -3) await hold('add', 120);
    } else if (!title.startsWith('Positive:')) await hold('add', 1500);
    return;
  }
  if (depthM < 1.2) return hold('vent', 400);
  const wanted = Math.max(Math.min((targetM(title) - depthM) * 5, 10), -6);
  const off = wanted - mpmin;
  // A kilogram light slows by roughly ten metres a minute; lead the speed by the force that already works.
  const need = off + lightKg * 8;
  if (need > 4) await hold('vent', Math.min(need * 16, 300));
  else if (need < -4) await hold('add', Math.min(-need * 16, 300));
}

/** Answers and flies to the debrief; returns how many questions there were. */
async function flyToTheEnd(page: Page, hands: Hands): Promise<number> {
  for (let answered = 0, leftS = 600; leftS > 0; leftS -= 0.35) {
    const seen = await read(page);
    if (seen.debriefed) {
      await shown(page, true);
      return answered;
    }
    if (seen.asked) {
      // The dive stands still, and is still to be read.
      expect(await page.locator('lane-numbers .depth').count()).toBe(1);
      await answer(page, hands);
      answered++;
    } else {
      await decide(page, hands, seen);
      await dive(page, hands, 0.35);
    }
  }
  throw new Error(`the dive came to no end: ${JSON.stringify(await read(page))}`);
}

/** The second lesson of self-study, at the bench, to what came of it. */
async function tryTheLump(page: Page): Promise<void> {
  const tap = async (name: string) => {
    await page.getByRole('button', { name, exact: true }).tap();
    await pass(page, 0.2);
  };
  const heading = page.locator('question-sheet h2, bench-sheet .task h2, .came h2').first();
  const comes = (words: RegExp) =>
    expect
      .poll(async () => {
        await pass(page, 0.5);
        return heading.innerText();
      })
      .toMatch(words);
  await comes(/One lump of putty/);
  await tap('go on');
  await comes(/Which floats/);
  await tap('Only the tray');
  for (const next of [/What does the balance read/, /the tray, lowered/, /^The lump$/]) {
    await tap('lock it');
    await comes(next);
  }
  await tap('spring balance');
  for (let i = 0; i < 7; i++) await tap('carry down');
  await comes(/^The tray$/);
  await tap('spring balance');
  await tap('take in hand');
  await tap('tray');
  await tap('let go');
  await comes(/^A lump and a tray: /);
}

test('First dive is flown by keyboard, at double speed, from the first prediction to the debrief', async () => {
  await visit(
    './',
    async (page) => {
      const hands = keyboard(page, 2);
      await begin(page, hands.push);
      await answer(page, hands);
      await hands.push(page.locator('title-bar .speeds button').nth(3));
      expect(await flyToTheEnd(page, hands)).toBe(4);
      const debrief = page.locator('debrief-sheet');
      expect(await debrief.locator('.mark').count()).toBe(3);
      expect(await debrief.locator('.mark h3').allInnerTexts()).toEqual([
        expect.stringMatching(/descent (not yet|nearly|secure)/i),
        expect.stringMatching(/hover (not yet|nearly|secure)/i),
        expect.stringMatching(/ascent (not yet|nearly|secure)/i),
      ]);
      expect(await debrief.innerText()).toContain('It is no evidence of competence in water.');
      expect(await debrief.innerText()).toContain('What the water adds');
      await debrief.locator('summary').first().click();
      await debrief.locator('.moment').first().click();
      await debrief.locator('.moment[aria-pressed=true]').first().waitFor();
    },
    { madeTime: true },
  );
}, 180_000);

test('self-study by one finger on a phone: from the first screen through First dive to its debrief, and through the next lesson to its own', async () => {
  await visit(
    './',
    async (page) => {
      const hands = finger(page, await page.context().newCDPSession(page));
      await begin(page, hands.push, ['Self-study', 'next in this path: First dive']);
      await answer(page, hands);
      // What helps is there on a phone too, and goes out of the way.
      await page.locator('.hint span').getByText('Nothing to do.').waitFor();
      await page.locator('.hint button').tap();
      await page.locator('.hint .folded').waitFor({ state: 'hidden' });
      expect(await flyToTheEnd(page, hands)).toBe(4);
      const debrief = page.locator('debrief-sheet');
      expect(await debrief.locator('.mark').count()).toBe(3);
      await debrief.locator('summary').first().tap();
      await debrief.locator('.moment').first().tap();
      await debrief.locator('.moment[aria-pressed=true]').first().waitFor();
      expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(360);
      await debrief.getByRole('button', { name: 'lessons', exact: true }).tap();
      await named(page, 'begin A lump and a tray').tap();
      await tryTheLump(page);
    },
    { ...phone, madeTime: true },
  );
}, 180_000);

test('by touch: gas goes while the finger is down, a second one on the opposite button is ignored, a lost touch lets go', async () => {
  await visit(
    './',
    async (page) => {
      const session = await page.context().newCDPSession(page);
      const hands = finger(page, session);
      await begin(page, hands.push);
      await answer(page, hands);
      const isDown = async (act: string) => {
        await dive(page, hands, 0.2);
        return page.locator(`[data-act=${act}]`).evaluate((button) => button.classList.contains('is-down'));
      };

      const [vent, add, out] = [
        await middle(page, 'vent', 1),
        await middle(page, 'add', 2),
        await middle(page, 'out', 3),
      ];
      await touch(session, 'touchStart', vent);
      await expect.poll(() => isDown('vent')).toBe(true);
      await touch(session, 'touchStart', vent, add);
      expect([await isDown('vent'), await isDown('add')]).toEqual([true, false]);
      await touch(session, 'touchCancel');
      await expect.poll(() => isDown('vent')).toBe(false);

      await touch(session, 'touchStart', out);
      await expect.poll(() => isDown('out')).toBe(true);
      await touch(session, 'touchEnd');
      await expect.poll(() => isDown('out')).toBe(false);
    },
    { ...phone, madeTime: true },
  );
});
