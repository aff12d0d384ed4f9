import type { Page } from 'playwright';
import { expect, test } from 'vitest';
import { useChromium } from './chromium.ts';
import { pass } from './made-time.ts';

const visit = useChromium();

const SIZES = [
  { width: 1280, height: 720 },
  { width: 1920, height: 1080 },
  { width: 1024, height: 768 },
  { width: 360, height: 740 },
] as const;

const press =
  (...names: readonly string[]) =>
  async (page: Page) => {
    for (const name of names) await page.getByRole('button', { name, exact: true }).click();
  };
const times = (count: number, name: string) => Array.from({ length: count }, () => name);

/** What stands on the bench, by its address and what is pressed then, each on from the one before it at the same address. */
const SCENES: readonly (readonly [what: string, hash: string, act: (page: Page) => Promise<void>])[] = [
  ['the lump in hand', '#/bench', press()],
  ['the lump sunk', '#/bench', press('let go')],
  ['the tray afloat', '#/bench', press('tray')],
  ['five stones held', '#/bench', press('five stones')],
  ['five stones let go', '#/bench', press('let go')],
  ['ten stuffs', '#/bench', press('ten stuffs')],
  ['ten stuffs, lead chosen', '#/bench', press('let go', 'block of lead')],
  ['the stone weighed in air', '#/bench', press('an odd stone', 'spring balance')],
  ['the stone weighed in water, the spout open', '#/bench', press('spout and glass', ...times(9, 'lower'))],
  ['the stone weighed as high as it goes', '#/bench', press(...times(16, 'raise'))],
  ['the block afloat', '#/bench', press('spring balance', 'a block', 'let go')],
  ['the deep tank', '#/bench/deep', press()],
  ['at 2 m, sketched before', '#/bench/deep', press('begin anew', 'sketch the curve first', 'lock it', 'to 2 m')],
  ['let go at 2 m', '#/bench/deep', press('let go')],
  ['the bottle', '#/bench/bottle', press()],
  ['the bottle squeezed', '#/bench/bottle', press(...times(9, 'squeeze more'))],
  ['five stones asked about', '#/lessons/five-stones', press('go on')],
  ['a block asked about', '#/lessons/two-waters', press('go on')],
  ['the bottle asked about', '#/lessons/bottle-diver', press('go on')],
];

/** Words of the picture that are too small, cut off, or stand over one another. */
function faults(): string[] {
  const picture = document.querySelector('bench-sheet svg')!;
  const room = picture.getBoundingClientRect();
  const texts = [...picture.querySelectorAll('text')].map((one) => ({
    words: one.textContent.trim(),
    box: one.getBoundingClientRect(),
    px: parseFloat(getComputedStyle(one).fontSize) * Math.hypot(one.getScreenCTM()!.a, one.getScreenCTM()!.b),
  }));
  const found = texts.length > 0 ? [] : ['no words at all'];
  for (const [i, { words, box, px }] of texts.entries()) {
    if (px < 16) found.push(`${words}: ${px} px`);
    const out = Math.max(room.left - box.left, box.right - room.right, room.top - box.top, box.bottom - room.bottom);
    if (out > 1) found.push(`${words}: ${out.toFixed(0)} px outside`);
    for (const other of texts.slice(i + 1)) {
      const wide = Math.min(box.right, other.box.right) - Math.max(box.left, other.box.left);
      const high = Math.min(box.bottom, other.box.bottom) - Math.max(box.top, other.box.top);
      if (wide > 1 && high > 1) found.push(`${words} over ${other.words}`);
    }
  }
  return found;
}

/** Names that every thing among others must have in the picture. */
const NAMES: Readonly<Record<string, readonly string[]>> = {
  'five stones held': ['300 g', '450 g', '499 g', '560 g', '1.3 kg'],
  'ten stuffs': ['cork', 'pine', 'ice', 'beeswax', 'polystyrene', 'rubber', 'glass', 'aluminium', 'steel', 'lead'],
};

test('in every scene, at every size: words are 16 px or more, none is cut off, none stands over another; what lies among others has its name', async () => {
  await visit(
    './#/bench',
    async (page) => {
      const found: string[] = [];
      let here = '#/bench';
      await page.waitForSelector('bench-sheet svg');
      for (const [what, hash, act] of SCENES) {
        if (hash !== here) {
          here = hash;
          await page.goto(`./${hash}`);
          await page.waitForSelector(hash.includes('lessons') ? 'question-sheet h2' : 'bench-sheet svg');
        }
        await act(page);
        await pass(page, 2, 100);
        for (const size of SIZES) {
          await page.setViewportSize(size);
          await page.evaluate(() => new Promise((done) => setTimeout(done, 40)));
          await pass(page, 0.1, 100);
          for (const fault of await page.evaluate(faults)) found.push(`${what}, ${size.width} px wide: ${fault}`);
          const words = (await page.locator('bench-sheet svg text').allTextContents()).map((one) => one.trim());
          for (const name of NAMES[what] ?? [])
            if (!words.includes(name)) found.push(`${what}, ${size.width}: no ${name}`);
          if ((await page.locator('.dial input').count()) > 0) {
            const wide = await page
              .locator('.dial input')
              .first()
              .evaluate((one) => one.clientWidth);
            if (wide < 200) found.push(`${what}, ${size.width} px wide: a slider of ${wide} px`);
          }
        }
        await page.setViewportSize(SIZES[0]);
      }
      expect(found).toEqual([]);
    },
    { viewport: SIZES[0], madeTime: true },
  );
});
