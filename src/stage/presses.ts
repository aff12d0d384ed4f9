import { Container, Graphics } from 'pixi.js';
import { TICKS_PER_S, type ControlChange } from '../dive/index.ts';
import { joined } from './figure-shape.ts';
import { depthToY, secondsToX, type Frame } from './geometry.ts';
import type { Style } from './layout.ts';
import { depthAtM } from './line.ts';
import { pressShape, pressVolumeM3, pressesOf, type Press } from './press-shape.ts';
import type { StageView } from './view.ts';

/** The picture of a press, and the frame in which it was last in sight. */
interface Mark {
  readonly g: Graphics;
  key: string;
  frame: number;
}

/** Presses stand on the line where they happened, as long as the press and as high as the litres. */
export class Presses {
  readonly root = new Container();
  readonly #style: Style;
  readonly #marks = new Map<string, Mark>();
  #presses: readonly Press[] = [];
  #last: ControlChange | undefined;
  #count = 0;
  #frames = 0;

  constructor(style: Style) {
    this.#style = style;
  }

  draw(view: StageView, frame: Frame): void {
    const last = view.changes[view.changes.length - 1];
    if (last !== this.#last || view.changes.length !== this.#count) this.#presses = pressesOf(view.changes);
    this.#last = last;
    this.#count = view.changes.length;
    this.#frames++;
    const nowTick = view.nowS * TICKS_PER_S;
    const leftTick = nowTick - (frame.nowX / frame.pxPerS + 2) * TICKS_PER_S;
    for (let i = this.#presses.length - 1; i >= 0; i--) {
      const press = this.#presses[i]!;
      if (press.fromTick >= nowTick) continue;
      if ((press.toTick ?? nowTick) < leftTick) {
        if (press.fromTick < leftTick - 60 * TICKS_PER_S) break;
        continue;
      }
      this.#mark(press, Math.min(press.toTick ?? nowTick, nowTick), view, frame);
    }
    for (const [name, { g, frame: seen }] of this.#marks) {
      if (seen === this.#frames) continue;
      g.destroy();
      this.#marks.delete(name);
    }
  }

  #mark(press: Press, toTick: number, view: StageView, frame: Frame): void {
    const name = `${press.way} ${press.fromTick}`;
    let mark = this.#marks.get(name);
    if (!mark) {
      mark = { g: this.root.addChild(new Graphics()), key: '', frame: 0 };
      this.#marks.set(name, mark);
    }
    const volumeM3 = pressVolumeM3(view.recording, press, toTick);
    const key = `${toTick} ${volumeM3} ${depthAtM(view.recording, press.fromTick / TICKS_PER_S)} ${frame.pxPerM}`;
    if (mark.key !== key) this.#build(mark.g, press, toTick, view, frame);
    mark.key = key;
    mark.frame = this.#frames;
    mark.g.position.set(secondsToX(frame, press.fromTick / TICKS_PER_S), depthToY(frame, 0));
  }

  #build(g: Graphics, press: Press, toTick: number, { recording }: StageView, frame: Frame): void {
    const { tokens, unit, linePx } = this.#style;
    const { outline, cut } = pressShape(press, toTick, recording, {
      unit,
      linePx,
      pxPerM: frame.pxPerM,
      pxPerS: frame.pxPerS,
    });
    g.clear()
      .poly([...outline])
      .fill(tokens.gas)
      .poly(joined(outline), false)
      .stroke({ width: 1.4 * unit, color: tokens.ink, join: 'round' });
    if (cut) g.poly([...cut], false).stroke({ width: 3 * unit, color: tokens.paper, join: 'round' });
  }
}
