import type { Controls } from '../dive/index.ts';

/** How many presses and frames are kept, and from where on a press counts as lost, milliseconds. */
const KEPT = 60;
const LOST_MS = 500;

/**
 * Measures how long a press takes to reach the diver: from the event's own time to the end of the first ticks that knew of it; and
 * what of that is no frame's doing, because a run notes what hands do twenty times a second and a press waits for the next of these.
 */
export class Latency {
  #inputMs = NaN;
  #before: Controls | null = null;
  #frameMs = NaN;
  /** When ticks were first run after an act that they did not know of yet. */
  #readyMs = NaN;
  readonly #presses: number[] = [];
  readonly #waits: number[] = [];
  readonly #frames: number[] = [];

  constructor(view: Window) {
    for (const type of ['keydown', 'keyup', 'pointerdown', 'pointerup'] as const)
      view.addEventListener(type, (event) => this.heard(event.timeStamp), { capture: true });
  }

  /** Something was pressed or let go. */
  heard(atMs: number): void {
    this.#inputMs = atMs;
    this.#readyMs = NaN;
  }

  /** It was an act. @param controls those that the diver still follows */
  acted(controls: Controls): void {
    this.#before ??= controls;
  }

  frame(nowMs: number): void {
    if (nowMs - this.#frameMs < LOST_MS) keep(this.#frames, nowMs - this.#frameMs);
    this.#frameMs = nowMs;
  }

  /** Ticks were run. @param controls those that the diver follows now */
  ran(controls: Controls, nowMs: number): void {
    if (!this.#before) return;
    const passedMs = nowMs - this.#inputMs;
    if (controls === this.#before && passedMs < LOST_MS) {
      if (Number.isNaN(this.#readyMs)) this.#readyMs = nowMs;
      return;
    }
    if (controls !== this.#before && passedMs < LOST_MS) {
      keep(this.#presses, passedMs);
      keep(this.#waits, Number.isNaN(this.#readyMs) ? 0 : nowMs - this.#readyMs);
    }
    this.#before = null;
    this.#readyMs = NaN;
  }

  /** What was measured, as a sentence. */
  get words(): string {
    if (this.#presses.length === 0) return 'Nothing was pressed yet.';
    const sorted = ascending(this.#presses);
    const ms = (value: number) => `${Math.round(value)} ms`;
    const count = sorted.length === 1 ? '1 press' : `${sorted.length} presses`;
    return `From a press to the diver: half within ${ms(middle(sorted))}, the longest ${ms(sorted[sorted.length - 1]!)}, of ${count}. A frame takes ${ms(middle(ascending(this.#frames)))}. A run notes what hands do every 50 ms: half waited ${ms(middle(ascending(this.#waits)))} or less for that, within the same times.`;
  }
}

function keep(values: number[], value: number): void {
  values.push(value);
  if (values.length > KEPT) values.shift();
}

function ascending(values: readonly number[]): number[] {
  return [...values].sort((a, b) => a - b);
}

function middle(sorted: readonly number[]): number {
  return sorted[Math.floor(sorted.length / 2)] ?? NaN;
}
