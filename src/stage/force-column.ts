import { Container, Graphics } from 'pixi.js';
import { STANDARD_GRAVITY_MPS2 } from '../water/index.ts';
import { NEUTRAL_KGF, drawArrow } from './arrow.ts';
import { arrowStepM, barKg, crossingsM, greatestKgf, pxPerKgfOf } from './force-scale.ts';
import { PX_PER_KGF, bottomOf, depthToY, type Frame } from './geometry.ts';
import type { Style } from './layout.ts';
import { Plate, leftOf, placesBeside } from './plate.ts';
import type { Taken } from './taken.ts';
import type { DepthForce, StageView } from './view.ts';
import { crosses, type Box } from './words-place.ts';

/** Thickness of these arrows against the one on the diver. */
const THICK = 0.75;

/**
 * What the water would do to the diver at each depth with the gas he has: a column of arrows on the now-line, all at one length a
 * kilogram, which a bar tells; where they point apart or together stands a dash with *neutral*.
 */
export class ForceColumn {
  readonly root = new Container();
  readonly #style: Style;
  readonly #arrows: { readonly g: Graphics; readonly words: Plate | null; key: string }[] = [];
  readonly #dashes: { readonly g: Graphics; readonly words: Plate }[] = [];
  readonly #bar = new Graphics();
  readonly #barWords: Plate;
  #barKey = '';

