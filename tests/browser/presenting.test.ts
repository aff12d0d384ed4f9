import type { Page } from 'playwright';
import { describe, expect, test } from 'vitest';
import { useChromium } from './chromium.ts';
import { pass } from './made-time.ts';

const visit = useChromium();
/** Listens to what a page plays. */
interface Ears {
  contexts(): number;
  loudest(): number;
}
declare const ears: () => Ears;
/** The sentence at the top; its numbers keep to their units where it breaks. */
const title = async (page: Page) => (await page.locator('title-bar h1').innerText()).replace(/\u00a0/g, ' ');
const next = (page: Page) => page.locator('presenter-strip .main').innerText();
const depth = (page: Page) => page.locator('lane-numbers .depth').innerText();

/** The page with presenting, which hears the clicker. */
async function whole(page: Page): Promise<void> {
  await page.waitForSelector('practice-deck button.act');
  await page.waitForFunction(() => customElements.get('presenter-strip') && customElements.get('show-list'));
}

/** Lets time pass until what is next is something else, a run that ends by itself. */
async function runOut(page: Page): Promise<void> {
  const before = await title(page);
  for (let s = 0; s < 120 && (await next(page)) === 'next: freeze' && (await title(page)) === before; s += 5)
    await pass(page, 5);
}

/** One press of the clicker, and the frame that answers it. */
async function click(page: Page): Promise<void> {
  await page.keyboard.press('PageDown');
  await pass(page, 0.3);
}

describe('by a clicker alone', () => {
  test('all three demonstrations are walked from opening to the last step, each at its own address', async () => {
    await visit(
      './',
      async (page) => {
        await whole(page);
        await pass(page, 0.3);
        await page.keyboard.press('PageDown');
        await page.waitForSelector('show-list section');
        await page.keyboard.press('PageDown');
        const walked: Record<string, string[]> = {};
        for (let presses = 0; presses < 60; presses++) {
          await page.waitForSelector('presenter-strip section');
          const shown = new URL(page.url()).hash;
          (walked[shown] ??= []).push(await title(page));
          const last = (await next(page)) === 'next: list';
          await click(page);
          if ((await page.locator('show-list section').count()) > 0) break;
          if (last) break;
          if ((await next(page)) === 'next: freeze') {
            // The last run of the runaway descent is somebody's to fly: it ends when the class has seen enough.
            if ((await title(page)).startsWith('Take over')) await click(page);
            else await runOut(page);
          }
        }
        expect(Object.keys(walked)).toEqual(['#/show/hilltop', '#/show/two-kilograms', '#/show/runaway-descent']);
        const said = Object.values(walked).flat();
        expect(said.filter((words) => words.includes('…'))).toEqual([]);
        expect(said.join('\n')).toMatch(/C: 30 cm became [12]\.\d m in 25 s/);
        expect(said.join('\n')).toMatch(/A: at 7 m after 26 s, the other after 30 s/);
        expect(said.join('\n')).toMatch(/A: 29 m\/min at 10 m, 32 m\/min at 20 m/);
        expect(said.at(-1)).toMatch(/^Take over/);
        await page.waitForSelector('show-list section');
      },
      { madeTime: true },
    );
  });

  test('a link opens a demonstration; a reload in the middle comes back to its step, dive and hands; Escape changes nothing', async () => {
    await visit(
      './#/show/runaway-descent',
      async (page) => {
        await whole(page);
        await page.waitForSelector('presenter-strip section');
        await click(page);
        await pass(page, 4);
        await click(page);
        const [was, words] = [await depth(page), await title(page)];
        expect([await next(page), words]).toEqual(['next: go on', 'He lets go, and nobody acts.']);
        await page.reload();
        await whole(page);
        await page.waitForSelector('presenter-strip section');
        await pass(page, 0.3);
        expect([await next(page), await title(page), await depth(page)]).toEqual(['next: go on', words, was]);
        expect(new URL(page.url()).hash).toBe('#/show/runaway-descent');
        await click(page);
        await runOut(page);
        await page.waitForSelector('question-sheet section');
        expect(await depth(page)).toBe('10.0 m');
        await page.keyboard.press('Digit6');
        await page.keyboard.press('Escape');
        await pass(page, 0.5);
        await page.reload();
        await whole(page);
        await page.waitForSelector('presenter-strip [aria-label="A: 1, one more"]');
        await pass(page, 0.3);
        await page.waitForSelector('question-sheet section');
        expect(await depth(page)).toBe('10.0 m');
      },
      { madeTime: true },
    );
  });

  test('at the fifth second somebody takes over by V: the dive is his, no demonstration any more', async () => {
    await visit(
      './#/show/runaway-descent',
      async (page) => {
        await whole(page);
        await page.waitForSelector('presenter-strip section');
        await click(page);
        await runOut(page);
        await click(page);
        await runOut(page);
        await click(page);
        expect(await title(page)).toMatch(/^Back at the fifth second/);
        await page.keyboard.press('KeyV');
        await pass(page, 0.3);
        expect(new URL(page.url()).hash).toBe('#/column');
        await page.keyboard.down('KeyI');
        await pass(page, 3);
        await page.keyboard.up('KeyI');
        expect(await page.locator('title-bar .freeze').innerText()).toMatch(/^freeze/);
      },
      { madeTime: true },
    );
  });
});

