import { Container, Graphics } from 'pixi.js';
import { TICKS_PER_S } from '../dive/index.ts';
import { depthToY, secondsToX, type Frame } from './geometry.ts';
import type { Style } from './layout.ts';
import { Plate } from './plate.ts';
import type { Taken } from './taken.ts';
import type { StageView } from './view.ts';
import { crosses, type Box } from './words-place.ts';

/** Steps between ticks that read well, seconds. */
const STEPS_S = [5, 10, 20, 30, 60, 120, 300, 600];

/**
 * Ticks along the top edge. What was written scrolls with the paper and bears the dive's own time, which stays with it; ahead, where
 * nothing is written yet, they stand still and say how long from now. `now`, solid when the dive is frozen. Words stand on plates, off
 * the diver, his arrow and the line ahead.
 */
export class TimeTicks {
  readonly root = new Container();
  readonly nowLine = new Container();
  readonly #style: Style;
  readonly #ticks: { mark: Graphics; label: Plate }[] = [];
  readonly #nowLabel: Plate;
  readonly #solid = new Graphics();
  #beside = false;

  constructor(style: Style) {
    this.#style = style;
    const { tokens, nowX, unit, edgePx, heightPx } = style;
    this.#nowLabel = new Plate(style, { bold: true, size: 0.93 });
    const tick = new Graphics()
      .moveTo(nowX, 0)
      .lineTo(nowX, 8 * unit)
      .stroke({ width: edgePx, color: tokens.ink });
    this.#solid.moveTo(nowX, 0).lineTo(nowX, heightPx).stroke({ width: edgePx, color: tokens.ink });
    this.nowLine.addChild(this.#solid);
    this.root.addChild(tick, this.#nowLabel.root);
  }

  draw(view: StageView, frame: Frame, taken: Taken): void {
    this.#solid.visible = view.frozen;
    const { freePx, textPx, narrow, unit } = this.#style;
    const room = textPx * (narrow ? 5.5 : 8);
    const stepS = STEPS_S.find((s) => s * frame.pxPerS >= room) ?? 1200;
    // Words stand in the air or under the surface, never across it.
    const surfaceY = depthToY(frame, 0);
    const crossed = surfaceY > 0 && surfaceY < 9 * unit + textPx * 1.35;
    const top = crossed ? surfaceY + 3 * unit : 9 * unit;
    this.#drawNow(frame, top, taken);
    const startS = view.recording.startTick / TICKS_PER_S;
    const leftS = Math.max(startS, view.nowS - frame.nowX / frame.pxPerS);
    const moments: number[] = [];
    for (let s = Math.ceil(leftS / stepS) * stepS; s < view.nowS; s += stepS) moments.push(s);
    for (let s = view.nowS + stepS; secondsToX(frame, s) < freePx - textPx; s += stepS) moments.push(s);
    let used = 0;
    for (const s of moments) {
      const x = secondsToX(frame, s);
      const { mark, label } = this.#tick(used++);
      mark.visible = true;
      mark.x = x;
      // Near `now` a tick keeps quiet, and so does one whose words would be cut at the edge.
      label.show(undefined);
      if (!(Math.abs(x - frame.nowX) > textPx * 3.4 && x > textPx * 1.7 && x < freePx - textPx * 1.8)) continue;
      const box = under(x, top, label.say(s > view.nowS ? `+${Math.round(s - view.nowS)} s` : clockText(s)));
      if (taken.isHit(box)) continue;
      label.show(box);
      taken.boxes.push(box);
    }
    for (const { mark, label } of this.#ticks.slice(used)) {
      mark.visible = false;
      label.show(undefined);
    }
  }

  /** At the head of its line; where the diver, his arrow or a dot is at the head, beside them. */
  #drawNow({ nowX }: Frame, top: number, taken: Taken): void {
    const { unit } = this.#style;
    const size = this.#nowLabel.say('now');
    let box = under(nowX, top, size);
    // A diver who bobs at that height must not send it to and fro.
    const bottom = box.bottom + (this.#beside ? 14 : 1) * unit;
    const inTheWay = () => taken.boxes.find((other) => crosses({ ...box, bottom }, other));
    let other = inTheWay();
    this.#beside = other !== undefined;
    for (let i = 0; other && i < 4; i++) {
      box = under(other.left - size[0] / 2 - 4 * unit, top, size);
      other = inTheWay();
    }
    this.#nowLabel.show(box);
    taken.boxes.push(box);
  }

  #tick(i: number): { mark: Graphics; label: Plate } {
    const { tokens, unit, edgePx } = this.#style;
    let tick = this.#ticks[i];
    if (!tick) {
      const mark = new Graphics()
        .moveTo(0, 0)
        .lineTo(0, 7 * unit)
        .stroke({ width: edgePx * 0.8, color: tokens.secondary });
      tick = { mark, label: new Plate(this.#style, { colour: tokens.secondary, size: 0.93 }) };
      this.#ticks.push(tick);
      this.root.addChild(tick.mark, tick.label.root);
    }
    return tick;
  }
}

/** A moment of the dive in whole seconds: "1:20". */
function clockText(s: number): string {
  return `${Math.floor(s / 60)}:${String(Math.round(s % 60)).padStart(2, '0')}`;
}

/** A box of some size below a point, its middle at x. */
function under(x: number, top: number, [width, height]: readonly [number, number]): Box {
  return { left: x - width / 2, top, right: x + width / 2, bottom: top + height };
}
