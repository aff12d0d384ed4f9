import { Container, Graphics, type Text } from 'pixi.js';
import { TICKS_PER_S } from '../dive/index.ts';
import { eventWords, inOneGo } from './event-words.ts';
import { depthToY, secondsToX, type Frame } from './geometry.ts';
import type { Style } from './layout.ts';
import { depthAtM } from './line.ts';
import type { Taken } from './taken.ts';
import type { StageView } from './view.ts';
import { crosses, type Box } from './words-place.ts';
import { labelOf, put } from './words.ts';

interface Slot {
  readonly g: Graphics;
  readonly words: Text;
}

/** What stands on the line or beside it: events, numbered rings of the debrief. */
export class Marks {
  readonly root = new Container();
  readonly #style: Style;
  readonly #rings: Slot[] = [];
  readonly #events: Slot[] = [];
  readonly #told: Slot[] = [];

  constructor(style: Style) {
    this.#style = style;
  }

  draw(view: StageView, frame: Frame, taken: Taken): void {
    this.#drawRings(view, frame, taken);
    this.#drawTold(view, frame, taken);
  }

  #drawRings({ rings, recording }: StageView, frame: Frame, taken: Taken): void {
    let used = 0;
    for (const { atS, number } of rings) {
      const x = secondsToX(frame, atS);
      if (x < -20 || x > frame.waterPx) continue;
      const slot = this.#slot(this.#rings, used++, (g) => this.#ring(g), true);
      const y = depthToY(frame, depthAtM(recording, atS));
      slot.g.position.set(x, y);
      slot.words.text = String(number);
      slot.words.anchor.set(0.5);
      put(slot.words, x, y);
      const r = this.#style.textPx * 0.9;
      taken.boxes.push({ left: x - r, top: y - r, right: x + r, bottom: y + r });
    }
    hide(this.#rings, used);
  }

  /** What happened stands where it happened: words that can move give way to it. */
  drawEvents({ events, recording, nowS, rig: { bottomM } }: StageView, frame: Frame, taken: Taken): void {
    const { unit, textPx } = this.#style;
    let used = 0;
    let lastX = Infinity;
    let last: Text | undefined;
    const said: Box[] = [];
    for (let i = events.length - 1; i >= 0 && used < 8; i--) {
      const atS = events[i]!.tick / TICKS_PER_S;
      const x = secondsToX(frame, atS);
      if (x < -100) break;
      const words = eventWords(inOneGo(events, i));
      // Contact and squeezes come in bursts: the latest of a burst speaks for it.
      if (words === undefined || atS > nowS || lastX - x < 40 * unit) continue;
      // The same words once more would lie on themselves.
      if (last?.text === words && lastX - x < last.width + 6 * unit) continue;
      lastX = x;
      const slot = this.#slot(this.#events, used++, (g) => this.#pin(g), false);
      last = slot.words;
      const y = depthToY(frame, depthAtM(recording, atS));
      slot.g.position.set(x, y);
      slot.words.text = words;
      const onGround = events[i]!.kind === 'bottom-touched';
      let below = onGround ? depthToY(frame, bottomM) + textPx : y + 19 * unit + textPx * 0.3;
      const { width } = slot.words;
      // Where the line comes up from below, words to its left would lie on it.
      const fromS = Math.max(atS - width / frame.pxPerS, recording.startTick / TICKS_PER_S);
      const left = !onGround && depthToY(frame, depthAtM(recording, fromS)) > y + 6 * unit ? x + 2 * unit : x - width;
      const half = textPx * 0.65;
      const box = (): Box => ({ left, top: below - half, right: left + width, bottom: below + half });
      // A line lower than those of a later one on which they would lie.
      while (said.some((one) => crosses(one, box()))) below += 2 * half;
      slot.words.anchor.set(left > x ? 0 : 1, 0.5);
      put(slot.words, left > x ? left : x - 2 * unit, below);
      said.push(box());
      taken.boxes.push(box());
    }
    hide(this.#events, used);
  }

  /** Above the line, where events stand below it. */
  #drawTold({ told, recording, nowS }: StageView, frame: Frame, taken: Taken): void {
    const { unit, textPx } = this.#style;
    let used = 0;
    for (const { atS, words } of told ?? []) {
      const x = secondsToX(frame, atS);
      if (x < -100 || atS > nowS) continue;
      const slot = this.#slot(this.#told, used++, (g) => this.#pin(g), false);
      const y = depthToY(frame, depthAtM(recording, atS));
      slot.g.scale.y = -1;
      slot.g.position.set(x, y);
      slot.words.text = words;
      slot.words.anchor.set(1, 0.5);
      const above = y - 19 * unit - textPx * 0.3;
      put(slot.words, x - 2 * unit, above);
      const half = textPx * 0.65;
      taken.boxes.push({ left: x - slot.words.width, top: above - half, right: x, bottom: above + half });
    }
    hide(this.#told, used);
  }

  #slot(pool: Slot[], i: number, build: (g: Graphics) => void, bold: boolean): Slot {
    let slot = pool[i];
    if (!slot) {
      slot = { g: new Graphics(), words: labelOf(this.#style, { bold, halo: !bold, size: 0.96 }) };
      build(slot.g);
      pool.push(slot);
      this.root.addChild(slot.g, slot.words);
    }
    slot.g.visible = slot.words.visible = true;
    return slot;
  }

  #ring(g: Graphics): void {
    const { tokens, unit, textPx } = this.#style;
    g.circle(0, 0, textPx * 0.82)
      .fill(tokens.paper)
      .stroke({ width: 2.2 * unit, color: tokens.ink });
  }

  #pin(g: Graphics): void {
    const { tokens, unit } = this.#style;
    g.moveTo(0, 0)
      .lineTo(0, 12 * unit)
      .stroke({ width: 1.6 * unit, color: tokens.ink })
      .rect(-5 * unit, 11 * unit, 10 * unit, 6 * unit)
      .fill(tokens.ink);
  }
}

function hide(pool: readonly Slot[], from: number): void {
  for (let i = from; i < pool.length; i++) pool[i]!.g.visible = pool[i]!.words.visible = false;
}
