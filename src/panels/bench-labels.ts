/*
 * Words in a picture, in CSS pixels: each beside what it belongs to, none over another, none outside. Where the nearest place is
 * taken they stand further off, and a thin line leads to them.
 */

/** An upright rectangle of the picture, pixels. */
export interface Box {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

export interface Line {
  readonly kind: string;
  readonly text: string;
}

/** Lines of words that stand together. */
export interface Label {
  /** Tells it from others from frame to frame. */
  readonly key: string;
  readonly lines: readonly Line[];
  readonly sizePx: number;
  /** What it belongs to. */
  readonly of: Box;
  /** Where it stands best, before anything else is tried. */
  readonly side: Side;
  /** Belongs to the only thing there: no line needs to lead to it. */
  readonly alone?: boolean;
  /** Its one line is written from its foot upward: there is no room for it to lie beside its neighbours. */
  readonly turned?: boolean;
}

export type Side = 'right' | 'left' | 'above' | 'below';

export interface PlacedLabel extends Label {
  readonly box: Box;
  readonly anchor: 'start' | 'middle' | 'end';
  /** From what it belongs to, where it stands away from that. */
  readonly leader: readonly [x: number, y: number, x2: number, y2: number] | null;
}

/** Lines are so far apart, and so much of a line stands over its foot, in sizes of the letters. */
export const LINE_EM = 1.25;
const OVER_EM = 0.98;
/** Room around what a label belongs to, and between words, pixels. */
const GAP_PX = 8;
const APART_PX = 3;
/** A label may be so many of its lines, and so many quarters of its width, away. */
const ROWS = 6;
const COLUMNS = 6;
/** What it costs to cover what is not words, for each pixel squared, and to leave the place of a frame ago, pixels. */
const COVERING = 0.6;
const STAYS_PX = 14;

const EM = new Map<string, number>();

/** How wide words of the page's letters are, pixels. Without a screen it is estimated, on the wide side. */
export function widthPx(text: string, sizePx: number): number {
  let em = 0;
  for (const letter of text) {
    let wide = EM.get(letter);
    if (wide === undefined) EM.set(letter, (wide = measured(letter)));
    em += wide;
  }
  return em * sizePx;
}

let pen: CanvasRenderingContext2D | null | undefined;

function measured(letter: string): number {
  pen ??= document.createElement('canvas').getContext('2d');
  if (!pen) return 0.62;
  pen.font = `600 100px ${getComputedStyle(document.body).fontFamily}`;
  return pen.measureText(letter).width / 100;
}

/**
 * Places labels one after the other, the first best; one for which there is no room at all is left out.
 * @param before where each stood a frame ago, which is kept up to date
 */
export function placeLabels(
  labels: readonly Label[],
  within: Box,
  taken: readonly Box[],
  covered: readonly Box[],
  before: Map<string, number>,
): PlacedLabel[] {
  const words = [...taken];
  return labels.flatMap((label) => {
    const placed = placeOne(label, within, words, covered, before);
    if (placed) words.push(placed.box);
    return placed ?? [];
  });
}

function placeOne(
  label: Label,
  within: Box,
  words: readonly Box[],
  covered: readonly Box[],
  before: Map<string, number>,
): PlacedLabel | null {
  const long = Math.max(...label.lines.map(({ text }) => widthPx(text, label.sizePx))) + 1;
  const deep = label.lines.length * label.sizePx * LINE_EM;
  const [wide, high] = label.turned ? [deep, long] : [long, deep];
  const last = before.get(label.key);
  let best: { readonly at: number; readonly box: Box; readonly cost: number; readonly anchor: Anchor } | null = null;
  let at = -1;
  for (const { left, top, anchor, cost } of places(label, wide, high)) {
    at++;
    const base = cost - (at === last ? STAYS_PX : 0);
    if (best && base >= best.cost) continue;
    const box = { left, top, right: left + wide, bottom: top + high };
    if (!inside(box, within) || words.some((one) => overlap(one, box, APART_PX) > 0)) continue;
    let all = base;
    for (const one of covered) all += COVERING * overlap(one, box, 0);
    if (!best || all < best.cost) best = { at, box, cost: all, anchor };
  }
  if (best) before.set(label.key, best.at);
  const { box, anchor } = best ?? { box: anywhere(label.of, wide, high, within, words), anchor: 'start' as const };
  return box && { ...label, box, anchor, leader: label.alone ? null : leaderTo(label.of, box, label.sizePx) };
}

type Anchor = PlacedLabel['anchor'];

/** Places about a thing, the side that is wanted first. */
function* places({ of, side, sizePx, turned }: Label, wide: number, high: number) {
  const [x, y] = [(of.left + of.right) / 2, (of.top + of.bottom) / 2];
  const beside = (to: Side) => {
    if (to === 'right') return { left: of.right + GAP_PX, top: y - high / 2, anchor: 'start' as Anchor };
    if (to === 'left') return { left: of.left - GAP_PX - wide, top: y - high / 2, anchor: 'end' as Anchor };
    const top = to === 'above' ? of.top - GAP_PX - high : of.bottom + GAP_PX;
    return { left: x - wide / 2, top, anchor: 'middle' as Anchor };
  };
  // What is turned stands over or under its own thing: beside it, it would be over its neighbour.
  const all = turned ? (['above', 'below'] as const) : (['above', 'right', 'left', 'below'] as const);
  const sides = [side, ...all.filter((one) => one !== side)];
  const columns = turned ? 1 : COLUMNS;
  for (const [i, one] of sides.entries()) {
    const first = beside(one);
    const flat = one === 'above' || one === 'below';
    const away = one === 'above' ? -1 : 1;
    for (let row = 0; row <= ROWS; row++)
      for (let column = 0; column <= columns; column++)
        for (const hand of column === 0 ? [1] : [1, -1]) {
          // Over and under a thing labels go away from it by lines and aside by quarters; beside it they go up and down, then on.
          const down = flat ? away * row * sizePx * LINE_EM : hand * column * sizePx * 0.6;
          const right = flat ? (hand * column * wide) / 4 : (one === 'right' ? 1 : -1) * row * sizePx;
          const cost = 6 * i + Math.abs(down) + 0.7 * Math.abs(right);
          yield { left: first.left + right, top: first.top + down, anchor: first.anchor, cost };
        }
  }
}

function inside(box: Box, within: Box): boolean {
  return box.left >= within.left && box.right <= within.right && box.top >= within.top && box.bottom <= within.bottom;
}

function overlap(a: Box, b: Box, apart: number): number {
  const wide = Math.min(a.right, b.right) - Math.max(a.left, b.left) + apart;
  const high = Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top) + apart;
  return wide > 0 && high > 0 ? wide * high : 0;
}

