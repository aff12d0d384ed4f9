import { Container } from 'pixi.js';
import { Diver } from './diver.ts';
import type { Frame } from './geometry.ts';
import type { Style } from './layout.ts';
import { Scale } from './scale.ts';
import { Track } from './track.ts';
import type { StageView } from './view.ts';
import { Water } from './water.ts';

/** All that is drawn in one style, back to front. */
export class Scene {
  readonly root = new Container();
  readonly style: Style;
  readonly #layers: readonly { draw(view: StageView, frame: Frame): void }[];

  constructor(style: Style) {
    this.style = style;
    const water = new Water(style);
    const scale = new Scale(style);
    const track = new Track(style);
    const diver = new Diver(style);
    this.#layers = [water, scale, track, diver];
    this.root.addChild(water.root, scale.hair, diver.sinking, diver.root, track.root, diver.mark, scale.root);
  }

  draw(view: StageView, frame: Frame): void {
    for (const layer of this.#layers) layer.draw(view, frame);
  }

  destroy(): void {
    this.root.destroy({ children: true });
  }
}
