import type { Page } from 'playwright';

/** What a page with made time offers to a test. */
interface Maker {
  passTime(seconds: number, frameMs: number): Promise<number[]>;
}

/**
 * Runs in the page before anything of ours. From the first `pass` on, frames come and the page's clock moves only when a
 * test says so: a dive is flown as fast as the machine can, and the same on every machine. Timers and the date stay those
 * of the world.
 */
export function makeTime(): void {
  const worldMs = performance.now.bind(performance);
  const inWorld = globalThis.requestAnimationFrame.bind(globalThis);
  let madeMs: number | null = null;
  let last = 0;
  const waiting = new Map<number, FrameRequestCallback>();
  performance.now = () => madeMs ?? worldMs();
  globalThis.requestAnimationFrame = (callback) => {
    waiting.set(++last, callback);
    return last;
  };
  globalThis.cancelAnimationFrame = (frame) => void waiting.delete(frame);
  const frame = (nowMs: number) => {
    const due = [...waiting.values()];
    waiting.clear();
    for (const callback of due) callback(nowMs);
  };
  const untilMade = (nowMs: number) => {
    if (madeMs !== null) return;
    frame(nowMs);
    inWorld(untilMade);
  };
  inWorld(untilMade);
  const { port1, port2 } = new MessageChannel();
  const turn = () =>
    new Promise((done) => {
      port1.onmessage = done;
      port2.postMessage(null);
    });
  const maker: Maker = {
    async passTime(seconds, frameMs) {
      madeMs ??= worldMs();
      const endMs = madeMs + seconds * 1000;
      const tookMs: number[] = [];
      for (let frames = 1; madeMs < endMs - 1e-6; frames++) {
        const beganMs = worldMs();
        frame((madeMs += frameMs));
        // Promises come true between two frames. Everything else waits: each turn, the browser paints what nobody sees.
        await null;
        tookMs.push(worldMs() - beganMs);
        if (frames % 40 === 0) await turn();
      }
      await turn();
      return tookMs;
    },
  };
  Object.assign(globalThis, maker);
}

/** Lets time pass on a page visited with `madeTime`, in frames of so many milliseconds; returns what script of each took, ms. */
export const pass = (page: Page, seconds: number, frameMs = 50): Promise<number[]> =>
  page.evaluate(([seconds, frameMs]) => (globalThis as unknown as Maker).passTime(seconds, frameMs), [
    seconds,
    frameMs,
  ] as const);
