import { TICKS_PER_ROW, TICKS_PER_S } from '../dive/index.ts';
import { gapWords, offWords, outsideWords, toldGaps, type LineEvidence } from '../lesson/index.ts';
import { haloed } from './run-sheet-evidence.ts';
import { stroke, type RowPen } from './run-sheet-ink.ts';
import type { Sheet } from './run-sheet-layout.ts';
import { ringsOn } from './run-sheet-rings.ts';
import { grown, isOff, isWithin, standingIn, type Standing } from './run-sheet-taken.ts';
import type { Box } from './words-place.ts';
import type { BranchLine, StageView } from './view.ts';

/** Words of another line are looked a place for so often along it, seconds. */
const ALONG_S = 1.5;

/** Something on the sheet that has words, in several lengths, the fullest first, and what they stand beside. */
interface Labelled {
  readonly says: readonly string[];
  readonly row: number;
  readonly beside: Box;
}

/** Words that have their place, pixels below the top of their row, with the hair to what they are about. */
export interface PlacedWords {
  readonly words: string;
  readonly row: number;
  readonly box: Box;
  readonly hair: Box | null;
}

/** Writes the words of a sheet. */
export function drawSheetWords(pen: Omit<RowPen, 'fromS'>, view: StageView): void {
  const { c, tokens, sheet } = pen;
  const pitchPx = sheet.heightPx / sheet.rows;
  for (const { words, row, box, hair } of wordsOn(view, sheet, (words) => c.measureText(words).width)) {
    const rowY = row * pitchPx;
    if (hair) stroke(c, tokens.ink, sheet.unit, [hair.left, rowY + hair.top, hair.left, rowY + hair.bottom]);
    haloed(pen, words, box.left + 2, rowY + (box.top + box.bottom) / 2);
  }
}

/**
 * Words of gaps and holds, and the names of other lines, each where it is free of line, rings and other words, and where it can be of
 * other lines. Of gaps and holds what finds no place is in the list beside; a name has a place always, off those words by a line.
 */
export function wordsOn(view: StageView, sheet: Sheet, widthOf: (words: string) => number): PlacedWords[] {
  const { textPx, rows } = sheet;
  const { evidence, branches = [] } = view;
  const rings = ringsOn(view, sheet);
  const standing = Array.from({ length: rows }, (_, row) => standingIn(view, sheet, rings, row));
  const placed: PlacedWords[] = [];
  for (const { says, row, beside } of evidence ? labelled(sheet, evidence) : []) {
    const before = placed.filter((one) => one.row === row).map(({ box }) => box);
    const places = says.flatMap((words) =>
      placesAbout(beside, widthOf(words) + 4, textPx * 1.15).map((box): PlacedWords => {
        return { words, row, box, hair: hairOf(box, beside, textPx) };
      }),
    );
    // Neither words nor their hair lie on other words; with a little room where there is some, or they would read on from them.
    const free = (room: number) => {
      const boxes = before.map(({ left, top, right, bottom }) => grown(left, top, right, bottom, room));
      return places.filter(({ box, hair }) => isOff(box, boxes) && (!hair || isOff(hair, boxes)));
    };
    const best = choicesOf(free(textPx * 0.4), standing)[0] ?? choicesOf(free(0), standing)[0];
    if (best) placed.push(best);
  }
  for (const branch of branches) {
    const all = shortened(branch.words).map((words) => placesAlong(branch, words, sheet, widthOf(words) + 4, standing));
    const [near, parted] = [all.flatMap((one) => one.near), all.flatMap((one) => one.parted)];
    const offWords = (places: readonly PlacedWords[], room: number) =>
      places.filter(({ box: { left, top, right, bottom }, row, hair }) => {
        const others = placed.filter((one) => one.row === row);
        const boxes = others.flatMap((one) => (one.hair ? [one.box, one.hair] : [one.box]));
        return isOff(grown(left, top, right, bottom, room), boxes) && (!hair || isOff(hair, boxes));
      });
    const best =
      choicesOf(offWords(near, textPx), standing, true)[0] ??
      choicesOf(offWords(parted, textPx), standing, true)[0] ??
      offWords([...near, ...parted], 0).find((one) => isWithin(one.box, standing[one.row]!));
    if (best) placed.push(best);
  }
  return placed;
}

/** The words of another line, and what of them stands before the colon: "ghost", a letter. */
function shortened(words: string): string[] {
  const end = words.indexOf(':');
  return end > 0 ? [words, words.slice(0, end)] : [words];
}

/** Of some places those that are open, the best first: off all that stands there, off all but others' lines; `over`: also over thin lines. */
function choicesOf(places: readonly PlacedWords[], standing: readonly Standing[], over = false): PlacedWords[] {
  const open = places.filter(({ box, row }) => isWithin(box, standing[row]!) && isOff(box, standing[row]!.boxes));
  const offEdges = open.filter(({ box, row }) => isOff(box, standing[row]!.edges));
  const offAll = offEdges.filter(({ box, row }) => isOff(box, standing[row]!.others));
  return [...offAll, ...offEdges, ...(over ? open : [])];
}

