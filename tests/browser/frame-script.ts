import type { Page } from 'playwright';

interface TraceEvent {
  readonly name: string;
  /** Begin and length on the clock, and length on the thread's own, µs. */
  readonly ts: number;
  readonly dur?: number;
  readonly tdur?: number;
}

/** Callbacks that follow each other within this, µs, belong to one frame. */
const SAME_FRAME_US = 1000;

/**
 * Script of each frame over so many milliseconds, ascending, in milliseconds of the page's own thread: time in which the
 * machine did other work does not count.
 */
export async function frameScriptMs(page: Page, ms: number): Promise<number[]> {
  const browser = page.context().browser()!;
  await browser.startTracing(page, { categories: ['devtools.timeline'] });
  await page.waitForTimeout(ms);
  const { traceEvents } = JSON.parse((await browser.stopTracing()).toString()) as { traceEvents: TraceEvent[] };
  const frames: number[] = [];
  let endUs = -Infinity;
  // A callback in which the watching ended has no length: its frame was not seen whole.
  for (const { ts, dur = NaN, tdur = NaN } of traceEvents
    .filter(({ name, tdur: lengthUs }) => name === 'FireAnimationFrame' && lengthUs !== undefined)
    .sort((a, b) => a.ts - b.ts)) {
    if (ts - endUs < SAME_FRAME_US) frames[frames.length - 1]! += tdur / 1e3;
    else frames.push(tdur / 1e3);
    endUs = ts + dur;
  }
  return frames.sort((a, b) => a - b);
}
