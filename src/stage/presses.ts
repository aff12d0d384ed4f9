import { Container, Graphics } from 'pixi.js';
import { TICKS_PER_ROW, TICKS_PER_S, type ControlChange, type Controls, type Recording } from '../dive/index.ts';
import { joined } from './figure-shape.ts';
import { depthToY, isPressCut, pressHeightPx, secondsToX, type Frame } from './geometry.ts';
import type { Style } from './layout.ts';
import { depthAtM } from './line.ts';
import type { StageView } from './view.ts';

/** One press of a gas control: up for gas added, down for gas vented; `toTick` of null is still held. */
export interface Press {
  readonly way: 1 | -1;
  readonly fromTick: number;
  readonly toTick: number | null;
}

const adds = (c: Controls) => c.jacketAdd === 1 || c.suitAdd === 1 || c.oral === 1 || c.diluent === 1;
const vents = (c: Controls) => c.jacketVent !== 0 || c.suitVent === 1 || c.noseVent === 1;

/** The presses of a dive, in the order in which they began. */
export function pressesOf(changes: readonly ControlChange[]): Press[] {
  const out: Press[] = [];
  for (const [way, on] of [[1, adds] as const, [-1, vents] as const]) {
    let fromTick: number | null = null;
    for (const { tick, controls } of changes) {
      if (on(controls)) fromTick ??= tick;
      else if (fromTick !== null) {
        out.push({ way, fromTick, toTick: tick });
        fromTick = null;
      }
    }
    if (fromTick !== null) out.push({ way, fromTick, toTick: null });
  }
  return out.sort((a, b) => a.fromTick - b.fromTick);
}

/** Volume that passed during a press, m³: the recording's running sum at its end less that at its start. */
export function pressVolumeM3(recording: Recording, press: Press, toTick: number): number {
  const name = press.way === 1 ? 'letInM3' : 'letOutM3';
  const at = (row: number) => recording.at(Math.min(Math.max(row, 0), recording.rows - 1), name);
  const rowOfTick = (tick: number) => (tick - recording.startTick) / TICKS_PER_ROW;
  return at(Math.ceil(rowOfTick(toTick))) - at(Math.floor(rowOfTick(press.fromTick)));
}

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
    if (mark.key !== key) this.#build(mark.g, press, toTick, volumeM3, view, frame);
    mark.key = key;
    mark.frame = this.#frames;
    mark.g.position.set(secondsToX(frame, press.fromTick / TICKS_PER_S), depthToY(frame, 0));
  }

  #build(g: Graphics, press: Press, toTick: number, volumeM3: number, { recording }: StageView, frame: Frame): void {
    const { tokens, unit, linePx } = this.#style;
    const height = pressHeightPx(volumeM3, unit, frame.pxPerM) * press.way;
    const width = ((toTick - press.fromTick) / TICKS_PER_S) * frame.pxPerS;
    const least = Math.max(0, 6 * unit - width) / 2;
    const depthAt = (tick: number) => {
      const row = Math.round((tick - recording.startTick) / TICKS_PER_ROW);
      return recording.at(Math.min(Math.max(row, 0), recording.rows - 1), 'depthM') * frame.pxPerM;
    };
    // A short press is a block that stands on the line; a long one follows it.
    const steps = width < 18 * unit ? 0 : Math.min(16, Math.round(width / (5 * unit)));
    const slope = Math.abs(depthAt(toTick + 24) - depthAt(press.fromTick - 24)) / (width + 0.4 * frame.pxPerS);
    const lean = steps === 0 ? (slope * (width + 2 * least)) / 2 : 0;
    const gap = (lean + (linePx / 2) * Math.hypot(1, Math.min(slope, 3)) + 1.5 * unit) * press.way;
    const foot: number[] = [];
    const head: number[] = [];
    for (let i = 0; i <= Math.max(1, steps); i++) {
      const x = -least + ((width + 2 * least) * i) / Math.max(1, steps);
      const share = steps === 0 ? 0.5 : i / steps;
      const y = depthAt(press.fromTick + (toTick - press.fromTick) * share) - gap;
      foot.push(x, y);
      head.unshift(x, y - height);
    }
    const outline = [...foot, ...head];
    g.clear()
      .poly(outline)
      .fill(tokens.gas)
      .poly(joined(outline), false)
      .stroke({ width: 1.4 * unit, color: tokens.ink, join: 'round' });
    if (!isPressCut(volumeM3, unit, frame.pxPerM)) return;
    // A cut along it, out over its sides, says that the litres are more than it is high.
    const last = foot.length - 2;
    const cut = foot.map((at, i) => (i % 2 === 0 ? at : at - height * (0.5 + 0.16 * (i / last - 0.5))));
    const aside = 2 * unit;
    g.poly([cut[0]! - aside, cut[1]!, ...cut, cut[last]! + aside, cut[last + 1]!], false).stroke({
      width: 3 * unit,
      color: tokens.paper,
      join: 'round',
    });
  }
}