/**
 * Places for the name of another line: at its end first, then back along it, above and below, with a hair where they stand off; apart those
 * that the line of the dive parts from it.
 */
function placesAlong(
  { recording, fromS }: BranchLine,
  words: string,
  sheet: Sheet,
  width: number,
  standing: readonly Standing[],
): { readonly near: PlacedWords[]; readonly parted: PlacedWords[] } {
  const { heightPx, rows, textPx, unit } = sheet;
  const pitchPx = heightPx / rows;
  const height = textPx * 1.15;
  const endS = (recording.startTick + (recording.rows - 1) * TICKS_PER_ROW) / TICKS_PER_S;
  const out = { near: [] as PlacedWords[], parted: [] as PlacedWords[] };
  for (let atS = endS; atS >= fromS; atS -= ALONG_S) {
    const { x, y } = sheet.place(atS, recording);
    const row = Math.min(rows - 1, Math.floor(y / pitchPx));
    const { within, boxes } = standing[row]!;
    const middle = y - row * pitchPx;
    const add = (to: PlacedWords[], left: number, top: number, hair: Box | null) =>
      to.push({ words, row, box: { left, top, right: left + width, bottom: top + height }, hair });
    if (atS === endS) add(out.near, x + 6 * unit, middle - height / 2, null);
    for (const away of [0.35, 0.9, 1.6, 2.4, 3.4])
      for (const top of [middle - height * (1 + away), middle + height * away]) {
        const hair = { left: x, right: x, top: Math.min(middle, top + height), bottom: Math.max(middle, top) };
        const isNear = isOff(hair, boxes);
        for (const share of [0.5, 0.9, 0.1]) {
          const left = Math.min(Math.max(x - share * width, within.left), within.right - width);
          add(isNear ? out.near : out.parted, left, top, isNear && away > 1 ? hair : null);
        }
      }
  }
  return out;
}

/** The upright hair from words that stand off to what they are about; null where they stand close, or beside it. */
function hairOf(words: Box, about: Box, textPx: number): Box | null {
  const below = words.top > about.bottom;
  const [top, bottom] = below ? [about.bottom, words.top] : [words.bottom, about.top];
  if (bottom - top < textPx) return null;
  const [left, right] = [Math.max(words.left, about.left), Math.min(words.right, about.right)];
  const x = (left + right) / 2;
  return { left: x, top, right: x, bottom };
}

/** Places for words close to something: beside it, then below and above, from its left end to its right one. */
function placesAbout({ left, top, right, bottom }: Box, width: number, height: number): Box[] {
  const places: Box[] = [];
  for (const away of [0, 0.6, 1.2, 2, 3]) {
    const ys = [bottom + away * height, top - height - away * height];
    for (const y of ys)
      for (const share of [0.5, 0.25, 0.75, 0, 1]) {
        const x = left + share * (right - left - width);
        places.push({ left: x, top: y, right: x + width, bottom: y + height });
      }
  }
  const middle = (top + bottom - height) / 2;
  for (const x of [right, left - width])
    places.unshift({ left: x, top: middle, right: x + width, bottom: middle + height });
  return places;
}

function labelled(sheet: Sheet, { gaps, holds }: LineEvidence): Labelled[] {
  const { rows, startS, rowS, pxPerS, pxPerM, headPx, topM, waterPx, unit } = sheet;
  const rowAt = (atS: number) => Math.min(rows - 1, Math.max(0, Math.floor((atS - startS) / rowS)));
  const x = (s: number, row: number) => Math.min(waterPx, Math.max(0, (s - startS - row * rowS) * pxPerS));
  const y = (depthM: number) => headPx + (depthM - topM) * pxPerM;
  const about = (fromS: number, toS: number, highM: number, lowM: number, row: number) =>
    grown(x(fromS, row), y(highM), x(toS, row), y(lowM), 4 * unit);
  return [
    ...toldGaps(gaps).map((gap) => {
      const row = rowAt(gap.toS);
      const [high, low] = [Math.min(gap.allowedM, gap.reachedM), Math.max(gap.allowedM, gap.reachedM)];
      return {
        says: [gapWords(gap), `${gap.metres.toFixed(1)} m`],
        row,
        beside: { ...about(gap.toS, gap.toS, high, low, row), right: x(gap.toS, row) + 9 * unit },
      };
    }),
    ...holds.map((held) => {
      const row = rowAt((held.fromS + held.toS) / 2);
      const off = Math.max(held.bandM, held.rmsM);
      const words = [offWords(held), outsideWords(held)].filter((one) => one !== '');
      return {
        says: [words.join(', '), words[0]!],
        row,
        beside: about(held.fromS, held.toS, held.atM - off, held.atM + off, row),
      };
    }),
  ];
}
