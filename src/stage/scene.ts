import { Container } from 'pixi.js';
import { Ahead } from './ahead.ts';
import { ForceArrow } from './arrow.ts';
import { Bands } from './bands.ts';
import { Bubbles } from './bubbles.ts';
import { Diver } from './diver.ts';
import { ForecastWords } from './forecast-words.ts';
import { depthToY, type Frame } from './geometry.ts';
import type { Style } from './layout.ts';
import { Marks } from './marks.ts';
import type { Happenings } from './happenings.ts';
import type { LooseLead } from './loose-lead.ts';
import type { Overlays } from './overlays.ts';
import type { Predictions } from './predictions.ts';
import { Presses } from './presses.ts';
import { Scale } from './scale.ts';
import { Specks } from './specks.ts';
import { Taken } from './taken.ts';
import { TimeTicks } from './time-ticks.ts';
import { Track } from './track.ts';
import type { StageView } from './view.ts';
import { Water } from './water.ts';

/** Parts of a scene that are loaded when a view first has some of them: over the water, in it, lead that was let go, and predictions. */
export interface SceneParts {
  readonly Overlays?: typeof Overlays;
  readonly Happenings?: typeof Happenings;
  readonly LooseLead?: typeof LooseLead;
  readonly Predictions?: typeof Predictions;
}

/** All that is drawn in one style, back to front. */
export class Scene {
  readonly root = new Container();
  readonly style: Style;
  readonly #bands: Bands;
  readonly #ahead: Ahead;
  readonly #words: ForecastWords;
  readonly #diver: Diver;
  readonly #ticks: TimeTicks;
  readonly #arrow: ForceArrow;
  readonly #marks: Marks;
  readonly #taken: Taken;
  readonly #over: Overlays | undefined;
  readonly #happenings: Happenings | undefined;
  readonly #lead: LooseLead | undefined;
  readonly #predictions: Predictions | undefined;
  readonly #layers: readonly { draw(view: StageView, frame: Frame): void }[];

  constructor(style: Style, parts: SceneParts) {
    this.style = style;
    const water = new Water(style);
    const specks = new Specks(style);
    const ticks = (this.#ticks = new TimeTicks(style));
    const scale = new Scale(style);
    const presses = new Presses(style);
    const track = new Track(style);
    const marks = (this.#marks = new Marks(style));
    const bubbles = new Bubbles(style);
    const diver = (this.#diver = new Diver(style));
    this.#arrow = new ForceArrow(style);
    this.#bands = new Bands(style);
    this.#ahead = new Ahead(style);
    this.#words = new ForecastWords(style);
    this.#layers = [water, specks, scale, presses, track, bubbles, diver];
    const { unit, textPx, freePx, heightPx } = style;
    const edge = 5 * unit;
    this.#taken = new Taken({
      left: edge,
      top: textPx * 2.2,
      right: freePx - edge,
      bottom: heightPx - edge - (style.bars > 0 ? style.footPx : 0),
    });
    this.root.addChild(water.root, specks.root, this.#bands.root, scale.hair, ticks.nowLine);
    const places = { behind: new Container(), before: new Container(), words: new Container() };
    this.root.addChild(places.behind, bubbles.root, diver.root, places.before, water.surface, water.ground);
    this.root.addChild(
      presses.root,
      track.root,
      this.#arrow.root,
      this.#words.root,
      this.#ahead.root,
      diver.mark,
      marks.root,
    );
    this.root.addChild(places.words, ticks.root, diver.enlarged.root, scale.root);
    this.#happenings = parts.Happenings && new parts.Happenings(style, places);
    this.#lead = parts.LooseLead && new parts.LooseLead(style);
    if (this.#lead) places.behind.addChild(this.#lead.root);
    this.#predictions = parts.Predictions && new parts.Predictions(style, this.root);
    this.#over = parts.Overlays && new parts.Overlays(style, this.root);
  }

  draw(view: StageView, frame: Frame): void {
    for (const layer of this.#layers) layer.draw(view, frame);
    const taken = this.#taken;
    taken.clear(view.coveredPx);
    // In this order: what stands where it must, then words, the ones that can move least first.
    const diver = this.#diver.boxOf(view, frame);
    taken.boxes.push(diver, ...(view.cards ?? []));
    taken.lines.push({ y: depthToY(frame, view.depthM), fromX: frame.nowX }, { y: depthToY(frame, 0), fromX: 0 });
    taken.lines.push({ y: depthToY(frame, view.rig.bottomM), fromX: 0 });
    this.#over?.stand(view, frame, taken);
    this.#arrow.draw(view, frame, taken);
    this.#ahead.draw(view, frame, taken);
    this.#ticks.draw(view, frame, taken);
    this.#diver.drawSays(frame, taken);
    this.#lead?.draw(view, frame);
    this.#marks.drawEvents(view, frame, taken);
    this.#happenings?.draw(view, frame, diver, taken);
    this.#predictions?.draw(view, frame, taken);
    this.#bands.draw(view, frame, taken);
    this.#marks.draw(view, frame, taken);
    this.#over?.draw(view, frame, taken);
    this.#ahead.drawLimit(view, frame, taken);
    this.#words.draw(view, frame, taken);
  }

  destroy(): void {
    this.root.destroy({ children: true });
  }
}
