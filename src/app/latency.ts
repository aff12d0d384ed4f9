import type { Controls } from '../dive/index.ts';

/** How many presses and frames are kept, and from where on a press counts as lost, milliseconds. */
const KEPT = 60;
const LOST_MS = 500;

/** Measures how long a press takes to reach the diver: from the event's own time to the end of the first ticks that knew of it. */
export class Latency {
  #inputMs = NaN;
  #before: Controls | null = null;
  #frameMs = NaN;
  readonly #presses: number[] = [];
  readonly #frames: number[] = [];

  constructor(view: Window) {
    for (const type of ['keydown', 'keyup', 'pointerdown', 'pointerup'] as const)
      view.addEventListener(type, (event) => this.heard(event.timeStamp), { capture: true });
  }

  /** Something was pressed or let go. */
  heard(atMs: number): void {
    this.#inputMs = atMs;
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
    if (controls === this.#before && passedMs < LOST_MS) return;
    if (controls !== this.#before && passedMs < LOST_MS) keep(this.#presses, passedMs);
    this.#before = null;
  }

  /** What was measured, as a sentence. */
  get words(): string {
    if (this.#presses.length === 0) return 'Nothing was pressed yet.';
    const sorted = ascending(this.#presses);
    const ms = (value: number) => `${Math.round(value)} ms`;
    const count = sorted.length === 1 ? '1 press' : `${sorted.length} presses`;
    return `From a press to the diver: half within ${ms(middle(sorted))}, the longest ${ms(sorted[sorted.length - 1]!)}, of ${count}. A frame takes ${ms(middle(ascending(this.#frames)))}.`;
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
