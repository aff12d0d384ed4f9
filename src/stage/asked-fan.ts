import { Container, Graphics } from 'pixi.js';
import { depthToY, secondsToX, type Frame } from './geometry.ts';
import type { Style } from './layout.ts';
import { AskedPin } from './asked-pin.ts';
import { AskedSlope } from './asked-slope.ts';
import { Badge } from './badge.ts';
import { Plate, placesBeside } from './plate.ts';
import type { Taken } from './taken.ts';
import type { Asked, StageView } from './view.ts';

/** Closer to the diver's own depth than this the lines leave his chest, metres. */
const CHEST_M = 0.05;

/** What is asked, in the water: lettered dotted lines that fan out from the chest, a pin, or a slope. */
export class AskedFan {
  readonly root = new Container();
  readonly #style: Style;
  readonly #marks = new Graphics();
  readonly #badges: Badge[] = [];
  readonly #from: Plate;
  readonly #pin: AskedPin;
  readonly #slope: AskedSlope;

  constructor(style: Style) {
    this.#style = style;
    this.#from = new Plate(style);
    this.#pin = new AskedPin(style);
    this.#slope = new AskedSlope(style);
    this.root.addChild(this.#slope.root, this.#marks, this.#pin.root, this.#from.root);
  }

  draw({ asked, depthM, nowS }: StageView, frame: Frame, taken: Taken): void {
    this.root.visible = Boolean(asked);
    this.#marks.clear();
    if (!asked) return;
    this.#from.show(undefined);
    this.#drawLines(asked, frame, nowS, taken);
    // The pin stands where it must, whoever is asked about.
    this.#pin.draw(asked, nowS, frame, taken);
    this.#slope.draw(asked, frame, taken);
    if (Math.abs(asked.fromM - depthM) > CHEST_M) this.#drawFrom(asked, frame, taken);
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
    for (const badge of this.#badges.slice(lines.length)) badge.root.visible = false;
    if (lines.length === 0 || overS === null) return;
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
