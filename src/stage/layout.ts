import { tokensOf, type Tokens } from './tokens.ts';
import type { StageView } from './view.ts';

/** Typefaces in the order of preference. */
export const FACE: readonly string[] = ['Figtree Variable', 'Figtree', 'DejaVu Sans', 'sans-serif'];

/** What one size of the stage and one theme fix: a scene is built for it and thrown away when it changes. */
export interface Style {
  readonly tokens: Tokens;
  readonly theme: StageView['theme'];
  readonly projector: boolean;
  readonly widthPx: number;
  readonly heightPx: number;
  readonly pixelRatio: number;
  /** Width of the water; the depth scale takes the rest. */
  readonly waterPx: number;
  /** Where `now` stands: two thirds of the water; nearer the left on a narrow page with a map. */
  readonly nowX: number;
  /** Whether a map stands before the scale, and where the water left of it ends: at the scale without one. */
  readonly mapped: boolean;
  readonly freePx: number;
  /** Height at the foot that the axis of a map takes, or the bars of an overlay, so many one below the other. */
  readonly footPx: number;
  readonly bars: number;
  /** Size unit: 1 on a laptop at 720 lines. */
  readonly unit: number;
  readonly textPx: number;
  readonly linePx: number;
  readonly edgePx: number;
  /** Narrow: every fifth numeral only, fewer ticks, fewer words. */
  readonly narrow: boolean;
  /** The diver is enlarged rather than shorter than this. */
  readonly leastDiverPx: number;
}

/** The style of a size in CSS pixels. */
export function styleOf(
  widthPx: number,
  heightPx: number,
  pixelRatio: number,
  theme: StageView['theme'],
  projector: boolean,
  mapped = false,
  bars = 0,
): Style {
  const narrow = widthPx < 520;
  const unit = projector
    ? Math.max(1.2, Math.min(heightPx / 470, widthPx / 700))
    : Math.min(Math.max(Math.min(widthPx / 1060, heightPx / 470), 0.88), 1.35);
  const textPx = Math.round(projector ? Math.max(28 * Math.min(1, heightPx / 850), 14 * unit) : 14 * unit);
  const scalePx = Math.round(narrow ? 40 : 44 * Math.max(1, textPx / 14) + (projector ? 8 : 0));
  const waterPx = Math.max(widthPx - scalePx, 1);
  const nowX = Math.round(waterPx * (mapped && narrow ? 0.45 : 2 / 3));
  return {
    tokens: tokensOf(theme),
    theme,
    projector,
    widthPx,
    heightPx,
    pixelRatio,
    waterPx,
    nowX,
    mapped,
    freePx: mapped ? Math.round(nowX + (waterPx - nowX) * 0.25) : waterPx,
    footPx: mapped
      ? Math.ceil(textPx * 3.9 + 9 * unit)
      : bars > 0
        ? Math.ceil(bars * barPx(textPx, heightPx) + textPx * (heightPx < LOW_PX ? 0.9 : 2))
        : 0,
    bars,
    unit,
    textPx,
    linePx: 3.6 * unit,
    edgePx: (projector ? 2 : 1.5) * Math.max(1, unit),
    narrow,
    leastDiverPx: 110 * Math.max(1, projector ? unit : 1),
  };
}

/** Lower than this bars stand closer, and say no more than their names. */
export const LOW_PX = 300;

/** Height that a bar at the foot takes with the gap to the next, pixels. */
export function barPx(textPx: number, heightPx: number): number {
  return Math.ceil(textPx * (heightPx < LOW_PX ? 1.5 : 1.9));
}
