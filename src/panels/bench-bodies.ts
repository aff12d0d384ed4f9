import { svg } from 'lit';
import type { DeepBody } from '../bench/index.ts';
import type { Box } from './bench-labels.ts';

/** Volumes are drawn as balls: radius goes with the cube root, a litre has the given one. What is firm is ink, gas amber. */
export function bubbleMark(x: number, y: number, litrePx: number, { gasM3, firmM3 }: DeepBody) {
  const r = litrePx * Math.cbrt(1000 * (gasM3 > 0 ? gasM3 : firmM3));
  const box: Box = { left: x - r, right: x + r, top: y - r, bottom: y + r };
  return { box, picture: svg`<circle class=${gasM3 > 0 ? 'gas-ball' : 'firm-ball'} cx=${x} cy=${y} r=${r}></circle>` };
}

/** An open bottle so high, mouth down, with a bubble in its top that fills it at 16 mL. */
export function bottleMark(x: number, y: number, high: number, { gasM3 }: DeepBody) {
  const half = 0.21 * high;
  const [top, foot] = [y - 0.58 * high, y + 0.42 * high];
  const gas = Math.min(0.92, 0.058 * gasM3 * 1e6 + 0.05) * high;
  const box: Box = { left: x - half, right: x + half, top, bottom: foot };
  return {
    box,
    picture: svg`<path class="gas-ball" d="M${x - half} ${top + 0.02 * high}h${2 * half}v${gas}h${-2 * half}Z"></path>
      <path class="bottle" d="M${x - half} ${foot}V${top + half / 2}q0 ${-half / 2} ${half / 2} ${-half / 2}h${half}q${half / 2} 0 ${half / 2} ${half / 2}V${foot}"></path>`,
  };
}
