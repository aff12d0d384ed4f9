import { html, nothing, svg } from 'lit';
import type { HillView } from './looks.ts';
import { Panel } from './panel.ts';
import type { Units } from './settings.ts';
import { depthText } from './units.ts';

/** Size of the drawing, and the room for the curve in it, pixels of its own. */
const WIDTH_PX = 360;
const HEIGHT_PX = 190;
const LEFT_PX = 14;
const TOP_PX = 46;
const FOOT_PX = 150;
/** Radius of the ball, and least energy that the height stands for, J: below it a hill is drawn as flat as it is. */
const BALL_PX = 9;
const LEAST_J = 2;

/** The hill with the diver as a ball on it: depth across, what it would take to carry him there upward. */
export class HilltopCard extends Panel {
  static override properties = { hill: { attribute: false }, units: { attribute: false } };
  declare hill: HillView | null;
  declare units: Units;

  constructor() {
    super();
    this.hill = null;
    this.units = 'metric';
  }

  override render() {
    const hill = this.hill;
    if (!hill) return html``;
    const { depthsM, energyJ, depthM, topM, flatM } = hill;
    const [from, to] = [depthsM[0]!, depthsM.at(-1)!];
    const low = Math.min(...energyJ);
    const rangeJ = Math.max(Math.max(...energyJ) - low, LEAST_J);
    const x = (depth: number) => LEFT_PX + ((depth - from) / (to - from)) * (WIDTH_PX - 2 * LEFT_PX);
    const y = (j: number) => FOOT_PX - ((j - low) / rangeJ) * (FOOT_PX - TOP_PX);
    const line = energyJ
      .map((j, i) => `${i === 0 ? 'M' : 'L'}${x(depthsM[i]!).toFixed(1)} ${y(j).toFixed(1)}`)
      .join('');
    const area = `${line}L${x(to)} ${FOOT_PX}L${x(from)} ${FOOT_PX}Z`;
    const topY = y(
      topM === null ? low : Math.max(...energyJ.filter((_, i) => Math.abs(depthsM[i]! - topM) < (to - from) / 40)),
    );
    const ball = ballAt(depthM, hill, x, y);
    const inside = (depth: number) => Math.min(Math.max(depth, from), to);
    const shown = topM !== null && topM > from && topM < to;
    const place = shown ? Math.abs(depthM - topM) * 1.1 < 0.1 : false;
    return html`<section aria-label="Hilltop">
      <h2>You on the hill</h2>
      <svg viewBox="0 0 ${WIDTH_PX} ${HEIGHT_PX}" role="img" aria-label=${spoken(hill, this.units)}>
        ${svg`<path class="hill" d=${area}></path><path class="edge" d=${line}></path>`}
        ${
          flatM && shown
            ? svg`<path class="flat" d="M${x(inside(flatM[0]))} ${topY - 22}v-6H${x(inside(flatM[1]))}v6"></path>`
            : nothing
        }
        ${
          shown
            ? svg`<text x=${clamp(x(topM), 60, WIDTH_PX - 60)} y=${topY - 34} text-anchor="middle">${place ? 'neutral' : `neutral at ${depthText(topM, this.units)}`}</text>`
            : nothing
        }
        ${svg`<circle cx=${ball.x} cy=${ball.y} r=${BALL_PX}></circle>
        <path class="axis" d="M${LEFT_PX} ${FOOT_PX}H${WIDTH_PX - LEFT_PX}"></path>
        ${ticks(from, to).map(
          (depth) => svg`<path class="axis" d="M${x(depth)} ${FOOT_PX}v5"></path>
          <text class="small" x=${x(depth)} y=${FOOT_PX + 19} text-anchor="middle">${depthText(depth, this.units).replace('.0', '')}</text>`,
        )}
        <text class="small" x=${LEFT_PX} y=${HEIGHT_PX - 6}>shallower</text>
        <text class="small" x=${WIDTH_PX - LEFT_PX} y=${HEIGHT_PX - 6} text-anchor="end">deeper</text>`}
      </svg>
      <p>Height: the work to get there. ${shown ? 'Off the top the ball rolls away. The bracket: neutral within 0.1 kg.' : 'No top is near: the ball rolls one way.'}</p>
    </section>`;
  }
}
customElements.define('hilltop-card', HilltopCard);

/** The ball lies on the curve, not in it: its middle stands off along the curve's normal. */
function ballAt(
  depthM: number,
  { depthsM, energyJ }: HillView,
  x: (depthM: number) => number,
  y: (energyJ: number) => number,
): { readonly x: number; readonly y: number } {
  const after = depthsM.findIndex((depth) => depth > depthM);
  const i = after < 0 ? depthsM.length - 1 : Math.max(after, 1);
  const [ax, bx] = [x(depthsM[i - 1]!), x(depthsM[i]!)];
  const [ay, by] = [y(energyJ[i - 1]!), y(energyJ[i]!)];
  const share = Math.min(Math.max((x(depthM) - ax) / (bx - ax), 0), 1);
  const length = Math.hypot(bx - ax, by - ay);
  return {
    x: ax + share * (bx - ax) + ((by - ay) / length) * BALL_PX,
    y: ay + share * (by - ay) - ((bx - ax) / length) * BALL_PX,
  };
}

function ticks(from: number, to: number): number[] {
  const step = to - from > 14 ? 5 : to - from > 6 ? 2 : 1;
  const first = Math.ceil(from / step) * step;
  return Array.from({ length: Math.floor((to - first) / step) + 1 }, (_, i) => first + i * step);
}

function clamp(value: number, least: number, most: number): number {
  return Math.min(Math.max(value, least), most);
}

function spoken({ depthM, topM, flatM }: HillView, units: Units): string {
  if (topM === null) return `No hilltop: you roll one way, from ${depthText(depthM, units)}.`;
  const off = depthText(Math.abs(depthM - topM), units);
  const side = depthM > topM ? 'deeper than' : 'shallower than';
  const flat = flatM ? `, flat from ${depthText(flatM[0], units)} to ${depthText(flatM[1], units)}` : '';
  return `The hilltop lies at ${depthText(topM, units)}${flat}; you are ${off} ${side} it.`;
}
