import { Container, Graphics } from 'pixi.js';
import type { RecoveryMap } from '../insight/index.ts';
import { bottomOf, depthToY, type Frame } from './geometry.ts';
import type { Style } from './layout.ts';
import { areasOf, type Area } from './map-areas.ts';
import { MapAxis } from './map-axis.ts';
import { beyondOf, MapBeyond } from './map-beyond.ts';
import type { Shape } from './map-shape.ts';
import { drawTexture } from './map-texture.ts';
import { MapWords } from './map-words.ts';
import type { StageView } from './view.ts';
import type { Box } from './words-place.ts';

/** Textures are drawn so far beyond the picture, as a share of its height. */
const SPARE = 0.3;

/**
 * The recovery map: paper before the scale with the water's own depth axis, an area for the gentlest means that still works at each
 * depth, and a dot level with the diver's chest, joined to him by his hair.
 */
export class MapPanel {
  readonly root = new Container();
  readonly #style: Style;
  readonly #areas = new Graphics();
  readonly #beyond: MapBeyond;
  readonly #words: MapWords;
  readonly #axis: MapAxis;
  readonly #hair = new Graphics();
  readonly #dots: readonly [Graphics, Graphics];
  #map: RecoveryMap | undefined;
  #built: Area[] = [];
  #pxPerM = NaN;
  #lastPxPerM = NaN;
  #window: readonly [number, number] = [NaN, NaN];

