import { Container } from 'pixi.js';
import type { Frame } from './geometry.ts';
import type { Style } from './layout.ts';
import { LedgeMark } from './ledge-mark.ts';
import { crowdOf, groupsOf, ledgePlace, ledgeWords, middleOf } from './ledge-places.ts';
import { Plate } from './plate.ts';
import type { Taken } from './taken.ts';
import type { StageView } from './view.ts';
import type { Box } from './words-place.ts';

/**
 * What still stops the diver: a ledge for each means at the time and depth where it would; what is lost stands below, on ink.
 * Ledges close together share a plate of words, from the top down, and so do all on a narrow page.
 */
export class Ledges {
  readonly root = new Container();
  readonly #style: Style;
  readonly #marks: LedgeMark[] = [];
  readonly #lost: Plate;
  readonly #list: Plate;

  constructor(style: Style) {
    this.#style = style;
    this.#lost = new Plate(style, { bold: true, colour: style.tokens.paper }, style.tokens.ink);
    this.#list = new Plate(style);
    this.root.addChild(this.#lost.root, this.#list.root);
  }

  draw(view: StageView, frame: Frame, taken: Taken): void {
    const { overlay } = view;
    this.root.visible = overlay?.kind === 'ledges';
    if (overlay?.kind !== 'ledges') return;
    const { narrow, textPx } = this.#style;
    const { ledges } = overlay;
    const places = ledges.map((ledge) => ledgePlace(ledge, frame, taken.within));
    const words = ledges.map((ledge, i) => ledgeWords(ledge, places[i]!, view.nowS));
    const byDepth = words.map((_, i) => i).sort((a, b) => ledges[a]!.depthM - ledges[b]!.depthM);
    const linesOf = (group: readonly number[]) => byDepth.filter((i) => group.includes(i)).map((i) => words[i]!);
    // All ledges first: they stand where they must, their words where that leaves room.
    ledges.forEach(({ depthM }, i) => {
      const catches = depthM >= view.depthM;
      this.#mark(i).draw(places[i]!, catches, frame.pxPerS, crowdOf(places, i, catches ? 1 : -1, textPx), taken);
    });
    this.#corner(this.#lost, overlay.lost, taken);
    this.#corner(this.#list, narrow ? linesOf(byDepth) : [], taken);
    for (const group of narrow ? [] : groupsOf(places, textPx * 1.5)) {
      const { spread, ...at } = middleOf(group.map((i) => places[i]!));
      this.#mark(Math.min(...group)).say(linesOf(group).join('\n'), at, spread, taken);
    }
    for (const { root } of this.#marks.slice(ledges.length)) root.visible = false;
  }

  /** Lines of words in a corner: below and ahead if there is room. */
  #corner(plate: Plate, lines: readonly string[], taken: Taken): void {
    if (lines.length === 0) return plate.show(undefined);
    const { nowX } = this.#style;
    const [width, height] = plate.say(lines.join('\n'));
    const { right, bottom, top, left } = taken.within;
    const at = (x: number, y: number): Box => ({ left: x, top: y, right: x + width, bottom: y + height });
    const stack = this.#lost.root.visible && plate !== this.#lost ? this.#lost.root.height + 4 : 0;
    const box = taken.first([
      at(right - width, bottom - height),
      at(Math.min(nowX, right - width), bottom - height),
      at(left, bottom - height),
      at(left, bottom - height - stack),
      at(right - width, bottom - height - stack),
      at(right - width, top),
      at(left, top),
    ]);
    plate.show(box);
    if (box) taken.boxes.push(box);
  }

  #mark(i: number): LedgeMark {
    let mark = this.#marks[i];
    if (!mark) {
      mark = new LedgeMark(this.#style);
      this.#marks.push(mark);
      this.root.addChildAt(mark.root, 0);
    }
    return mark;
  }
}
