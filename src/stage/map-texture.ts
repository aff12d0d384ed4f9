import type { Graphics } from 'pixi.js';
import type { Style } from './layout.ts';
import type { AreaMeans } from './map-areas.ts';
import { levelsOf, uprightOf, type Shape } from './map-shape.ts';

/** Heights between which a texture is drawn: the picture and a little around it. */
export type Window = readonly [top: number, bottom: number];

/**
 * Draws the inside of an area: plain paper where nothing is needed, denser ink the more it takes, solid ink where all is lost. No
 * slanting lines, whose slope would read as a speed.
 */
export function drawTexture(g: Graphics, means: AreaMeans, shape: Shape, style: Style, window: Window): void {
  const { tokens, unit } = style;
  const px = (units: number) => Math.max(2, Math.round(units * unit));
  const stroke = (units: number) => g.stroke({ width: units * unit, color: tokens.secondary });
  if (means === 'lost') fillShape(g, shape, tokens.ink);
  if (means === 'breath') dots(g, shape, window, px(13), 1.6 * unit, tokens.secondary);
  if (means === 'fins') {
    levels(g, shape, window, px(10));
    stroke(1.2);
  }
  if (means === 'gas') {
    uprights(g, shape, window, px(7));
    stroke(1.2);
  }
  if (means === 'all') {
    levels(g, shape, window, px(9));
    uprights(g, shape, window, px(9));
    stroke(1.2);
  }
  if (means === 'lead') {
    bricks(g, shape, window, px(9), px(18));
    stroke(2.6);
  }
}

/** The edge of an area as one closed line. */
export function fillShape(g: Graphics, { xs, tops, bottoms }: Shape, color: number): void {
  const points: number[] = [];
  xs.forEach((x, i) => points.push(x, tops[i]!));
  for (let i = xs.length - 1; i >= 0; i--) points.push(xs[i]!, bottoms[i]!);
  g.poly(points).fill(color);
}

/** Multiples of a step in a stretch. */
function gridIn(from: number, to: number, step: number): number[] {
  const first = Math.ceil(from / step);
  const count = Math.max(0, Math.floor(to / step) - first + 1);
  return Array.from({ length: count }, (_, i) => (first + i) * step);
}

function rowsOf({ tops, bottoms }: Shape, [from, to]: Window, step: number): number[] {
  return gridIn(Math.max(from, Math.min(...tops)), Math.min(to, Math.max(...bottoms)), step);
}

function levels(g: Graphics, shape: Shape, window: Window, step: number): void {
  for (const y of rowsOf(shape, window, step))
    for (const [left, right] of levelsOf(shape, y)) g.moveTo(left, y).lineTo(right, y);
}

function uprights(g: Graphics, shape: Shape, [from, to]: Window, step: number): void {
  for (const x of gridIn(shape.xs[0]!, shape.xs[shape.xs.length - 1]!, step)) {
    const [top, bottom] = uprightOf(shape, x)!;
    const [y0, y1] = [Math.max(top, from), Math.min(bottom, to)];
    if (y1 > y0) g.moveTo(x, y0).lineTo(x, y1);
  }
}

function bricks(g: Graphics, shape: Shape, window: Window, rowPx: number, longPx: number): void {
  levels(g, shape, window, rowPx);
  for (const y of rowsOf(shape, window, rowPx)) {
    const aside = Math.round(y / rowPx) % 2 === 0 ? 0 : longPx / 2;
    for (const [left, right] of levelsOf(shape, y))
      for (const grid of gridIn(left - aside, right - aside, longPx)) {
        const end = Math.min(y + rowPx, uprightOf(shape, grid + aside)![1]);
        if (end > y) g.moveTo(grid + aside, y).lineTo(grid + aside, end);
      }
  }
}

function dots(g: Graphics, shape: Shape, window: Window, step: number, radius: number, color: number): void {
  for (const y of rowsOf(shape, window, step)) {
    const aside = Math.round(y / step) % 2 === 0 ? 0 : step / 2;
    for (const [left, right] of levelsOf(shape, y))
      for (const grid of gridIn(left - aside + radius, right - aside - radius, step))
        g.rect(grid + aside - radius, y - radius, 2 * radius, 2 * radius);
  }
  g.fill(color);
}
