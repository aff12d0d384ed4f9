import type { Page } from 'playwright';

/**
 * What the reference below takes at the full speed of the machine on which the demands on frames were met, milliseconds: two
 * shared cores, which run it in up to twice the time when others use them.
 */
const USUAL_MS = 3.6;

/**
 * How much slower a machine runs script now than the one on which the demands on frames were met; never less than 1. The
 * reference is script of the same kind: small objects, sums, texts. Demands in milliseconds are stretched by it, because others
 * may have the same processor at the time.
 */
export async function slowness(page: Page): Promise<number> {
  const ms = await page.evaluate(() => {
    const once = () => {
      const beganMs = performance.now();
      let sum = 0;
      const words: string[] = [];
      for (let i = 0; i < 600_000; i++) {
        const point = { x: Math.sqrt(i), y: i % 7, name: `p${i % 13}` };
        sum += point.x * point.y + point.name.length;
        if (i % 50 === 0) words.push(sum.toFixed(2));
      }
      return words.length > 0 ? performance.now() - beganMs : NaN;
    };
    const all = Array.from({ length: 25 }, once).sort((a, b) => a - b);
    return all[12]!;
  });
  return Math.max(1, ms / USUAL_MS);
}