/** The free place of a picture that is nearest to a thing, in steps of a few pixels. */
function anywhere(of: Box, wide: number, high: number, within: Box, words: readonly Box[]): Box | null {
  let best: Box | null = null;
  let nearest = Infinity;
  for (let top = within.top; top + high <= within.bottom; top += 6)
    for (let left = within.left; left + wide <= within.right; left += 10) {
      const far = Math.hypot(left + wide / 2 - (of.left + of.right) / 2, top + high / 2 - (of.top + of.bottom) / 2);
      if (far >= nearest) continue;
      const box = { left, top, right: left + wide, bottom: top + high };
      if (words.some((one) => overlap(one, box, APART_PX) > 0)) continue;
      [best, nearest] = [box, far];
    }
  return best;
}

/** A line is drawn where a label is further off than a line of words. */
function leaderTo(of: Box, box: Box, sizePx: number): PlacedLabel['leader'] {
  const near = (low: number, high: number, value: number) => Math.min(Math.max(value, low), high);
  const [x, y] = [(of.left + of.right) / 2, (of.top + of.bottom) / 2];
  const [x2, y2] = [near(box.left, box.right, x), near(box.top, box.bottom, y)];
  const [x1, y1] = [near(of.left, of.right, x2), near(of.top, of.bottom, y2)];
  return Math.hypot(x2 - x1, y2 - y1) > 0.9 * sizePx + GAP_PX ? [x1, y1, x2, y2] : null;
}

/** Where the lines of a label stand: their foot and the side they begin at. */
export function linesOf({ box, anchor, lines, sizePx, turned }: PlacedLabel) {
  if (turned)
    return lines.map((line, i) => ({ ...line, x: box.left + (i * LINE_EM + OVER_EM) * sizePx, y: box.bottom }));
  const x = anchor === 'start' ? box.left : anchor === 'end' ? box.right : (box.left + box.right) / 2;
  return lines.map((line, i) => ({ ...line, x, y: box.top + (i * LINE_EM + OVER_EM) * sizePx }));
}

/** A box around words that stand where they must. */
export function boxOf(text: string, sizePx: number, x: number, y: number, anchor: Anchor): Box {
  const wide = widthPx(text, sizePx);
  const left = anchor === 'start' ? x : anchor === 'end' ? x - wide : x - wide / 2;
  const top = y - OVER_EM * sizePx;
  return { left, top, right: left + wide, bottom: top + LINE_EM * sizePx };
}
