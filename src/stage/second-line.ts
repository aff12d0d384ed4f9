import { Container, Graphics } from 'pixi.js';
import { TICKS_PER_S, type Recording } from '../dive/index.ts';
import { depthToY, isTooSteep, secondsToX, type Frame } from './geometry.ts';
import type { Style } from './layout.ts';
import { limitsAt } from './line.ts';
import { DASH_DOT, dashesAlong, lengthTo } from './second-dashes.ts';
import type { SecondView, StageView } from './view.ts';

/** Rows of a piece that is drawn once and then only moved. */
const CHUNK_ROWS = 40;
const ROW_S = 0.1;

/** The line of the second diver: dash and dot in a colour of its own, doubled where it is too steep as every line is. */
export class SecondLine {
  readonly root = new Container();
  readonly #style: Style;
  readonly #pieces = new Map<number, { readonly g: Graphics; key: string }>();
  #recording: Recording | undefined;
  /** Length of the line up to each row, metres. */
  readonly #lengths: number[] = [];

  constructor(style: Style) {
    this.#style = style;
  }

  draw(view: StageView, second: SecondView, frame: Frame): void {
    const { recording } = second;
    if (recording !== this.#recording) this.#forget();
    this.#recording = recording;
    const startS = recording.startTick / TICKS_PER_S;
    const lastRow = Math.min(recording.rows - 1, Math.floor((view.nowS - startS) / ROW_S + 1e-6));
    this.#measure(recording);
    const leftS = view.nowS - frame.nowX / frame.pxPerS;
    const first = Math.max(0, Math.floor((leftS - startS) / ROW_S / CHUNK_ROWS) - 1);
    const last = Math.floor(Math.max(0, lastRow) / CHUNK_ROWS);
    for (const [index, { g }] of this.#pieces) {
      if (index >= first && index <= last) continue;
      g.destroy();
      this.#pieces.delete(index);
    }
    for (let index = first; index <= last; index++) this.#piece(index, lastRow, startS, view, second, frame);
  }

  #measure(recording: Recording): void {
    const lengths = this.#lengths;
    if (lengths.length === 0) lengths.push(0);
    for (let row = lengths.length; row < recording.rows; row++)
      lengths.push(lengthTo(lengths[row - 1]!, recording.at(row - 1, 'depthM'), recording.at(row, 'depthM'), ROW_S));
  }

  #piece(
    index: number,
    lastRow: number,
    startS: number,
    view: StageView,
    { recording, depthM }: SecondView,
    frame: Frame,
  ): void {
    const fromRow = index * CHUNK_ROWS;
    const toRow = Math.min(fromRow + CHUNK_ROWS, lastRow);
    const whole = toRow === fromRow + CHUNK_ROWS;
    const { upMps, downMps } = view.limits;
    const key = `${frame.pxPerM} ${toRow} ${whole ? '' : `${view.nowS} ${depthM}`} ${upMps} ${downMps}`;
    let piece = this.#pieces.get(index);
    if (!piece) {
      piece = { g: this.root.addChild(new Graphics()), key: '' };
      this.#pieces.set(index, piece);
    }
    const originS = startS + fromRow * ROW_S;
    piece.g.position.set(secondsToX(frame, originS), depthToY(frame, 0));
    if (piece.key === key) return;
    piece.key = key;
    const seconds: number[] = [];
    const depths: number[] = [];
    const lengths: number[] = [];
    for (let row = fromRow; row <= toRow; row++) {
      seconds.push((row - fromRow) * ROW_S);
      depths.push(recording.at(row, 'depthM'));
      lengths.push(this.#lengths[row]!);
    }
    const passedS = view.nowS - originS - seconds.at(-1)!;
    if (!whole && passedS > 1e-4) {
      lengths.push(lengthTo(lengths.at(-1)!, depths.at(-1)!, depthM, passedS));
      seconds.push(view.nowS - originS);
      depths.push(depthM);
    }
    const patternM = DASH_DOT.map((units) => (units * this.#style.unit) / frame.pxPerM);
    const steep = (s: number, speedMps: number) => {
      const limits = limitsAt(view, originS + s);
      return isTooSteep(speedMps, limits.upMps, limits.downMps);
    };
    this.#ink(
      piece.g.clear(),
      dashesAlong(seconds, depths, lengths, patternM).map(({ points, speedMps }) => ({
        points,
        doubled: steep(points[0]!, speedMps),
      })),
      frame,
    );
  }

  #ink(g: Graphics, dashes: readonly { points: readonly number[]; doubled: boolean }[], frame: Frame): void {
    const { tokens, linePx, unit } = this.#style;
    const path = (points: readonly number[]) => {
      g.moveTo(points[0]! * frame.pxPerS, points[1]! * frame.pxPerM);
      for (let i = 2; i < points.length; i += 2) g.lineTo(points[i]! * frame.pxPerS, points[i + 1]! * frame.pxPerM);
      return g;
    };
    for (const { points, doubled } of dashes) {
      const width = linePx * (doubled ? 1.35 : 0.9);
      path(points).stroke({ width: width + 2.4 * unit, color: tokens.paper, join: 'round' });
      path(points).stroke({ width, color: tokens.secondDiver, join: 'round' });
      if (doubled) path(points).stroke({ width: linePx * 0.5, color: tokens.paper, join: 'round' });
    }
  }

  #forget(): void {
    for (const { g } of this.#pieces.values()) g.destroy();
    this.#pieces.clear();
    this.#lengths.length = 0;
  }
}
