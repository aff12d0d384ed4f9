import { mkdirSync, mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { decode, encode } from 'fast-png';

/** Pixels of the screen that one cell of a kept picture stands for, in both directions. */
const CELL_PX = 4;
/** Levels of 255 to which a kept cell is rounded, so that pictures stay small. */
const STEP = 8;
/** How far off a cell may be, levels of 255: what another release of the browser does to the edge of a letter. */
const OFF = 40;
/** How many cells may be further off: less than half a letter of a label that is gone. */
export const MOST_OFF = 8;

/** A picture by cells of red, green, blue. */
export interface Cells {
  readonly width: number;
  readonly height: number;
  readonly data: Uint8Array;
}

const home = fileURLToPath(new URL('./scenes/', import.meta.url));
const pathOf = (name: string) => join(home, `${name.replaceAll(/[^a-z0-9]+/gi, '-')}.png`);

/** A screenshot by cells, each the mean of its pixels. */
export function cellsOf(png: Uint8Array): Cells {
  const { width: widthPx, height: heightPx, data, channels } = decode(png);
  const [width, height] = [Math.floor(widthPx / CELL_PX), Math.floor(heightPx / CELL_PX)];
  const out = new Uint8Array(width * height * 3);
  for (let i = 0; i < out.length; i++) {
    const [part, column, row] = [i % 3, Math.floor(i / 3) % width, Math.floor(i / 3 / width)];
    let sum = 0;
    for (let y = 0; y < CELL_PX; y++)
      for (let x = 0; x < CELL_PX; x++)
        sum += data[((row * CELL_PX + y) * widthPx + column * CELL_PX + x) * channels + part]!;
    out[i] = Math.min(255, Math.round(sum / CELL_PX ** 2 / STEP) * STEP);
  }
  return { width, height, data: out };
}

/**
 * Cells of one picture that are like nothing in the other, at their place or next to it: so a line that is gone, a word
 * that has moved by more than two cells, another colour. Rounder or harder edges of letters are none.
 */
export function differences(a: Cells, b: Cells): number[] {
  if (a.width !== b.width || a.height !== b.height)
    throw new RangeError(`differences: ${a.width} × ${a.height} and ${b.width} × ${b.height} cells`);
  const out: number[] = [];
  for (let cell = 0; cell < a.width * a.height; cell++)
    if (isStrange(a, b, cell) || isStrange(b, a, cell)) out.push(cell);
  return out;
}

/** Whether a cell has less or more of some colour than the other picture has anywhere about its place. */
function isStrange(of: Cells, other: Cells, cell: number): boolean {
  const { width, height } = of;
  const [x, y] = [cell % width, Math.floor(cell / width)];
  for (let part = 0; part < 3; part++) {
    let [least, most] = [255, 0];
    for (let row = Math.max(0, y - 1); row <= Math.min(height - 1, y + 1); row++)
      for (let column = Math.max(0, x - 1); column <= Math.min(width - 1, x + 1); column++) {
        const level = other.data[(row * width + column) * 3 + part]!;
        if (level < least) least = level;
        if (level > most) most = level;
      }
    const level = of.data[cell * 3 + part]!;
    if (level < least - OFF || level > most + OFF) return true;
  }
  return false;
}

/** Keeps a picture as what a scene looks like from now on. */
export function keepScene(name: string, cells: Cells): void {
  mkdirSync(home, { recursive: true });
  writeFileSync(pathOf(name), encode({ ...cells, channels: 3, depth: 8 }));
}

/** What is wrong with a scene: nothing, or words that say where to look at the difference. */
export function troubleWith(name: string, now: Cells): string | null {
  const kept = keptScene(name);
  if (!kept) return `there is no picture of "${name}" yet: npm run scenes -- --renew, and look at it`;
  if (kept.width !== now.width || kept.height !== now.height)
    return `"${name}" is ${now.width} × ${now.height} cells, was ${kept.width} × ${kept.height}`;
  const off = differences(kept, now);
  if (off.length <= MOST_OFF) return null;
  return `"${name}" looks different in ${off.length} cells; was, is, and where: ${drawDifference(name, kept, now, off)}`;
}

function keptScene(name: string): Cells | null {
  try {
    const { width, height, data } = decode(readFileSync(pathOf(name)));
    return { width, height, data: Uint8Array.from(data) };
  } catch (problem) {
    if ((problem as NodeJS.ErrnoException).code === 'ENOENT') return null;
    throw problem;
  }
}

/** Saves how it was, how it is, and the cells that differ, one below the other; returns where. */
function drawDifference(name: string, kept: Cells, now: Cells, off: readonly number[]): string {
  const { width, height } = kept;
  const where = new Uint8Array(kept.data.length).fill(255);
  for (const cell of off) where.set([200, 0, 0], cell * 3);
  const data = new Uint8Array(kept.data.length * 3);
  [kept.data, now.data, where].forEach((each, i) => data.set(each, i * kept.data.length));
  const path = join(mkdtempSync(join(tmpdir(), 'midwater-scene-')), `${name.replaceAll(/[^a-z0-9]+/gi, '-')}.png`);
  writeFileSync(path, encode({ width, height: height * 3, data, channels: 3, depth: 8 }));
  return path;
}