  constructor(style: Style) {
    this.#style = style;
    this.#barWords = new Plate(style);
    this.root.addChild(this.#barWords.root, this.#bar);
  }

  draw(view: StageView, frame: Frame, taken: Taken): void {
    const { overlay } = view;
    this.root.visible = overlay?.kind === 'forces';
    if (overlay?.kind !== 'forces') return;
    const { unit } = this.#style;
    const stepM = arrowStepM(frame.pxPerM, 44 * unit);
    const greatest = greatestKgf(overlay.arrows, frame.topM, bottomOf(frame));
    const pxPerKgf = pxPerKgfOf(greatest, stepM * frame.pxPerM * 0.9, PX_PER_KGF * unit);
    const mostPx = stepM * frame.pxPerM * 0.9;
    this.#drawDashes(overlay.arrows, view, frame, taken);
    let used = 0;
    for (const { depthM, netN } of overlay.arrows) {
      if (Math.abs(depthM / stepM - Math.round(depthM / stepM)) > 1e-6) continue;
      if (this.#arrow(used, netN / STANDARD_GRAVITY_MPS2, depthToY(frame, depthM), pxPerKgf, mostPx, frame, taken))
        used++;
    }
    for (const { g, words } of this.#arrows.slice(used)) {
      g.visible = false;
      words?.show(undefined);
    }
    this.#drawBar(pxPerKgf, frame, taken);
  }

  /** One arrow, on the now-line or a little beside it; none where the diver is. */
  #arrow(i: number, kgf: number, y: number, pxPerKgf: number, mostPx: number, frame: Frame, taken: Taken): boolean {
    const { unit } = this.#style;
    if (Math.abs(kgf) < NEUTRAL_KGF) return false;
    const wanted = Math.max(Math.abs(kgf) * pxPerKgf, 9 * unit);
    const length = Math.min(wanted, mostPx);
    const half = 11 * THICK * unit;
    const boxAt = (x: number): Box => ({
      left: x - half,
      top: y - (kgf > 0 ? length : 0),
      right: x + half,
      bottom: y + (kgf > 0 ? 0 : length),
    });
    const { top, bottom } = boxAt(0);
    if (top < taken.within.top || bottom > taken.within.bottom) return false;
    // The diver's box was the first to be taken.
    if (crosses(boxAt(frame.nowX), taken.boxes[0]!)) return false;
    const x = this.#clear(frame.nowX, boxAt, 24 * unit, taken);
    if (x === undefined) return false;
    let slot = this.#arrows[i];
    if (!slot) {
      // A class reads three numbers and no more.
      const words = this.#style.projector ? null : new Plate(this.#style);
      slot = { g: this.root.addChild(new Graphics()), words, key: '' };
      if (words) this.root.addChild(words.root);
      this.#arrows.push(slot);
    }
    const cut = wanted > mostPx * 1.001;
    const key = `${Math.round(length * 2)} ${kgf > 0} ${cut}`;
    if (key !== slot.key) drawArrow(slot.g, this.#style, length, Math.sign(kgf), cut, THICK);
    slot.key = key;
    slot.g.visible = true;
    slot.g.position.set(x, y);
    taken.boxes.push(boxAt(x));
    this.#number(slot.words, kgf, { x, y: y + (kgf > 0 ? -length / 2 : length / 2), half }, frame, taken);
    return true;
  }

  /** The kilograms of an arrow beside it, where there is room. */
  #number(
    words: Plate | null,
    kgf: number,
    at: { readonly x: number; readonly y: number; readonly half: number },
    frame: Frame,
    taken: Taken,
  ): void {
    if (!words) return;
    const size = words.say(Math.abs(kgf).toFixed(1));
    // To the left of the now-line it would stand over the diver's own arrow, and be read as that one's.
    const places =
      at.x < frame.nowX
        ? [leftOf(at.x - at.half, at.y, size)]
        : [0, 8].map((away) => leftOf(at.x + at.half + size[0] + away * this.#style.unit, at.y, size));
    const box = taken.first(places);
    words.show(box);
    if (box) taken.boxes.push(box);
  }

  /** The now-line, or the nearest free place so far beside it; the diver must stay readable. */
  #clear(x: number, boxAt: (x: number) => Box, farPx: number, taken: Taken): number | undefined {
    const free = (at: number) => !taken.isHit(boxAt(at)) && boxAt(at).right < taken.within.right;
    const step = 8 * this.#style.unit;
    for (let away = 0; away <= farPx; away += step)
      for (const way of [1, -1]) if (free(x + way * away)) return x + way * away;
    return undefined;
  }

  #drawDashes(arrows: readonly DepthForce[], { neutral }: StageView, frame: Frame, taken: Taken): void {
    const { unit } = this.#style;
    const depths = neutral?.length ? neutral.map(({ depthM }) => depthM) : crossingsM(arrows);
    depths.forEach((depthM, i) => {
      const { g, words } = this.#dash(i);
      const y = depthToY(frame, depthM);
      const seen = y > taken.within.top && y < taken.within.bottom;
      g.visible = seen;
      words.show(undefined);
      if (!seen) return;
      const half = 15 * unit;
      const boxAt = (x: number): Box => ({
        left: x - half - 8 * unit,
        top: y - 3 * unit,
        right: x + half + 8 * unit,
        bottom: y + 3 * unit,
      });
      const x = this.#clear(frame.nowX, boxAt, 160 * unit, taken) ?? frame.nowX;
      g.position.set(x, y);
      taken.boxes.push(boxAt(x));
      const size = words.say('neutral');
      const box = taken.first(placesBeside(x, y, half + 9 * unit, size));
      words.show(box);
      if (box) taken.boxes.push(box);
    });
    for (const { g, words } of this.#dashes.slice(depths.length)) {
      g.visible = false;
      words.show(undefined);
    }
  }

  #dash(i: number): { readonly g: Graphics; readonly words: Plate } {
    const { tokens, unit } = this.#style;
    let dash = this.#dashes[i];
    if (!dash) {
      const g = new Graphics();
      for (const [width, color] of [
        [6.4 * unit, tokens.paper],
        [3.6 * unit, tokens.ink],
      ] as const)
        g.moveTo(-15 * unit, 0)
          .lineTo(15 * unit, 0)
          .stroke({ width, color, cap: 'round' });
      dash = { g, words: new Plate(this.#style, { bold: true }) };
      this.#dashes.push(dash);
      this.root.addChild(dash.g, dash.words.root);
    }
    return dash;
  }

  /** The bar that says how long a kilogram is, near the foot or the head of the column. */
  #drawBar(pxPerKgf: number, frame: Frame, taken: Taken): void {
    const { tokens, unit, textPx } = this.#style;
    const kg = barKg(pxPerKgf, 14 * unit);
    const long = kg * pxPerKgf;
    // The words begin with room for the bar.
    const size = this.#barWords.say(`   = ${kg} kg`);
    const height = Math.max(size[1], long + 10 * unit);
    const box = taken.first(
      [taken.within.bottom - height, taken.within.top].flatMap((top) =>
        [1, 2, 4, 6, 9].flatMap((away) =>
          [frame.nowX - away * 1.5 * textPx - size[0], frame.nowX + away * 1.5 * textPx].map((left) => ({
            left,
            top,
            right: left + size[0],
            bottom: top + height,
          })),
        ),
      ),
    );
    this.#barWords.show(box);
    this.#bar.visible = box !== undefined;
    if (!box) return;
    taken.boxes.push(box);
    const key = String(Math.round(long * 2));
    if (key !== this.#barKey) {
      const half = long / 2;
      this.#bar.clear();
      for (const y of [-half, half]) this.#bar.moveTo(-4 * unit, y).lineTo(4 * unit, y);
      this.#bar
        .moveTo(0, -half)
        .lineTo(0, half)
        .stroke({ width: 2.2 * unit, color: tokens.ink });
    }
    this.#barKey = key;
    this.#bar.position.set(box.left + 10 * unit, (box.top + box.bottom) / 2);
  }
}
