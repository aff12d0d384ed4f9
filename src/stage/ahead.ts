import { Container, Graphics, type Text } from 'pixi.js';
import { depthToY, secondsToX, slopeOf, type Frame } from './geometry.ts';
import type { Style } from './layout.ts';
import type { StageView } from './view.ts';
import type { Taken } from './taken.ts';
import type { Box } from './words-place.ts';
import { labelOf, put } from './words.ts';

/** Speed above which the limit hair shows unasked, m/s: 3 m/min. */
const HAIR_FROM_MPS = 3 / 60;

/** What lies ahead of the chest: the tangent of the present slope, the dashed hair of the limit with its words, the dots of the forecast. */
export class Ahead {
  readonly root = new Container();
  readonly #style: Style;
  readonly #tangent = new Graphics();
  readonly #hair = new Graphics();
  readonly #limit: Text;
  readonly #dots: Graphics[] = [];
  #hairKey = '';

  constructor(style: Style) {
    this.#style = style;
    const { tokens, unit } = style;
    this.#tangent
      .moveTo(-24 * unit, 0)
      .lineTo(24 * unit, 0)
      .stroke({ width: 2 * unit, color: tokens.ink, cap: 'round' });
    this.#limit = labelOf(style, { halo: true });
    this.root.addChild(this.#hair, this.#limit, this.#tangent);
  }

  /** Dots and tangent, which stand where they must. */
  draw(view: StageView, frame: Frame, taken: Taken): void {
    const y = depthToY(frame, view.depthM);
    const slope = slopeOf(frame, view.state.speedMps);
    this.#tangent.position.set(frame.nowX, y);
    this.#tangent.rotation = Math.atan2(slope.y, slope.x);
    this.#drawDots(view, frame, taken);
  }

  /** The hair of the limit, its words beside its end where they are free. */
  drawLimit(view: StageView, frame: Frame, taken: Taken): void {
    const { unit, textPx } = this.#style;
    const y = depthToY(frame, view.depthM);
    const speed = view.state.speedMps;
    const limit = speed < 0 ? view.limits.upMps : view.limits.downMps;
    // On the ground no way leads further down.
    const stands = view.state.resting !== 0 && speed >= 0;
    // What is asked has the room before the diver: a hair through the dots of its fan would read as one more answer.
    const shown = limit !== null && !stands && !view.asked && (view.limitTaught || Math.abs(speed) > HAIR_FROM_MPS);
    this.#hair.visible = this.#limit.visible = shown;
    if (!shown) return;
    const slope = slopeOf(frame, speed < 0 ? -limit : limit);
    const length = 128 * unit;
    const key = `${slope.x} ${slope.y}`;
    if (key !== this.#hairKey) this.#buildHair(slope, length);
    this.#hairKey = key;
    this.#hair.position.set(frame.nowX, y);
    this.#limit.text = `limit ${Math.round(limit * 600) / 10} m/min`;
    const end = { x: frame.nowX + slope.x * length, y: y + slope.y * length };
    for (let at = 20 * unit; at < length - 12 * unit; at += 8 * unit) {
      const [x, middle] = [frame.nowX + slope.x * at, y + slope.y * at];
      taken.boxes.push({ left: x - 4 * unit, top: middle - 4 * unit, right: x + 4 * unit, bottom: middle + 4 * unit });
    }
    const [width, height] = [this.#limit.width, textPx * 1.3];
    const at = (left: number, top: number): Box => ({ left, top, right: left + width, bottom: top + height });
    const gap = 7 * unit;
    const past = slope.y > 0 ? end.y + gap / 2 : end.y - gap / 2 - height;
    const places = [
      at(end.x + gap, end.y - height / 2),
      at(end.x - width / 2, past),
      at(end.x - gap - width, end.y - height / 2),
    ];
    for (let back = 1; back < 5; back++) {
      const x = end.x - slope.x * back * 16 * unit;
      const middle = end.y - slope.y * back * 16 * unit;
      places.push(at(x - gap - width, middle - height / 2), at(x + gap, middle - height / 2));
    }
    const box = taken.first(places);
    this.#limit.visible = box !== undefined;
    if (!box) return;
    put(this.#limit, box.left, (box.top + box.bottom) / 2);
    taken.boxes.push(box);
  }

  #buildHair(slope: { x: number; y: number }, length: number): void {
    const { tokens, unit } = this.#style;
    const dash = 7 * unit;
    this.#hair.clear();
    for (let at = 12 * unit; at < length; at += dash * 1.7)
      this.#hair
        .moveTo(slope.x * at, slope.y * at)
        .lineTo(slope.x * Math.min(at + dash, length), slope.y * Math.min(at + dash, length));
    this.#hair.stroke({ width: 1.7 * unit, color: tokens.ink });
  }

  #drawDots({ forecastM }: StageView, frame: Frame, taken: Taken): void {
    const { unit, freePx } = this.#style;
    const count = forecastM ? forecastM.length - 1 : 0;
    for (let i = 1; i <= Math.max(count, this.#dots.length); i++) {
      const dot = (this.#dots[i - 1] ??= this.root.addChild(this.#dot(i)));
      const x = secondsToX(frame, frame.nowS + i);
      dot.visible = i <= count && x < freePx - 4 * unit;
      if (!dot.visible) continue;
      const y = depthToY(frame, forecastM![i]!);
      dot.position.set(x, y);
      const r = (i === 10 ? 6 : 5) * unit;
      taken.boxes.push({ left: x - r, top: y - r, right: x + r, bottom: y + r });
    }
  }

  #dot(second: number): Graphics {
    const { tokens, unit } = this.#style;
    const g = new Graphics();
    if (second === 10)
      return g
        .circle(0, 0, 4.6 * unit)
        .fill(tokens.paper)
        .stroke({ width: 2.2 * unit, color: tokens.ink });
    return g
      .circle(0, 0, (second === 5 ? 5 : 3.2) * unit)
      .fill(tokens.ink)
      .stroke({ width: unit, color: tokens.paper });
  }
}
