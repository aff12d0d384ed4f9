import { Container, Graphics } from 'pixi.js';
import { depthToY, secondsToX, type Frame } from './geometry.ts';
import type { Style } from './layout.ts';
import { Badge } from './badge.ts';
import { Plate, placesBeside } from './plate.ts';
import type { Taken } from './taken.ts';
import type { Asked, StageView } from './view.ts';
import { placesNear } from './words-place.ts';

/** Half of what a hand takes hold of, with the ring of a keyboard's focus: words stand beside it, pixels. */
const HELD_PX = 34;
/** Closer to the diver's own depth than this the lines leave his chest, metres. */
const CHEST_M = 0.05;

/** What is asked, in the water: lettered dotted lines that fan out from the chest, or a pin at the moment that is asked about. */
export class AskedFan {
  readonly root = new Container();
  readonly #style: Style;
  readonly #marks = new Graphics();
  readonly #badges: Badge[] = [];
  readonly #plate: Plate;
  readonly #from: Plate;
  readonly #when: Plate;

  constructor(style: Style) {
    this.#style = style;
    this.#plate = new Plate(style, { bold: true });
    this.#from = new Plate(style);
    this.#when = new Plate(style, { size: 0.93 });
    this.root.addChild(this.#marks, this.#from.root, this.#when.root, this.#plate.root);
  }

  draw({ asked, depthM, nowS }: StageView, frame: Frame, taken: Taken): void {
    this.root.visible = Boolean(asked);
    this.#marks.clear();
    if (!asked) return;
    for (const plate of [this.#plate, this.#from, this.#when]) plate.show(undefined);
    this.#drawLines(asked, frame, nowS, taken);
    if (Math.abs(asked.fromM - depthM) > CHEST_M) this.#drawFrom(asked, frame, taken);
    if (asked.pin) this.#drawPin(asked.pin.atM, nowS + asked.overS, asked.overS, frame, taken);
  }

  /** Where he is asked about is not where he is. */
  #drawFrom({ fromM }: Asked, frame: Frame, taken: Taken): void {
    const { tokens, unit } = this.#style;
    const [x, y] = [frame.nowX, depthToY(frame, fromM)];
    this.#marks
      .circle(x, y, 5 * unit)
      .fill(tokens.paper)
      .stroke({ width: 2.2 * unit, color: tokens.ink });
    const box = taken.first(placesBeside(x, y, 14 * unit, this.#from.say(`from ${fromM.toFixed(1)} m`)));
    this.#from.show(box);
    if (box) taken.boxes.push(box);
  }

  #drawLines({ lines, overS, chosen }: Asked, frame: Frame, nowS: number, taken: Taken): void {
    const { tokens, unit } = this.#style;
    const endX = secondsToX(frame, nowS + overS);
    const half = this.#badge(0).halfPx;
    const ends = lines.map(({ depthsM }) => depthToY(frame, depthsM[depthsM.length - 1]!));
    const ys = spread(ends, 2 * half + 3 * unit, taken.within.top + half, taken.within.bottom - half);
    const badgeX = endX + half + 13 * unit;
    lines.forEach(({ letter, depthsM }, i) => {
      const isChosen = letter === chosen;
      depthsM.forEach((depthM, dot) => {
        if (dot === 0) return;
        const x = secondsToX(frame, nowS + (overS * dot) / (depthsM.length - 1));
        const y = depthToY(frame, depthM);
        const r = (isChosen ? 5 : 3.4) * unit;
        this.#marks.circle(x, y, r).fill(tokens.ink).stroke({ width: unit, color: tokens.paper });
        taken.boxes.push({ left: x - r, top: y - r, right: x + r, bottom: y + r });
      });
      // A hair, level at both ends, to a letter that stands aside; a straight one would read as a speed.
      if (Math.abs(ys[i]! - ends[i]!) > unit)
        this.#marks
          .moveTo(endX + 5 * unit, ends[i]!)
          .lineTo(endX + 8 * unit, ends[i]!)
          .lineTo(endX + 8 * unit, ys[i]!)
          .lineTo(badgeX - half, ys[i]!)
          .stroke({ width: 1.4 * unit, color: tokens.ink });
      const badge = this.#badge(i);
      badge.draw(letter, badgeX, ys[i]!, isChosen);
      taken.boxes.push(badge.box);
    });
    for (const badge of this.#badges.slice(lines.length)) badge.root.visible = false;
  }

  /** A ring on the upright of its moment, which can be moved up and down. */
  #drawPin(pinM: number, atS: number, overS: number, frame: Frame, taken: Taken): void {
    const { tokens, unit, edgePx } = this.#style;
    const { bottom } = taken.within;
    const [x, y] = [secondsToX(frame, atS), depthToY(frame, pinM)];
    const r = 11 * unit;
    for (let at = 0; at < bottom; at += 9 * unit) {
      if (at < y - r || at > y + r) this.#marks.moveTo(x, at).lineTo(x, Math.min(at + 5 * unit, bottom));
    }
    this.#marks.stroke({ width: edgePx, color: tokens.ink });
    this.#marks
      .circle(x, y, r)
      .fill(tokens.paper)
      .stroke({ width: 3 * unit, color: tokens.ink });
    for (const way of [-1, 1])
      this.#marks
        .poly([x - 5 * unit, y + way * 2.5 * unit, x + 5 * unit, y + way * 2.5 * unit, x, y + way * 7.5 * unit])
        .fill(tokens.ink);
    taken.boxes.push({ left: x - r, top: y - r, right: x + r, bottom: y + r });
    const [wide, high] = this.#when.say(`+${overS} s`);
    const head = { left: x - wide / 2, top: 9 * unit, right: x + wide / 2, bottom: 9 * unit + high };
    this.#when.show(taken.isHit(head) ? undefined : head);
    taken.boxes.push(head);
    const size = this.#plate.say(`${pinM.toFixed(1)} m in ${overS} s`);
    const half = Math.max(r + 6 * unit, HELD_PX);
    const places = [...placesBeside(x, y, half, size), ...placesNear(x, y, ...size, taken.within, half)];
    // Left of `now` what is asked may lie over the water.
    const box = taken.first(places.filter(({ left }) => left > frame.nowX)) ?? taken.first(places);
    this.#plate.show(box);
    if (box) taken.boxes.push(box);
  }

  #badge(i: number): Badge {
    let badge = this.#badges[i];
    if (!badge) {
      badge = new Badge(this.#style);
      this.#badges.push(badge);
      this.root.addChild(badge.root);
    }
    return badge;
  }
}

/** Heights as near as may be to those that are wanted, in their order, a gap apart, within bounds. */
export function spread(wanted: readonly number[], gap: number, least: number, most: number): number[] {
  const order = wanted.map((_, i) => i).sort((a, b) => wanted[a]! - wanted[b]! || a - b);
  const out = [...wanted];
  order.forEach((i, rank) => {
    const above = rank > 0 ? out[order[rank - 1]!]! + gap : least;
    out[i] = Math.max(wanted[i]!, above);
  });
  let below = most;
  for (const i of [...order].reverse()) {
    out[i] = Math.min(out[i]!, below);
    below = out[i]! - gap;
  }
  return out;
}
