import { TICKS_PER_S } from '../dive/index.ts';
import { eventWords, leadMoves } from './event-words.ts';
import { depthAtM } from './line.ts';
import { pressShape, pressesOf, type PressShape } from './press-shape.ts';
import { haloed } from './run-sheet-evidence.ts';
import { cssOf, ink, stroke, xOf, type RowPen } from './run-sheet-ink.ts';
import { LINE_PX } from './run-sheet-line.ts';
import type { Sheet } from './run-sheet-layout.ts';
import type { StageView } from './view.ts';
import { crosses, type Box } from './words-place.ts';

/** Points in turn, pixels: across from the row's left, down from depth 0. */
type Points = readonly number[];

/** The presses of gas that a row shows, across from its left: above the line let in, below it let out, as on the water itself. */
export function pressesIn({ changes, recording }: StageView, sheet: Sheet, fromS: number): PressShape[] {
  const { unit, pxPerM, pxPerS, waterPx, startS } = sheet;
  const endTick = (startS + (recording.rows - 1) / 10) * TICKS_PER_S;
  return pressesOf(changes).flatMap((press) => {
    const toTick = Math.min(press.toTick ?? endTick, endTick);
    const x = (press.fromTick / TICKS_PER_S - fromS) * pxPerS;
    const wide = ((toTick - press.fromTick) / TICKS_PER_S) * pxPerS;
    if (press.fromTick >= endTick || x > waterPx || x + wide < 0) return [];
    const { outline, cut } = pressShape(press, toTick, recording, { unit, linePx: LINE_PX * unit, pxPerM, pxPerS });
    const moved = (points: Points) => points.map((at, i) => (i % 2 === 0 ? at + x : at));
    return [{ outline: moved(outline), cut: cut && moved(cut) }];
  });
}

/** What an outline takes up. */
export function boxOf(outline: Points): Box {
  const [xs, ys] = [0, 1].map((from) => outline.filter((_, i) => i % 2 === from));
  return { left: Math.min(...xs!), top: Math.min(...ys!), right: Math.max(...xs!), bottom: Math.max(...ys!) };
}

/** What was done on the way, on the line where it was done: gas, and lead with its kilograms. */
export function drawPresses(pen: RowPen, view: StageView): void {
  const { c, tokens, sheet, fromS } = pen;
  const { unit, pxPerM, waterPx, textPx } = sheet;
  const presses = pressesIn(view, sheet, fromS);
  for (const { outline, cut } of presses) {
    c.beginPath();
    for (let i = 0; i < outline.length; i += 2) c.lineTo(outline[i]!, outline[i + 1]!);
    c.closePath();
    c.fillStyle = cssOf(tokens.gas);
    c.fill();
    ink(c, tokens.ink, 1.2 * unit, 'butt');
    if (cut) stroke(c, tokens.paper, 2.4 * unit, cut);
  }
  const said: (Box & { readonly words: string })[] = [];
  for (const event of leadMoves(view.events)) {
    const atS = event.tick / TICKS_PER_S;
    const x = xOf(pen, atS);
    if (x < 0 || x > waterPx) continue;
    const y = depthAtM(view.recording, atS) * pxPerM;
    const words = eventWords(event) ?? '';
    const wide = c.measureText(words).width;
    const left = Math.max(2 * unit, Math.min(x - wide / 2, waterPx - wide));
    // It hangs as low as it takes for its words to lie on no press.
    const under = presses
      .map(({ outline }) => boxOf(outline))
      .filter((box) => box.left < left + wide && box.right > left && box.bottom > y);
    const linePx = textPx * 1.2;
    const wordsAt = (top: number): Box => ({ left, top, right: left + wide + 4 * unit, bottom: top + linePx });
    let hangs = Math.max(y + 12 * unit, ...under.map(({ bottom }) => bottom - 4 * unit));
    // Nor on those of another.
    while (said.some((one) => crosses(one, wordsAt(hangs + 7 * unit)))) hangs += linePx;
    said.push({ ...wordsAt(hangs + 7 * unit), words });
    stroke(c, tokens.ink, 1.6 * unit, [x, y, x, hangs]);
    c.fillStyle = cssOf(tokens.ink);
    c.fillRect(x - 5 * unit, hangs - unit, 10 * unit, 6 * unit);
  }
  // Over every stem.
  for (const { words, left, top } of said) haloed(pen, words, left, top + textPx * 0.6);
}
