import { Container, Graphics, type Text } from 'pixi.js';
import { TICKS_PER_S } from '../dive/index.ts';
import { BranchMarks } from './branch-marks.ts';
import { branchRows, dashesOf, lastSeen } from './branch-rows.ts';
import { depthToY, secondsToX, type Frame } from './geometry.ts';
import type { Style } from './layout.ts';
import { crossesLine } from './line-crossed.ts';
import { calmed, depthAtM, limitsAt, stretchesOf } from './line.ts';
import type { Taken } from './taken.ts';
import type { BranchLine, StageView } from './view.ts';
import { placesNear } from './words-place.ts';
import { labelOf, put } from './words.ts';

const ROW_S = 0.1;
/** A change between single and doubled that lasts less is not seen as one, seconds. */
const SHORT_S = 0.45;

/** Words stand no further from the end of their line, in gaps. */
const FAR = 5;

/** The pictures of one line: halo, ink and the gap where it is doubled; its knot, and its name at the end. */
interface Drawn {
  readonly line: Graphics;
  readonly knot: Graphics;
  readonly letter: Text;
  readonly words: Text;
  key: string;
  of: BranchLine['recording'] | null;
}

/** Other lines of the dive: a branch is a thin second line that leaves a lettered knot, a ghost a long dash. None has a figure. */
export class BranchLines {
  /** Under the diver and his own line. */
  readonly root = new Container();
  /** Over them: bookmarks, knots and names. */
  readonly signs = new Container();
  readonly #style: Style;
  readonly #marks: BranchMarks;
  readonly #drawn: Drawn[] = [];

  constructor(style: Style) {
    this.#style = style;
    this.#marks = new BranchMarks(style);
    this.signs.addChild(this.#marks.root);
  }

  draw(view: StageView, frame: Frame, taken: Taken): void {
    const branches = view.branches ?? [];
    branches.forEach((branch, i) => this.#line(this.#slot(i), branch, view, frame));
    // Bookmarks and knots stand where they must; names where that leaves room.
    this.#marks.draw(view, frame, taken);
    branches.forEach((branch, i) => this.#knot(this.#drawn[i]!, branch, frame, taken));
    branches.forEach((branch, i) => this.#name(this.#drawn[i]!, branch, view, frame, taken));
    for (let i = branches.length; i < this.#drawn.length; i++) {
      const { line, knot, letter, words } = this.#drawn[i]!;
      line.visible = knot.visible = letter.visible = words.visible = false;
    }
  }

  #line(drawn: Drawn, branch: BranchLine, view: StageView, frame: Frame): void {
    const { tokens, linePx, unit } = this.#style;
    const { line } = drawn;
    const [from, to] = branchRows(branch, frame);
    line.visible = to > from;
    const originS = Math.max(branch.fromS, branch.recording.startTick / TICKS_PER_S);
    if (line.visible) line.position.set(secondsToX(frame, originS), depthToY(frame, 0));
    const { upMps, downMps } = view.limits;
    const key = `${from} ${to} ${frame.pxPerM} ${branch.recording.rows} ${branch.fromS} ${branch.dashed} ${upMps} ${downMps}`;
    if (!line.visible || (drawn.key === key && drawn.of === branch.recording)) return;
    drawn.key = key;
    drawn.of = branch.recording;
    const seconds: number[] = [];
    const depths: number[] = [];
    for (let row = from; row <= to; row++) {
      const s = branch.recording.startTick / TICKS_PER_S + row * ROW_S;
      seconds.push(Math.max(s, originS) - originS);
      depths.push(s < originS ? depthAtM(branch.recording, originS) : branch.recording.at(row, 'depthM'));
    }
    line.clear();
    const path = (points: readonly number[]) => {
      line.moveTo(points[0]! * frame.pxPerS, points[1]! * frame.pxPerM);
      for (let i = 2; i < points.length; i += 2) line.lineTo(points[i]! * frame.pxPerS, points[i + 1]! * frame.pxPerM);
      return line;
    };
    const round = { cap: 'round', join: 'round' } as const;
    if (branch.dashed) {
      const dashes = dashesOf(seconds, depths, (26 * unit) / frame.pxPerS, (13 * unit) / frame.pxPerS);
      for (const points of dashes) path(points).stroke({ width: linePx * 0.7, color: tokens.ink, cap: 'butt' });
      return;
    }
    const stretches = calmed(
      stretchesOf(seconds, depths, (s) => limitsAt(view, originS + s)),
      SHORT_S,
    );
    for (const { points, doubled } of stretches) {
      const width = linePx * (doubled ? 1 : 0.5);
      path(points).stroke({ width: width + 2 * unit, color: tokens.paper, ...round });
      path(points).stroke({ width, color: tokens.ink, ...round });
    }
    for (const { points, doubled } of stretches)
      if (doubled) path(points).stroke({ width: linePx * 0.42, color: tokens.paper, join: 'round' });
  }

  #knot({ knot, letter }: Drawn, branch: BranchLine, frame: Frame, taken: Taken): void {
    const x = secondsToX(frame, branch.fromS);
    const y = depthToY(frame, depthAtM(branch.recording, branch.fromS));
    const r = this.#style.textPx * 0.72;
    knot.visible = letter.visible = !branch.dashed && x > -r && x < frame.waterPx + r;
    if (!knot.visible) return;
    knot.position.set(x, y);
    letter.text = branch.letter;
    put(letter, x, y);
    taken.boxes.push({ left: x - r, top: y - r, right: x + r, bottom: y + r });
  }

  /** The name stands where the line ends, or where it was last in sight. */
  #name({ words, line }: Drawn, branch: BranchLine, view: StageView, frame: Frame, taken: Taken): void {
    words.text = this.#style.narrow && !branch.dashed ? branch.letter : branch.words;
    const row = line.visible ? lastSeen(branch, frame) : undefined;
    words.visible = row !== undefined;
    if (row === undefined) return;
    const x = secondsToX(frame, branch.recording.startTick / TICKS_PER_S + row * ROW_S);
    const y = depthToY(frame, branch.recording.at(row, 'depthM'));
    const gap = 8 * this.#style.unit;
    const groundY = depthToY(frame, view.rig.bottomM);
    // Words far from their line would be taken for another's, words to its left would stand on it.
    const places = placesNear(x, y, words.width, this.#style.textPx * 1.25, taken.within, gap).filter(
      ({ left, right, top, bottom }, i) =>
        i !== 1 && left < x + FAR * gap && right > x - FAR * gap && (bottom < groundY || top > groundY),
    );
    const free = places.filter((place) => taken.isFree(place));
    const box = free.find((place) => !crossesLine(place, view, frame)) ?? free[0];
    words.visible = box !== undefined;
    if (!box) return;
    put(words, box.left, (box.top + box.bottom) / 2);
    taken.boxes.push(box);
  }

  #slot(i: number): Drawn {
    let drawn = this.#drawn[i];
    if (drawn) return drawn;
    const { tokens, unit, textPx } = this.#style;
    drawn = {
      line: new Graphics(),
      knot: new Graphics(),
      letter: labelOf(this.#style, { bold: true, colour: tokens.paper, anchorX: 0.5 }),
      words: labelOf(this.#style, { bold: true, halo: true }),
      key: '',
      of: null,
    };
    drawn.knot
      .circle(0, 0, textPx * 0.72)
      .fill(tokens.ink)
      .stroke({ width: 2 * unit, color: tokens.paper });
    this.root.addChild(drawn.line);
    this.signs.addChild(drawn.words, drawn.knot, drawn.letter);
    this.#drawn.push(drawn);
    return drawn;
  }
}
