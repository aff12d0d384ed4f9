import { TICKS_PER_ROW, TICKS_PER_S, type Recording } from '../dive/index.ts';
import { taskWords, type FlownTask } from '../lesson/index.ts';
import { pxPerSOf } from './geometry.ts';
import { depthAtM } from './line.ts';
import type { StageView } from './view.ts';

/** How large a sheet is drawn. */
export interface SheetOptions {
  /** Room across; a short run takes less of it. */
  readonly widthPx: number;
  /** Height of a row of water that is wished for. */
  readonly rowPx: number;
  readonly pixelRatio: number;
  /** Size of its words; strokes are as heavy as that. */
  readonly textPx: number;
}

/** A sheet's measures, CSS pixels, and where a moment lies on it. */
export interface Sheet {
  readonly widthPx: number;
  readonly heightPx: number;
  readonly rows: number;
  /** Length of a row, seconds, and when the first begins. */
  readonly rowS: number;
  readonly startS: number;
  readonly pxPerM: number;
  readonly pxPerS: number;
  /** Depths at the edges of a row's water, metres; the upper one is below 0 where air shows. */
  readonly topM: number;
  readonly deepestM: number;
  /** Size unit: 1 where words are 16 pixels high. */
  readonly unit: number;
  readonly textPx: number;
  /** Width of the water; the depth scale stands at its right. */
  readonly waterPx: number;
  /** Heights of a row's parts: tasks above the water, the water, fins and time below it. */
  readonly headPx: number;
  /** Lines of words over a task: its name and the mark's word on one, or below each other. */
  readonly headLines: number;
  /** Above those one more, for names that no bracket is wide enough for. */
  readonly hasRaised: boolean;
  readonly depthPx: number;
  readonly finPx: number;
  readonly footPx: number;
  /** @param recording the line on which it lies; left out: that of the view */
  place(atS: number, recording?: Recording): { readonly x: number; readonly y: number };
}

/** Width of the depth scale, and the room for time, in shares of a word's height. */
const SCALE_TEXT = 2.1;
const FOOT_TEXT = 1.5;
const HEAD_TEXT = 1.75;
const HEAD_LINE_TEXT = 1.15;
/** Width of a letter, on average, as a share of its height: enough to tell whether words fit. */
const LETTER = 0.55;
/** Height of the ticks of fins, up and down together, pixels at unit size. */
const FIN_PX = 26;
/** Air above the surface, and water beyond the line, metres. */
const AIR_M = 0.6;
const ROOM_M = 0.6;
/** Places to be are shown so far beyond the line; further off they would squeeze it. */
const BANDS_M = 1.5;
/** Water above the line that is left out only where it is more than this, metres. */
const LEFT_OUT_M = 2;
/** Who stays at one depth has so much water about him, metres: his presses need room, and his line is one row. */
const LEAST_M = 2;
/** A row of water is so many times as high as wished at most, and at least this wide, as a share of the room. */
const HIGHEST = 2.2;
/** A run that is longer than its rows by less, as a share of a row, is drawn smaller instead. */
const SHRINKS = 0.2;
const NARROWEST = 0.45;
/** Who was never deeper stayed at the surface, metres: there is no slope to be read, and the whole of it is one row, as small as that is. */
const AT_SURFACE_M = 1.5;

/**
 * Measures of a whole run: 9 m/min stays 45°, so a run longer than the sheet is wide goes on in the next row. Depths that it never
 * came near are left out, and the scale is the one at which it fills its rows.
 */
export function sheetOf(view: StageView, { widthPx, rowPx, textPx }: SheetOptions): Sheet {
  const { recording: own, evidence } = view;
  const startS = own.startTick / TICKS_PER_S;
  const unit = textPx / 16;
  const { lastsS, lowM, topM, deepestM } = reachOf(view, startS);
  const scalePx = Math.round(textPx * SCALE_TEXT);
  const roomPx = widthPx - scalePx;
  const endPx = 10 * unit;
  const wished = rowPx / (deepestM - topM);
  const wishedRows = (pxPerSOf(wished) * lastsS) / (roomPx - endPx);
  // Rather a row more than a line too small to be read.
  const rows = lowM < AT_SURFACE_M ? 1 : Math.max(1, Math.ceil(wishedRows - SHRINKS));
  // The scale at which so many rows are filled, as far as they do not grow too high.
  const fills = (rows * roomPx - endPx) / Math.max(pxPerSOf(1) * lastsS, 1e-9);
  const pxPerM = Math.min(fills, wished * HIGHEST);
  const pxPerS = pxPerSOf(pxPerM);
  const waterPx = Math.min(roomPx, Math.max(rows * pxPerS * lastsS + endPx, roomPx * NARROWEST));
  const rowS = waterPx / pxPerS;
  const depthPx = (deepestM - topM) * pxPerM;
  const tasks = evidence?.tasks ?? [];
  const isTight = (task: FlownTask) => taskWords(task).length * textPx * LETTER > (task.toS - task.fromS) * pxPerS;
  const headLines = tasks.some((task) => task.word !== null && isTight(task)) ? 2 : 1;
  const hasRaised = tasks.some((task) => task.word === null && isTight(task));
  const lines = headLines + (hasRaised ? 1 : 0);
  const headPx = tasks.length > 0 ? Math.round(textPx * (HEAD_TEXT + (lines - 1) * HEAD_LINE_TEXT)) : 0;
  const finPx = evidence && evidence.fins.length > 0 ? Math.round(FIN_PX * unit) : 0;
  const footPx = Math.round(textPx * FOOT_TEXT);
  const pitchPx = headPx + depthPx + finPx + footPx;
  const place = (atS: number, recording = own) => {
    const sinceS = atS - startS;
    const row = Math.min(rows - 1, Math.max(0, Math.floor(sinceS / rowS)));
    return {
      x: (sinceS - row * rowS) * pxPerS,
      y: row * pitchPx + headPx + (depthAtM(recording, atS) - topM) * pxPerM,
    };
  };
  return {
    ...{ widthPx: waterPx + scalePx, heightPx: rows * pitchPx, rows, rowS, startS, pxPerM, pxPerS, topM, deepestM },
    ...{ unit, textPx, waterPx, headPx, headLines, hasRaised, depthPx, finPx, footPx, place },
  };
}

/** How long the lines last, seconds, how deep they go, metres, and which depths they and the places to be take up. */
function reachOf({ recording: own, bands, branches = [] }: StageView, startS: number) {
  let lastsS = 0;
  let highM = Infinity;
  let lowM = 0;
  for (const recording of [own, ...branches.map((one) => one.recording)]) {
    const { rows, startTick } = recording;
    lastsS = Math.max(lastsS, (startTick + (rows - 1) * TICKS_PER_ROW) / TICKS_PER_S - startS);
    for (let row = 0; row < rows; row++) {
      const depthM = recording.at(row, 'depthM');
      highM = Math.min(highM, depthM);
      lowM = Math.max(lowM, depthM);
    }
  }
  const flownM = lowM;
  const [leastM, mostM] = [highM - BANDS_M, lowM + BANDS_M];
  for (const { topM, bottomM } of bands) {
    highM = Math.min(highM, Math.max(topM, leastM));
    lowM = Math.max(lowM, Math.min(bottomM, mostM));
  }
  const aboutM = Math.max(ROOM_M, (LEAST_M - (lowM - highM)) / 2);
  const topM = highM - aboutM > LEFT_OUT_M ? highM - aboutM : -AIR_M;
  return { lastsS, lowM: flownM, topM, deepestM: Math.max(lowM + aboutM, 3 + ROOM_M) };
}
