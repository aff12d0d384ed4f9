import { pressureAt, underIn } from '../bench/index.ts';
import type { Answer, Prompt } from '../lesson/index.ts';

/** Depths at which the gas of the bag is sketched, metres: from the surface to the bottom of the deep tank. Chosen. */
const ALONG_M = [0, 10, 20, 40] as const;
const ASKED: Prompt = {
  kind: 'curve',
  id: 'sketch',
  question: 'The bag is neutral at 5 m. Sketch how much gas it holds at these depths, then go there and see.',
  unit: 'L',
  least: 0,
  most: 2,
  step: 0.05,
  along: ALONG_M,
  alongUnit: 'm',
};

/** Sketch, then see: the gas of the bag as somebody thinks it goes with depth. */
export class BenchSketch {
  #asked = false;
  #points: readonly (readonly [number, number])[] = [];

  /** What is asked; null unless somebody sketches. */
  get prompt(): Prompt | null {
    return this.#asked ? ASKED : null;
  }

  /** What was sketched: pressures and volumes, Pa and m³. */
  get points(): readonly (readonly [number, number])[] {
    return this.#points;
  }

  /** Begins a sketch; the one before is gone. */
  ask(): void {
    this.#asked = true;
    this.#points = [];
  }

  lock(answer: Answer): void {
    this.#asked = false;
    const litres = Array.isArray(answer) ? answer.map(Number) : [];
    this.#points = litres.map((one, i) => [pressureAt(underIn('deep'), ALONG_M[i]!), one / 1e3] as const);
  }
}