  constructor(style: Style) {
    this.#style = style;
    this.#beyond = new MapBeyond(style);
    this.#words = new MapWords(style);
    this.#words.root.addChild(this.#beyond.words);
    this.#axis = new MapAxis(style);
    const { tokens, freePx, waterPx, heightPx, unit, edgePx } = style;
    const paper = new Graphics().rect(freePx, 0, waterPx - freePx, heightPx).fill(tokens.paper);
    const edge = new Graphics().moveTo(freePx, 0).lineTo(freePx, heightPx).stroke({ width: edgePx, color: tokens.ink });
    for (const [width, color] of [
      [4.5 * unit, tokens.paper],
      [1.4 * unit, tokens.ink],
    ] as const)
      this.#hair.moveTo(freePx, 0).lineTo(waterPx, 0).stroke({ width, color });
    const dot = (color: number) =>
      new Graphics()
        .circle(0, 0, 9 * unit)
        .fill(tokens.paper)
        .circle(0, 0, 5.5 * unit)
        .stroke({ width: 3.2 * unit, color });
    this.#dots = [dot(tokens.ink), dot(tokens.secondDiver)];
    this.root.addChild(paper, this.#beyond.root, this.#areas, this.#hair, this.#words.root, this.#axis.root, edge);
    this.root.addChild(this.#dots[1], this.#dots[0]);
    this.root.visible = false;
  }

  draw(view: StageView, frame: Frame): void {
    const { overlay } = view;
    const map = overlay?.kind === 'map' ? overlay.maps[0] : undefined;
    this.root.visible = map !== undefined;
    if (overlay?.kind !== 'map' || !map) return;
    const { heightPx, freePx } = this.#style;
    const toX = (value: number) => this.#toX(map, value);
    const { values } = map.across;
    this.#axis.draw(overlay.acrossWords, overlay.ticks, toX, `${values[0]} ${values[values.length - 1]}`);
    const { coveredPx = 0 } = view;
    this.#axis.root.y = -coveredPx;
    this.#fit(map, view, frame);
    this.#areas.y = depthToY(frame, 0);
    this.#areas.scale.y = frame.pxPerM / this.#pxPerM;
    this.#beyond.root.y = this.#areas.y;
    this.#beyond.root.scale.y = this.#areas.scale.y;
    const surfaceY = depthToY(frame, 0);
    const chestY = depthToY(frame, view.depthM);
    this.#hair.y = Math.round(chestY);
    this.#words.root.position.set(freePx, surfaceY);
    this.#words.root.visible = frame.pxPerM === this.#pxPerM;
    const [own, other] = view.second?.looked ? ([1, 0] as const) : ([0, 1] as const);
    this.#dot(own, toX(map.here.across), chestY);
    this.#dots[other].visible = false;
    const seen = {
      top: -surfaceY + 4 * this.#style.unit,
      bottom: heightPx - coveredPx - this.#axis.heightPx - surfaceY,
      hair: chestY - surfaceY,
      dots: this.#dotBoxes(surfaceY),
    };
    this.#words.place(overlay.words, seen, this.#beyond.place(seen));
  }

  /** Draws the areas anew for another map, for a zoom that has come to rest, or for a picture that has moved out of what is drawn. */
  #fit(map: RecoveryMap, view: StageView, frame: Frame): void {
    const { topM } = frame;
    const bottomM = bottomOf(frame);
    const rested = frame.pxPerM === this.#lastPxPerM && frame.pxPerM !== this.#pxPerM;
    this.#lastPxPerM = frame.pxPerM;
    const out = topM < this.#window[0] || bottomM > this.#window[1];
    if (map === this.#map && !rested && !out) return;
    if (map !== this.#map) this.#built = areasOf(map);
    this.#map = map;
    this.#pxPerM = frame.pxPerM;
    const spareM = (bottomM - topM) * SPARE;
    this.#window = [topM - spareM, bottomM + spareM];
    this.#build(map, view.rig.bottomM);
  }

  #build(map: RecoveryMap, bottomM: number): void {
    const { tokens, freePx, waterPx, unit } = this.#style;
    const px = this.#pxPerM;
    const shapes = this.#built.map(({ across, topsM, bottomsM }): Shape => ({
      xs: across.map((value) => this.#toX(map, value) - freePx),
      tops: topsM.map((m) => m * px),
      bottoms: bottomsM.map((m) => m * px),
    }));
    const g = this.#areas.clear();
    g.x = freePx;
    const window = [this.#window[0] * px, this.#window[1] * px] as const;
    this.#built.forEach(({ means }, i) => drawTexture(g, means, shapes[i]!, this.#style, window));
    for (const { xs, tops } of shapes) {
      g.moveTo(xs[0]!, tops[0]!);
      for (let i = 1; i < xs.length; i++) g.lineTo(xs[i]!, tops[i]!);
    }
    g.stroke({ width: 2 * unit, color: tokens.ink, join: 'round' });
    // Surface and ground go on behind the panel, thin.
    for (const y of [0, bottomM * px]) g.moveTo(0, y).lineTo(waterPx - freePx, y);
    g.stroke({ width: unit, color: tokens.secondary });
    this.#words.name(this.#built, shapes);
    this.#beyond.build(beyondOf(map, bottomM), px);
  }

  #dot(i: 0 | 1, x: number, y: number): void {
    const { freePx, waterPx, unit } = this.#style;
    const dot = this.#dots[i];
    dot.visible = true;
    // Beside the map's values the dot waits at its edge.
    dot.position.set(Math.min(Math.max(x, freePx + 6 * unit), waterPx - 6 * unit), y);
  }

  /** What the dots take, in the map's own pixels. */
  #dotBoxes(surfaceY: number): Box[] {
    const { freePx, unit } = this.#style;
    const half = 11 * unit;
    return this.#dots
      .filter(({ visible }) => visible)
      .map(({ x, y }) => ({
        left: x - freePx - half,
        top: y - surfaceY - half,
        right: x - freePx + half,
        bottom: y - surfaceY + half,
      }));
  }

  /** Place across the page of a value. */
  #toX({ across: { values } }: RecoveryMap, value: number): number {
    const { freePx, waterPx } = this.#style;
    const [from, to] = [values[0]!, values[values.length - 1]!];
    return freePx + ((value - from) / (to - from || 1)) * (waterPx - freePx);
  }
}
