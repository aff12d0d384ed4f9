import { gapWords, offWords, outsideWords, toldGaps, type LineEvidence } from '../lesson/index.ts';
import { depthAtM } from './line.ts';
import { haloed } from './run-sheet-evidence.ts';
import { stroke, type RowPen } from './run-sheet-ink.ts';
import type { Sheet } from './run-sheet-layout.ts';
import { RING_PX, ringsOn } from './run-sheet-rings.ts';
import type { Box } from './words-place.ts';
import type { StageView } from './view.ts';

/** Words keep off so long a piece of the line at once, seconds. */
const PIECE_S = 1;

/** Something on the sheet that has words, in several lengths, the fullest first, and what they stand beside. */
interface Labelled {
  readonly says: readonly string[];
  readonly row: number;
  readonly beside: Box;
}

/** Words of gaps and holds, each where it is free; what finds no place is in the list beside. */
export function drawEvidenceWords(pen: Omit<RowPen, 'fromS'>, view: StageView, evidence: LineEvidence): void {
  const { c, tokens, sheet } = pen;
  const { rows, heightPx, textPx, unit } = sheet;
  const taken = Array.from({ length: rows }, (_, row) => takenIn(view, sheet, row, evidence));
  const words = taken.map((): Box[] => []);
  for (const { says, row, beside } of labelled(sheet, evidence)) {
    const places = says.flatMap((one) =>
      placesAbout(beside, c.measureText(one).width + 4, textPx * 1.15).map((box) => ({ words: one, box })),
    );
    // Neither words nor their hair lie on other words.
    const place = places.find(({ box }) => {
      const hair = hairOf(box, beside, textPx);
      return isFree(box, taken[row]!) && (!hair || words[row]!.every((one) => isOff(hair, one)));
    });
    if (!place) continue;
    taken[row]!.boxes.push(place.box);
    words[row]!.push(place.box);
    const rowY = (row * heightPx) / rows;
    const hair = hairOf(place.box, beside, textPx);
    if (hair) stroke(c, tokens.ink, unit, [hair.left, rowY + hair.top, hair.left, rowY + hair.bottom]);
    haloed(pen, place.words, place.box.left + 2, rowY + (place.box.top + place.box.bottom) / 2);
  }
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

/** Boxes that words keep off, and the box that they keep within. */
interface Standing {
  readonly boxes: Box[];
  readonly within: Box;
}

/** Whether words may stand there. */
function isFree(box: Box, { boxes, within }: Standing): boolean {
  if (box.left < within.left || box.right > within.right || box.top < within.top || box.bottom > within.bottom)
    return false;
  return boxes.every((one) => isOff(box, one));
}

function isOff(a: Box, b: Box): boolean {
  return a.left >= b.right || b.left >= a.right || a.top >= b.bottom || b.top >= a.bottom;
}

/** What stands in a row already: its line, its rings and bookmarks, and the edges of places to be. */
function takenIn(view: StageView, sheet: Sheet, row: number, { holds, gaps }: LineEvidence): Standing {
  const { unit, headPx, depthPx, waterPx, rowS, startS, pxPerS, pxPerM, topM } = sheet;
  const fromS = startS + row * rowS;
  const x = (s: number) => (s - fromS) * pxPerS;
  const y = (depthM: number) => headPx + (depthM - topM) * pxPerM;
  const taken: Standing = {
    boxes: [],
    within: { left: 0, top: Math.max(headPx, y(0)) + 2 * unit, right: waterPx, bottom: headPx + depthPx },
  };
  const { recording } = view;
  const endS = Math.min(fromS + rowS, startS + (recording.rows - 1) / 10);
  for (let s = fromS; s < endS; s += PIECE_S) {
    const ys = [s, s + PIECE_S / 2, s + PIECE_S].map((one) => y(depthAtM(recording, Math.min(one, endS))));
    taken.boxes.push(grown(x(s), Math.min(...ys), x(s + PIECE_S), Math.max(...ys), 4 * unit));
  }
  for (const ring of ringsOn(view, sheet))
    if (ring.row === row) taken.boxes.push(grown(ring.x, ring.inRowY, ring.x, ring.inRowY, (RING_PX + 1) * unit));
  for (const { fromS: from, toS: to, atM, bandM, rmsM } of holds)
    for (const off of [-bandM, -rmsM, rmsM, bandM])
      taken.boxes.push(grown(x(from), y(atM + off), x(to), y(atM + off), unit));
  for (const { toS, allowedM, reachedM } of gaps) {
    const [high, low] = [Math.min(allowedM, reachedM), Math.max(allowedM, reachedM)];
    taken.boxes.push(grown(x(toS), y(high), x(toS) + 6 * unit, y(low), unit));
  }
  return taken;
}

function grown(left: number, top: number, right: number, bottom: number, by: number): Box {
  return { left: left - by, top: top - by, right: right + by, bottom: bottom + by };
}
