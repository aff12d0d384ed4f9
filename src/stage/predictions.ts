import type { Container } from 'pixi.js';
import { AskedFan } from './asked-fan.ts';
import type { Frame } from './geometry.ts';
import type { Style } from './layout.ts';
import { SaidFlags } from './said-flags.ts';
import type { Taken } from './taken.ts';
import type { StageView } from './view.ts';

/** What is predicted, in the water: what is asked while it stands, and what was said once it is locked. Loaded with the first of it. */
export class Predictions {
  readonly #asked: AskedFan;
  readonly #said: SaidFlags;

  /** Adds its pictures on top of a scene. */
  constructor(style: Style, scene: Container) {
    this.#asked = new AskedFan(style);
    this.#said = new SaidFlags(style);
    scene.addChild(this.#said.root, this.#asked.root);
  }

  draw(view: StageView, frame: Frame, taken: Taken): void {
    this.#asked.draw(view, frame, taken);
    this.#said.draw(view, frame, taken);
  }
}
