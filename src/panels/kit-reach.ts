import { nothing, svg, type SVGTemplateResult } from 'lit';
import type { KitHover } from './kit-view.ts';

/** A depth axis with the breath reach before and after a change: dashed what was, amber what is. */
export interface ReachAxis {
  readonly deepestM: number;
  readonly heightPx: number;
  /** Distance of the two brackets from the axis. */
  readonly atPx: readonly [beforePx: number, afterPx: number];
  /** Depths that are written beside the axis, as they are written; none on a small one. */
  readonly ticks: readonly { readonly depthM: number; readonly words: string }[];
  readonly axisPx: number;
}

/** Least height of a bracket, so that a narrow reach is still seen. */
const LEAST_PX = 2;

/** Draws an axis with its brackets; the words stand beside it in the page. */
export function reachSvg(axis: ReachAxis, before: KitHover | null, after: KitHover | null): SVGTemplateResult {
  const { axisPx: x, heightPx } = axis;
  const y = (depthM: number) => yOf(axis, depthM);
  return svg`<line class="axis" x1=${x} x2=${x} y1="1" y2=${heightPx - 1}></line>
    ${axis.ticks.map(
      ({ depthM, words }) => svg`<line class="axis" x1=${x - 4} x2=${x + 4} y1=${y(depthM)} y2=${y(depthM)}></line>
        <text class="tick" x=${x - 8} y=${y(depthM) + 4.5} text-anchor="end">${words}</text>`,
    )}
    ${bracket(axis, before, axis.atPx[0], 'was')} ${bracket(axis, after, axis.atPx[1], 'is')}`;
}

/** Height of a depth on the axis, pixels from the top. */
export function yOf({ deepestM, heightPx }: ReachAxis, depthM: number): number {
  return 1 + (heightPx - 2) * Math.min(Math.max(depthM / deepestM, 0), 1);
}

function bracket(axis: ReachAxis, hover: KitHover | null, atPx: number, kind: 'was' | 'is') {
  if (!hover?.reachM) return nothing;
  const top = yOf(axis, hover.reachM[0]);
  const bottom = Math.max(yOf(axis, hover.reachM[1]), top + LEAST_PX);
  const x = axis.axisPx + atPx;
  const path = `M${x - 5} ${top}H${x}V${bottom}H${x - 5}`;
  return svg`${kind === 'is' ? svg`<path class="bracket-edge" d=${path}></path>` : nothing}
    <path class="bracket ${kind}" d=${path}></path>`;
}
