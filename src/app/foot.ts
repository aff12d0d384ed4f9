/** What stands at the foot of the water, over the picture: the strip of time, and above it the sentence of a look. */
const PIECES = [
  ['--strip', 'time-strip .strip'],
  ['--says', 'main > .says'],
] as const;

/** The foot of the water of a page: tells the style sheets how high its pieces are, and the picture what of it they cover. */
export class Foot {
  readonly #root: HTMLElement;
  readonly #told = new Map<string, number>();

  constructor(root: HTMLElement) {
    this.#root = root;
  }

  /** Height of the picture's foot that is covered, CSS pixels. */
  coveredPx(): number {
    let top = Infinity;
    for (const [name, selector] of PIECES) {
      const box = this.#root.querySelector(selector)?.getBoundingClientRect();
      const high = box?.height ?? 0;
      if (high !== this.#told.get(name)) this.#root.style.setProperty(name, `${high}px`);
      this.#told.set(name, high);
      if (box && high > 0) top = Math.min(top, box.top);
    }
    if (top === Infinity) return 0;
    return Math.max(0, this.#root.querySelector('#stage')!.getBoundingClientRect().bottom - top);
  }
}
