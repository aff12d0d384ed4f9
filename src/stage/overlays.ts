import type { Container } from 'pixi.js';
import { BranchLines } from './branch-lines.ts';
import { BreathReach } from './breath-reach.ts';
import { FootBars } from './foot-bars.ts';
import { ForceColumn } from './force-column.ts';
import type { Frame } from './geometry.ts';
import type { Style } from './layout.ts';
import { Ledges } from './ledges.ts';
import { MapPanel } from './map-panel.ts';
import { NeutralSigns } from './neutral-signs.ts';
import { SecondDiver } from './second-diver.ts';
import { lookedAt } from './second-looked.ts';
import type { Taken } from './taken.ts';
import type { StageView } from './view.ts';

/** Of a scene's pictures so many lie under the other lines: water, specks, bands, hair and now-line. */
const UNDER = 5;

/** What insight puts over the water and on the scale, and other lines. Loaded when a view first has some of it. */
export class Overlays {
  readonly #map: MapPanel;
  readonly #ledges: Ledges;
  readonly #forces: ForceColumn;
  readonly #neutral: NeutralSigns;
  readonly #reach: BreathReach;
  readonly #branches: BranchLines;
  readonly #bars: FootBars;
  readonly #second: SecondDiver;

  /** Adds its pictures on top of a scene. */
  constructor(style: Style, scene: Container) {
    this.#map = new MapPanel(style);
    this.#ledges = new Ledges(style);
    this.#forces = new ForceColumn(style);
    this.#neutral = new NeutralSigns(style);
    this.#reach = new BreathReach(style);
    this.#branches = new BranchLines(style);
    this.#bars = new FootBars(style);
    this.#second = new SecondDiver(style);
    scene.addChildAt(this.#second.root, UNDER);
    scene.addChildAt(this.#branches.root, UNDER);
    scene.addChild(this.#branches.signs, this.#second.signs);
    scene.addChild(this.#bars.root);
    for (const { root } of [this.#map, this.#forces, this.#ledges, this.#neutral, this.#reach]) scene.addChild(root);
  }

  /** What stands where it must, before all words: the second diver, and the bracket to him. */
  stand(view: StageView, frame: Frame, taken: Taken): void {
    this.#second.stand(view, frame, taken);
  }

  /** Signs before words, words that are tied to a place before those that can move. */
  draw(view: StageView, frame: Frame, taken: Taken): void {
    const about = lookedAt(view);
    this.#map.draw(about, frame);
    this.#bars.draw(about);
    this.#second.draw(view, frame, taken);
    this.#neutral.draw(about, frame, taken, view.overlay?.kind === 'forces');
    this.#reach.draw(about, frame, taken);
    this.#forces.draw(about, frame, taken);
    this.#ledges.draw(about, frame, taken);
    this.#branches.draw(view, frame, taken);
  }
}
