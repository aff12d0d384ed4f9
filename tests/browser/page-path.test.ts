import type { Page } from 'playwright';
import { expect, test } from 'vitest';
import { useChromium } from './chromium.ts';
import { answer, begin, dive, finger, named, phone, press, read, shown, type Hands } from './flown-page.ts';

const visit = useChromium();

/** What stands over the question: which of how many it is. */
const asking = (page: Page) => page.locator('question-sheet .kind').innerText();

/** Whether something is wholly in the window and nothing lies over its middle: a thumb meets it. */
const isMet = (page: Page, selector: string) =>
  page.locator(selector).evaluate((thing) => {
    const { left, right, top, bottom } = thing.getBoundingClientRect();
    const meets = document.elementFromPoint((left + right) / 2, (top + bottom) / 2);
    return left >= 0 && top >= 0 && right <= innerWidth && bottom <= innerHeight && thing.contains(meets);
  });

/** Lets the dive go on until its debrief is there, however that is fetched. */
async function debriefed(page: Page, hands: Hands, atMostS: number): Promise<string> {
  for (let leftS = atMostS; leftS > 0 && !(await read(page)).debriefed; leftS -= 0.5) await dive(page, hands, 0.5);
  await shown(page, true);
  // What comes next is read from what is kept: it is there a little later than the marks.
  await page.waitForSelector('debrief-sheet .next .main');
  return page.locator('debrief-sheet').innerText();
}

test('Positive, negative, neutral on a phone by one finger, the line held by it: passed, and The hilltop after it by the breath alone', async () => {
  await visit(
    './',
    async (page) => {
      const hands = finger(page, await page.context().newCDPSession(page));
      await begin(page, hands.push, ['Self-study', 'begin Positive, negative, neutral']);
      expect(await asking(page)).toBe('Predict, 1 of 2; answers after the dive');
      // All ways on and back are in sight beside the question.
      for (const name of ['start', 'leave', 'more']) expect(await named(page, name).first().isVisible()).toBe(true);
      await page.locator('.option', { hasText: 'jacket' }).tap();
      await page.locator('question-sheet .main').tap();
      await expect.poll(() => asking(page)).toBe('Predict, 2 of 2; answers after the dive');
      await named(page, 'less by 1 L').tap();
      await answer(page, hands);

      expect(await isMet(page, 'practice-deck .of-line button')).toBe(true);
      // An open hint lies under the diver, not over him.
      await dive(page, hands, 0.3);
      const lane = (await page.locator('lane-numbers').boundingBox())!;
      const hint = (await page.locator('.hint span').boundingBox())!;
      expect(hint.y + hint.height).toBeLessThanOrEqual(lane.y);
      await page.locator('practice-deck .of-line button').tap();
      await dive(page, hands, 0.7);
      // A litre is a kilogram: one light, one heavy, neither, each for ten seconds.
      for (const [act, ms, restS] of [
        ['add', 600, 11.4],
        ['vent', 1500, 11.5],
        ['add', 600, 0],
      ] as const) {
        await press(page, hands, act, ms);
        await dive(page, hands, restS);
      }
      const came = await debriefed(page, hands, 20);
      expect(came).toContain('All that was asked for was met.');
      expect(came).toContain('2 of 2 as you said.');
      expect(came).toContain('The hilltop comes next.');

      await page.locator('debrief-sheet .next .main').tap();
      const asks = async () => {
        await dive(page, hands, 0.1);
        const kind = page.locator('question-sheet .kind');
        return (await kind.count()) > 0 ? kind.innerText() : '';
      };
      await expect.poll(asks).toBe('Predict, 1 of 3; answers after the dive');
      await shown(page, false);
      for (let at = 2; at <= 3; at++) {
        await page.locator('question-sheet .main').tap();
        await expect.poll(asks).toBe(`Predict, ${at} of 3; answers after the dive`);
      }
      await answer(page, hands);
      // Neutral as it begins: whoever drifts up breathes a little lower, whoever sinks a little higher.
      for (let leftS = 55; leftS > 0; leftS -= 1.5) {
        const { depthM, mpmin } = await read(page);
        const off = depthM - 8 + mpmin / 5;
        if (Math.abs(off) > 0.2) await press(page, hands, off > 0 ? 'in' : 'out', Math.min(Math.abs(off) * 500, 400));
        await dive(page, hands, 1.1);
      }
      const then = await debriefed(page, hands, 20);
      expect(then).toContain('The hilltop: what came of it');
      expect(then).toContain('of 3 as you said.');
      expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(360);
    },
    { ...phone, madeTime: true },
  );
}, 180_000);

test('a first visit that leads into a lesson on a phone: the caution alone, then what is asked, and never over the caution at the foot', async () => {
  await visit(
    './#/lessons/first-dive',
    async (page) => {
      await page.waitForSelector('question-sheet section', { state: 'attached' });
      const asked = page.locator('question-sheet section');
      expect(await asked.isVisible()).toBe(false);
      expect(await isMet(page, 'footer')).toBe(true);
      await named(page, 'I have read this').tap();
      await expect.poll(() => asked.isVisible()).toBe(true);
      for (const viewport of [phone.viewport, { width: 740, height: 360 }]) {
        await page.setViewportSize(viewport);
        const over = async () => {
          const [sheet, words] = await Promise.all([
            asked.boundingBox(),
            page.locator('footer').evaluate((foot) => {
              const range = document.createRange();
              range.selectNodeContents(foot);
              const { left, top } = range.getBoundingClientRect();
              return { left, top };
            }),
          ]);
          return sheet!.x + sheet!.width > words.left && sheet!.y + sheet!.height > words.top;
        };
        await expect.poll(over).toBe(false);
        for (const name of ['start', 'leave', 'more'])
          expect(await isMet(page, `title-bar button:text-is("${name}")`), name).toBe(true);
        for (const button of await page.locator('title-bar button:visible, question-sheet button').all()) {
          const { width, height } = (await button.boundingBox())!;
          expect(Math.min(width, height)).toBeGreaterThanOrEqual(48);
        }
      }
    },
    phone,
  );
});

test('on a phone on its side every hand of a task is met by a thumb: lead or suit above the fins, what turns the diver, the middle of the breath', async () => {
  await visit(
    './#/lessons/surface-check',
    async (page) => {
      await page.waitForSelector('question-sheet section');
      await named(page, 'I have read this').tap();
      for (const [id, wanted] of [
        ['surface-check', ['lead-off', 'lead-on', 'kick-up', 'kick-down', 'middle']],
        ['drysuit', ['suit-add', 'suit-vent', 'kick-up', 'kick-down', 'middle']],
        ['posture', ['head-up', 'level', 'head-down', 'kick-up', 'kick-down', 'middle']],
      ] as const) {
        await page.evaluate((id) => (location.hash = `#/lessons/${id}`), id);
        await expect
          .poll(async () => {
            const option = page.locator('.option').first();
            if (await option.isVisible()) await option.tap();
            const main = page.locator('question-sheet .main');
            if (await main.isVisible()) await main.tap();
            return page.locator(`[data-act=${wanted[0]}]`).isVisible();
          })
          .toBe(true);
        for (const act of [...wanted, 'add', 'vent', 'in', 'out']) {
          expect(await isMet(page, `[data-act=${act}]`), `${id}: ${act}`).toBe(true);
          const { width, height } = (await page.locator(`[data-act=${act}]`).boundingBox())!;
          expect(Math.min(width, height), `${id}: ${act}`).toBeGreaterThanOrEqual(48);
        }
      }
    },
    { ...phone, viewport: { width: 740, height: 360 } },
  );
});
