import type { Container } from 'pixi.js';
import { DoingsLayer } from './doings-layer.ts';
import type { Frame } from './geometry.ts';
import type { Style } from './layout.ts';
import { Silt } from './silt.ts';
import type { Taken } from './taken.ts';
import type { StageView } from './view.ts';
import type { Box } from './words-place.ts';

/** Where a scene takes what happens: before the diver, and words over all. */
export interface HappeningsPlaces {
  readonly before: Container;
  readonly words: Container;
}

/** What happens on a dive beside its line: silt, gas that moves. Loaded once something has begun to happen. */
export class Happenings {
  readonly #silt: Silt;
  readonly #doings: DoingsLayer;

  constructor(style: Style, { before, words }: HappeningsPlaces) {
    this.#silt = new Silt(style);
    this.#doings = new DoingsLayer(style);
    before.addChild(this.#doings.root, this.#silt.root);
    words.addChild(this.#doings.words.root);
  }

  /** @param figure the part of the page that the diver takes */
  draw(view: StageView, frame: Frame, figure: Box, taken: Taken): void {
    this.#silt.draw(view, frame);
    this.#doings.draw(view, frame, figure, taken);
  }
}
