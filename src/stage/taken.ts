import { crosses, isFree, type Box, type Obstacles } from './words-place.ts';

/** What stands on the page in this frame already, so that words keep off it. Filled in the order of importance, emptied each frame. */
export class Taken implements Obstacles {
  readonly boxes: Box[] = [];
  readonly lines: { readonly y: number; readonly fromX: number }[] = [];
  readonly #whole: Box;
  within: Box;

  constructor(within: Box) {
    this.#whole = this.within = within;
  }

  /** @param coveredPx height at the foot that is covered */
  clear(coveredPx = 0): void {
    this.within = { ...this.#whole, bottom: this.#whole.bottom - coveredPx };
    this.boxes.length = 0;
    this.lines.length = 0;
  }

  /** Whether words may stand there. */
  isFree(box: Box): boolean {
    return isFree(box, this);
  }

  /** Whether a box touches another, lines aside. */
  isHit(box: Box): boolean {
    return this.boxes.some((other) => crosses(box, other));
  }

  /** The first of some places that is free, or undefined. */
  first(places: readonly Box[]): Box | undefined {
    return places.find((box) => this.isFree(box));
  }
}
