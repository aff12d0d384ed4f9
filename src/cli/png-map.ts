import { encode } from 'fast-png';
import type { MapBand, RecoveryMap } from '../insight/index.ts';

/** Pixels of a cell's side, and the period of every texture: textures run on from cell to cell. */
export const CELL_PX = 8;

/** Greys of the picture: ink, paper, and the ground where the trouble is rising. */
export const INK = 26;
export const PAPER = 248;
export const RISING_GROUND = 206;

/** The diver's dot: radii in pixels of its ink heart, of the paper around it and of the ink edge. */
const HEART_PX = 3;
const HALO_PX = 5;
const EDGE_PX = 6.5;

/** A picture in greys, row by row from the top left. */
export interface Picture {
  readonly widthPx: number;
  readonly heightPx: number;
  readonly greys: Uint8Array;
}

/**
 * Where ink lies in a tile of each means; the more it takes to recover, the more ink. No slanted lines: a slope on these
 * pictures is a speed.
 */
const INKED: Readonly<Record<MapBand['means'], (x: number, y: number) => boolean>> = {
  none: () => false,
  breath: (x, y) => x >= 3 && x < 5 && y >= 3 && y < 5,
  fins: (_, y) => y >= 3 && y < 5,
  gas: (x) => x >= 2 && x < 5,
  all: (x, y) => x < 2 || y < 2,
  lead: (x, y) => x < 2 || x >= 5 || y < 2 || y >= 5,
  lost: () => true,
};

/**
 * Draws a recovery map: a column of cells for each value across, the least at the left, depth downward. A cell shows what works
 * in its middle.
 */
export function pictureOf(map: RecoveryMap, rows: number): Picture {
  const widthPx = map.columns.length * CELL_PX;
  const heightPx = rows * CELL_PX;
  const greys = new Uint8Array(widthPx * heightPx);
  map.columns.forEach((bands, column) => {
    for (let row = 0; row < rows; row++) {
      const { means, way } = bandAt(bands, map.topM + ((row + 0.5) / rows) * (map.bottomM - map.topM));
      const ground = way < 0 ? RISING_GROUND : PAPER;
      for (let y = 0; y < CELL_PX; y++)
        for (let x = 0; x < CELL_PX; x++)
          greys[(row * CELL_PX + y) * widthPx + column * CELL_PX + x] = INKED[means](x, y) ? INK : ground;
    }
  });
  const picture = { widthPx, heightPx, greys };
  drawDot(picture, dotPx(map, heightPx));
  return picture;
}

/** The picture as a PNG file, with one line of text in it. */
export function pngOf({ widthPx, heightPx, greys }: Picture, text: string): Uint8Array {
  return encode({ width: widthPx, height: heightPx, data: greys, depth: 8, channels: 1, text: { Description: text } });
}

/** The band of a column that holds a depth; beyond its ends the outermost. */
export function bandAt(bands: readonly MapBand[], depthM: number): MapBand {
  return bands.find(({ toM }) => depthM < toM) ?? bands[bands.length - 1];
}

/** Middle of the diver's dot in pixels: between the middles of the columns whose values enclose the diver's. */
function dotPx({ across: { values }, here, topM, bottomM }: RecoveryMap, heightPx: number): readonly [number, number] {
  const after = values.findIndex((value) => value > here.across);
  const right = Math.max(1, after === -1 ? values.length - 1 : after);
  const left = right - 1;
  const column = left + (here.across - values[left]) / (values[right] - values[left]);
  return [(column + 0.5) * CELL_PX, ((here.depthM - topM) / (bottomM - topM)) * heightPx];
}

/** What lies beyond the picture's edge is cut off. */
function drawDot({ widthPx, heightPx, greys }: Picture, [middleX, middleY]: readonly [number, number]): void {
  const from = (middle: number) => Math.max(0, Math.floor(middle - EDGE_PX));
  const to = (middle: number, end: number) => Math.min(end, Math.ceil(middle + EDGE_PX));
  for (let y = from(middleY); y < to(middleY, heightPx); y++)
    for (let x = from(middleX); x < to(middleX, widthPx); x++) {
      const away = Math.hypot(x + 0.5 - middleX, y + 0.5 - middleY);
      if (away <= EDGE_PX) greys[y * widthPx + x] = away > HEART_PX && away <= HALO_PX ? PAPER : INK;
    }
}
