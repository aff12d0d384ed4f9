import { PX_PER_KGF } from './geometry.ts';
import type { Style } from './layout.ts';
import type { PullBar, StageOverlay } from './view.ts';

/** Steps of the scale of pulls, kilograms. */
const STEP_KGF = 4;

/** How many bars an overlay draws at the foot. */
export function barsOf(overlay: StageOverlay | null | undefined): number {
  if (overlay?.kind === 'volumes') return overlay.stores.length;
  return overlay?.kind === 'ledger' ? 2 : 0;
}

/** Where bars begin, and how much room they have up to the words at their free end, pixels. */
export function barsRoom({ waterPx, textPx, unit, narrow, projector }: Style): {
  readonly x: number;
  readonly px: number;
} {
  const x = textPx * 3.6 + 8 * unit;
  const endPx = projector ? textPx * 0.8 : textPx * (narrow ? 4.4 : 10.5);
  return { x, px: Math.max(waterPx - x - endPx, 20) };
}

/** Pixels a kilogram of pull in the bars of a ledger, and for the arrow beside them: no more than the arrow has by itself. */
export function ledgerPxPerKgf(style: Style, up: readonly PullBar[], down: readonly PullBar[]): number {
  const most = Math.max(sumKgf(up), sumKgf(down));
  const full = Math.max(Math.ceil((most + 0.5) / STEP_KGF) * STEP_KGF, STEP_KGF);
  return Math.min(barsRoom(style).px / full, PX_PER_KGF * style.unit);
}

export function sumKgf(parts: readonly PullBar[]): number {
  return parts.reduce((sum, { kgf }) => sum + kgf, 0);
}

/** What the numbers on those parts come to. */
export function saidSumKgf(parts: readonly PullBar[]): number {
  return parts.reduce((sum, { saidKgf }) => sum + saidKgf, 0);
}

/** Parts too short to bear their words, put together as the rest, at the end that stands still; a part that is gas keeps its place. */
export function gathered(parts: readonly PullBar[], fits: (part: PullBar) => boolean): readonly PullBar[] {
  const short = parts.filter((part) => !part.isGas && (part.words === 'rest' || !fits(part)));
  if (short.length < 2) return parts;
  return [
    { words: 'rest', kgf: sumKgf(short), isGas: false, saidKgf: saidSumKgf(short) },
    ...parts.filter((part) => !short.includes(part)),
  ];
}