test('sound is made only after it was switched on, is heard as the dive goes on, and stops when it is frozen', async () => {
  await visit('./', async (page) => {
    await page.evaluate(() => {
      const made: { analyser: AnalyserNode; context: AudioContext }[] = [];
      const connect = AudioNode.prototype.connect as (this: AudioNode, to: AudioNode) => AudioNode;
      AudioNode.prototype.connect = function (this: AudioNode, to: AudioNode) {
        if (to instanceof AudioDestinationNode) {
          const context = to.context as AudioContext;
          const analyser = context.createAnalyser();
          connect.call(this, analyser);
          made.push({ analyser, context });
        }
        return connect.call(this, to);
      } as never;
      const ears: Ears = {
        contexts: () => made.length,
        loudest: () => {
          const samples = new Float32Array(2048);
          made[0]?.analyser.getFloatTimeDomainData(samples);
          return Math.max(0, ...samples.map(Math.abs));
        },
      };
      Object.assign(window, { ears: () => ears });
    });
    await whole(page);
    await page.keyboard.press('KeyS');
    await page.waitForSelector('[data-act=kick-up]');
    await page.keyboard.down('KeyI');
    expect(await page.evaluate(() => ears().contexts())).toBe(0);
    await page.keyboard.press('Slash');
    await page.waitForFunction(() => ears().contexts() === 1 && ears().loudest() > 0.003);
    await page.keyboard.up('KeyI');
    await page.keyboard.press('KeyP');
    await page.waitForFunction(() => ears().loudest() < 0.0005);
    expect(await page.locator('caption-line p').count()).toBe(0);
    await page.getByRole('button', { name: 'more', exact: true }).click();
    await page.getByLabel('captions').check();
    await page.getByLabel('breath, inflator, bubbles').uncheck();
    await page.getByRole('button', { name: 'close', exact: true }).click();
    await page.keyboard.press('KeyP');
    await page.keyboard.down('KeyI');
    await page.waitForSelector('caption-line p >> text=/inflator: \\d\\.\\d s/');
    expect(await page.evaluate(() => ears().loudest())).toBeLessThan(0.0005);
  });
});

test('on a phone every control that the hands have is in sight or one sheet away, and large enough for a thumb', async () => {
  await visit(
    './',
    async (page) => {
      await whole(page);
      await page.getByRole('button', { name: 'fly', exact: true }).click();
      await page.getByRole('button', { name: 'I have read this', exact: true }).click();
      const sized = (selector: string) =>
        page.locator(selector).evaluateAll((all) =>
          all
            .filter((one) => one.checkVisibility())
            .map((one) => [one.textContent.replace(/\s+/g, ' ').trim(), one.getBoundingClientRect()] as const)
            .map(([words, { width, height }]) => ({ words, least: Math.min(width, height) })),
        );
      const deck = await sized('practice-deck button.act');
      await page.getByRole('button', { name: 'more', exact: true }).click();
      await page.locator('more-sheet select').first().selectOption({ label: 'Cold sea, membrane drysuit' });
      await page.waitForSelector('more-sheet dialog:not([open])', { state: 'attached' });
      const suit = await sized('practice-deck button.act');
      await page.getByRole('button', { name: 'more', exact: true }).click();
      await page.waitForSelector('more-sheet .small-only');
      const sheet = await sized('more-sheet section:first-of-type button');
      const words = [...deck, ...suit, ...sheet].map((one) => one.words).join('; ');
      for (const one of ['add', 'vent', 'by mouth', 'in', 'out', 'middle', 'kick up', 'kick down'])
        expect(deck.map((there) => there.words.replace(/ \W?\w?$/, ''))).toContainEqual(expect.stringContaining(one));
      for (const one of ['jacket vent all', 'head up', 'level', 'head down', '×¼', '×2', 'suit valve opens earlier'])
        expect(words).toContain(one);
      expect([...deck, ...suit, ...sheet].filter(({ least }) => least < 47.9)).toEqual([]);
    },
    { viewport: { width: 360, height: 740 }, hasTouch: true },
  );
});
