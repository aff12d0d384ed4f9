import { Container, Graphics } from 'pixi.js';
import { depthToY, type Frame } from './geometry.ts';
import type { Style } from './layout.ts';
import { Plate, placesLeftOf } from './plate.ts';
import type { Taken } from './taken.ts';
import type { NeutralMark, StageView } from './view.ts';
import type { Box } from './words-place.ts';

/** Half the width of a sign with its ground, in units. */
const HALF = 14;

interface Slot {
  readonly top: Graphics;
  readonly hollow: Graphics;
  readonly words: Plate;
}

/** A ball on a hilltop, or in a hollow, at each neutral depth, before the scale; its words beside it where there is room. */
export class NeutralSigns {
  readonly root = new Container();
  readonly #style: Style;
  readonly #slots: Slot[] = [];

  constructor(style: Style) {
    this.#style = style;
  }

  /** @param forces whether the column of forces says *neutral* already */
  draw({ neutral = [] }: StageView, frame: Frame, taken: Taken, forces: boolean): void {
    const { heightPx, waterPx, unit, narrow, mapped } = this.#style;
    const x = waterPx - (HALF + 4) * unit;
    neutral.forEach(({ depthM, stable }, i) => {
      const slot = this.#slot(i);
      const y = depthToY(frame, depthM);
      const seen = y > 0 && y < heightPx;
      slot.top.visible = seen && !stable;
      slot.hollow.visible = seen && stable;
      slot.words.show(undefined);
      if (!seen) return;
      (stable ? slot.hollow : slot.top).position.set(x, y);
      taken.boxes.push({ left: x - HALF * unit, top: y - 9 * unit, right: waterPx, bottom: y + 11 * unit });
      if (narrow || mapped || forces) return;
      // Where the whole does not fit, the part that matters may.
      let box: Box | undefined;
      for (const words of wordsOf({ depthM, stable }))
        box ??= taken.first(placesLeftOf(x - (HALF + 2) * unit, y, slot.words.say(words), stable ? 1 : -1));
      slot.words.show(box);
      if (box) taken.boxes.push(box);
    });
    for (const { top, hollow, words } of this.#slots.slice(neutral.length)) {
      top.visible = hollow.visible = false;
      words.show(undefined);
    }
  }

  #slot(i: number): Slot {
    let slot = this.#slots[i];
    if (!slot) {
      slot = { top: this.#sign(1), hollow: this.#sign(-1), words: new Plate(this.#style) };
      this.#slots.push(slot);
      this.root.addChild(slot.top, slot.hollow, slot.words.root);
    }
    return slot;
  }

  /** The ball's middle is the depth; a short tick joins it to the scale. */
  #sign(way: 1 | -1): Graphics {
    const { tokens, unit, edgePx } = this.#style;
    const ground = new Graphics().roundRect(-HALF, -9, 2 * HALF, 20, 4).fill({ color: tokens.paper, alpha: 0.94 });
    // A hill falls off to both sides from under the ball; a hollow rises round it.
    const [rim, floor] = way === 1 ? [9, 5] : [-3, 5.5];
    ground
      .moveTo(-11, rim)
      .bezierCurveTo(-6, rim, -5, floor, 0, floor)
      .bezierCurveTo(5, floor, 6, rim, 11, rim)
      .stroke({ width: Math.max(2, edgePx / unit), color: tokens.ink, cap: 'round' })
      .circle(0, 0, 4)
      .fill(tokens.ink)
      .moveTo(HALF, 0)
      .lineTo(HALF + 4, 0)
      .stroke({ width: edgePx / unit, color: tokens.ink });
    ground.scale.set(unit);
    return ground;
  }
}

/** What a neutral depth is called, at length and in short. */
export function wordsOf({ depthM, stable }: NeutralMark): readonly [string, string] {
  const holds = stable ? 'holds' : "won't hold";
  return [`neutral ${Math.max(0, depthM).toFixed(1)} m, ${holds}`, holds];
}
