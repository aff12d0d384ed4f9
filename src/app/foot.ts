/** What stands at the foot of the water, over the picture: the strip of time, and above it the sentence of a look. */
const PIECES = [
  ['--strip', 'time-strip .strip'],
  ['--says', 'main > .says'],
] as const;
/** What lies over the picture at some other place: words keep off it. */
const CARDS = [
  '.hint > *',
  'question-sheet section',
  'start-note aside',
  'kept-note aside',
  'hilltop-card section',
  'parts-card section',
].join();
/** A hint that reaches so far across the water lies over the diver, as a share of its width. */
const OVER_DIVER = 0.6;
/** Words keep so far off a card, pixels. */
const AROUND_PX = 8;

type Box = Readonly<Record<'left' | 'top' | 'right' | 'bottom', number>>;

/** What of a page lies over the water: tells the style sheets how high the pieces at its foot are, and the picture what is covered. */
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
    const water = this.#water();
    const hint = this.#root.querySelector('.hint span')?.getBoundingClientRect();
    if (hint && hint.height > 0 && hint.right > water.left + OVER_DIVER * water.width) top = Math.min(top, hint.top);
    // Whole pixels, and rather under what covers it: a last line of water beside it would show bits of what ends there.
    return top === Infinity ? 0 : Math.floor(Math.max(0, water.bottom - top));
  }

  /** Cards over the picture, in its own pixels. */
  cards(): Box[] {
    const water = this.#water();
    return [...this.#root.querySelectorAll(CARDS)].flatMap((card) => {
      const { left, top, right, bottom, height } = card.getBoundingClientRect();
      if (height === 0) return [];
      return {
        left: left - water.left - AROUND_PX,
        top: top - water.top - AROUND_PX,
        right: right - water.left + AROUND_PX,
        bottom: bottom - water.top + AROUND_PX,
      };
    });
  }

  #water(): DOMRect {
    return this.#root.querySelector('#stage')!.getBoundingClientRect();
  }
}
