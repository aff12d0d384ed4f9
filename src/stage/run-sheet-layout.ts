import { TICKS_PER_ROW, TICKS_PER_S, type Recording } from '../dive/index.ts';
import { pxPerSOf } from './geometry.ts';
import { depthAtM } from './line.ts';
import type { StageView } from './view.ts';

/** How large a sheet is drawn. */
export interface SheetOptions {
  readonly widthPx: number;
  /** Height of a row of water. */
  readonly rowPx: number;
  readonly pixelRatio: number;
}

/** A sheet's measures, CSS pixels, and where a moment lies on it. */
export interface Sheet {
  readonly heightPx: number;
  readonly rows: number;
  /** Length of a row, seconds, and when the first begins. */
  readonly rowS: number;
  readonly startS: number;
  readonly pxPerM: number;
  readonly pxPerS: number;
  readonly deepestM: number;
  /** @param recording the line on which it lies; left out: that of the view */
  place(atS: number, recording?: Recording): { readonly x: number; readonly y: number };
}

/** Width of the depth scale at the right of each row, and the room for time below it. */
export const SCALE_PX = 34;
export const GAP_PX = 22;
/** Air above the surface, metres. */
export const AIR_M = 0.6;

/** Measures of a whole run: 9 m/min stays 45°, so a run longer than the sheet is wide goes on in the next row. */
export function sheetOf({ recording: own, bands, branches = [] }: StageView, { widthPx, rowPx }: SheetOptions): Sheet {
  const startS = own.startTick / TICKS_PER_S;
  let lastsS = 0;
  let deepestM = 3;
  for (const recording of [own, ...branches.map((one) => one.recording)]) {
    const { rows, startTick } = recording;
    lastsS = Math.max(lastsS, (startTick + (rows - 1) * TICKS_PER_ROW) / TICKS_PER_S - startS);
    for (let row = 0; row < rows; row++) deepestM = Math.max(deepestM, recording.at(row, 'depthM'));
  }
  for (const { bottomM } of bands) deepestM = Math.max(deepestM, bottomM);
  deepestM += 0.6;
  const pxPerM = rowPx / (deepestM + AIR_M);
  const pxPerS = pxPerSOf(pxPerM);
  const rowS = (widthPx - SCALE_PX) / pxPerS;
  const rows = Math.max(1, Math.ceil(lastsS / rowS - 1e-9));
  const place = (atS: number, recording = own) => {
    const sinceS = atS - startS;
    const row = Math.min(rows - 1, Math.max(0, Math.floor(sinceS / rowS)));
    return {
      x: (sinceS - row * rowS) * pxPerS,
      y: row * (rowPx + GAP_PX) + (depthAtM(recording, atS) + AIR_M) * pxPerM,
    };
  };
  return { heightPx: rows * (rowPx + GAP_PX), rows, rowS, startS, pxPerM, pxPerS, deepestM, place };
}
