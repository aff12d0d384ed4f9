import { Container, Graphics } from 'pixi.js';
import { TICKS_PER_S, type Recording } from '../dive/index.ts';
import { depthToY, secondsToX, type Frame } from './geometry.ts';
import type { Style } from './layout.ts';
import { calmed, limitsAt, stretchesOf, type Stretch } from './line.ts';
import type { StageView } from './view.ts';

/** Rows of a piece of track that is drawn once and then only moved. */
const CHUNK_ROWS = 40;
const ROW_S = 0.1;
/** A change between single and doubled that lasts less is not seen as one, seconds. */
const SHORT_S = 0.45;

/** A piece of the track in three layers, so that neighbours join without a seam: halo, ink, and the gap of a doubled line. */
interface Piece {
  readonly lines: readonly [halo: Graphics, ink: Graphics, core: Graphics];
  key: string;
}

/** The ink line of the past: pieces of four seconds kept as they are, a short rest to the present drawn each frame. */
export class Track {
  readonly root = new Container();
  readonly #style: Style;
  readonly #halos = new Container();
  readonly #inks = new Container();
  readonly #cores = new Container();
  readonly #pieces = new Map<number, Piece>();
  #recording: Recording | undefined;

  constructor(style: Style) {
    this.#style = style;
    this.root.addChild(this.#halos, this.#inks, this.#cores);
  }

  draw(view: StageView, frame: Frame): void {
    const { recording } = view;
    if (recording !== this.#recording) this.#forget();
    this.#recording = recording;
    const startS = recording.startTick / TICKS_PER_S;
    const lastRow = Math.min(recording.rows - 1, Math.floor((view.nowS - startS) / ROW_S + 1e-6));
    const leftS = view.nowS - frame.nowX / frame.pxPerS;
    const first = Math.max(0, Math.floor((leftS - startS) / ROW_S / CHUNK_ROWS) - 1);
    const last = Math.floor(Math.max(0, lastRow) / CHUNK_ROWS);
    for (const [index, { lines }] of this.#pieces) {
      if (index >= first && index <= last) continue;
      for (const line of lines) line.destroy();
      this.#pieces.delete(index);
    }
    for (let index = first; index <= last; index++) this.#piece(index, lastRow, startS, view, frame);
  }

  #piece(index: number, lastRow: number, startS: number, view: StageView, frame: Frame): void {
    const fromRow = index * CHUNK_ROWS;
    const toRow = Math.min(fromRow + CHUNK_ROWS, lastRow);
    const whole = toRow === fromRow + CHUNK_ROWS;
    const { upMps, downMps } = view.limits;
    const end = `${toRow} ${whole ? '' : view.nowS} ${view.recording.at(toRow, 'depthM')}`;
    const key = `${frame.pxPerM} ${end} ${upMps} ${downMps} ${view.limitsBefore?.length}`;
    let piece = this.#pieces.get(index);
    if (!piece) {
      piece = { lines: [new Graphics(), new Graphics(), new Graphics()], key: '' };
      [this.#halos, this.#inks, this.#cores].forEach((layer, i) => layer.addChild(piece!.lines[i]!));
      this.#pieces.set(index, piece);
    }
    const originS = startS + fromRow * ROW_S;
    if (piece.key !== key) {
      piece.key = key;
      const seconds: number[] = [];
      const depths: number[] = [];
      for (let row = fromRow; row <= toRow; row++) {
        seconds.push((row - fromRow) * ROW_S);
        depths.push(view.recording.at(row, 'depthM'));
      }
      const nowS = view.nowS - originS;
      if (!whole && nowS > seconds[seconds.length - 1]! + 1e-4) {
        seconds.push(nowS);
        depths.push(view.depthM);
      }
      this.#ink(
        piece,
        calmed(
          stretchesOf(seconds, depths, (s) => limitsAt(view, originS + s)),
          SHORT_S,
        ),
        frame,
      );
    }
    const x = secondsToX(frame, originS);
    const y = depthToY(frame, 0);
    for (const line of piece.lines) line.position.set(x, y);
  }

  #ink({ lines: [halo, ink, core] }: Piece, stretches: readonly Stretch[], frame: Frame): void {
    const { tokens, linePx, unit } = this.#style;
    halo.clear();
    ink.clear();
    core.clear();
    const path = (g: Graphics, { points }: Stretch) => {
      g.moveTo(points[0]! * frame.pxPerS, points[1]! * frame.pxPerM);
      for (let i = 2; i < points.length; i += 2) g.lineTo(points[i]! * frame.pxPerS, points[i + 1]! * frame.pxPerM);
      return g;
    };
    const round = { cap: 'round', join: 'round' } as const;
    for (const stretch of stretches) {
      const width = stretch.doubled ? linePx * 1.35 : linePx;
      path(halo, stretch).stroke({ width: width + 2.4 * unit, color: tokens.paper, ...round });
      path(ink, stretch).stroke({ width, color: tokens.ink, ...round });
    }
    for (const stretch of stretches)
      if (stretch.doubled) path(core, stretch).stroke({ width: linePx * 0.5, color: tokens.paper, join: 'round' });
  }

  #forget(): void {
    for (const { lines } of this.#pieces.values()) for (const line of lines) line.destroy();
    this.#pieces.clear();
  }
}
