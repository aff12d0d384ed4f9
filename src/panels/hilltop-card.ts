import { html, nothing, svg } from 'lit';
import type { HillView } from './looks.ts';
import { Panel } from './panel.ts';
import type { Units } from './settings.ts';
import { NEUTRAL_KG, depthText, massText } from './units.ts';

/** Size of the drawing, pixels of its own: usual, at the foot of an upright phone, beside the diver on one on its side. */
const USUAL = { widthPx: 300, heightPx: 150, topPx: 46, axisPx: 40 };
const LOW = { widthPx: 344, heightPx: 92, topPx: 46, axisPx: 23 };
const BESIDE = { widthPx: 170, heightPx: 112, topPx: 46, axisPx: 23 };
/** Room beside the curve, and under the ticks for words that only the usual drawing has. */
const LEFT_PX = 14;
const WORDS_PX = 30;
/** Radius of the ball, and least energy that the height stands for, J: below it a hill is drawn as flat as it is. */
const BALL_PX = 9;
const LEAST_J = 2;

/** Phones, as the page lays them out. */
const ON_ITS_SIDE = '(max-height: 480px)';
const NARROW = '(max-width: 760px)';
/** A ball so near to the top or the lowest place of a hollow lies there, metres. */
const THERE_M = 0.09;
/** A hollow farther off than this is not the one he lies in, metres. */
const NEAR_M = 2.5;

/** The hill with the diver as a ball on it: depth across, what it would take to carry him there upward. */
export class HilltopCard extends Panel {
  static override properties = { hill: { attribute: false }, units: { attribute: false } };
  declare hill: HillView | null;
  declare units: Units;

  readonly #redraw = () => this.requestUpdate();

  constructor() {
    super();
    this.hill = null;
    this.units = 'metric';
  }

  override connectedCallback(): void {
    super.connectedCallback();
    for (const query of [ON_ITS_SIDE, NARROW]) matchMedia(query).addEventListener('change', this.#redraw);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    for (const query of [ON_ITS_SIDE, NARROW]) matchMedia(query).removeEventListener('change', this.#redraw);
  }

  override render() {
    const hill = this.hill;
    if (!hill) return html``;
    const size = matchMedia(ON_ITS_SIDE).matches ? BESIDE : matchMedia(NARROW).matches ? LOW : USUAL;
    const { widthPx, heightPx, topPx, axisPx } = size;
    const footPx = heightPx - axisPx;
    const { depthsM, energyJ, depthM, flatM } = hill;
    const [from, to] = [depthsM[0]!, depthsM.at(-1)!];
    const low = Math.min(...energyJ);
    const rangeJ = Math.max(Math.max(...energyJ) - low, LEAST_J);
    const x = (depth: number) => LEFT_PX + ((depth - from) / (to - from)) * (widthPx - 2 * LEFT_PX);
    const y = (j: number) => footPx - ((j - low) / rangeJ) * (footPx - topPx);
    const line = energyJ
      .map((j, i) => `${i === 0 ? 'M' : 'L'}${x(depthsM[i]!).toFixed(1)} ${y(j).toFixed(1)}`)
      .join('');
    const area = `${line}L${x(to)} ${footPx}L${x(from)} ${footPx}Z`;
    const ball = ballAt(depthM, hill, x, y);
    const inside = (depth: number) => Math.min(Math.max(depth, from), to);
    const rest = restOf(hill);
    const restY = rest ? y(energyAt(hill, rest.atM)) : 0;
    // Above a hill there is room; over a hollow the words keep off the ball.
    const wordsY = Math.max(rest?.kind === 'hollow' ? Math.min(restY, ball.y) - 22 : restY - 34, 12);
    return html`<section aria-label="Hilltop">
      <h2>${titleOf(rest, hill)}</h2>
      <svg viewBox="0 0 ${widthPx} ${heightPx}" role="img" aria-label=${spoken(hill, rest, this.units)}>
        ${svg`<path class="hill" d=${area}></path><path class="edge" d=${line}></path>`}
        ${
          flatM && rest?.kind === 'top'
            ? svg`<path class="flat" d="M${x(inside(flatM[0]))} ${restY - 22}v-6H${x(inside(flatM[1]))}v6"></path>`
            : nothing
        }
        ${
          rest
            ? svg`<text x=${clamp(x(rest.atM), 60, widthPx - 60)} y=${wordsY} text-anchor="middle">${Math.abs(depthM - rest.atM) < THERE_M ? 'neutral' : `neutral at ${depthText(rest.atM, this.units)}`}</text>`
            : nothing
        }
        ${svg`<circle cx=${ball.x} cy=${ball.y} r=${BALL_PX}></circle>
        <path class="axis" d="M${LEFT_PX} ${footPx}H${widthPx - LEFT_PX}"></path>
        ${ticks(from, to).map(
          (depth) => svg`<path class="axis" d="M${x(depth)} ${footPx}v5"></path>
          <text class="small" x=${x(depth)} y=${footPx + 19} text-anchor="middle">${depthText(depth, this.units).replace('.0', '')}</text>`,
        )}`}
        ${
          axisPx > WORDS_PX
            ? svg`<text class="small" x=${LEFT_PX} y=${heightPx - 6}>shallower</text>
        <text class="small" x=${widthPx - LEFT_PX} y=${heightPx - 6} text-anchor="end">deeper</text>`
            : nothing
        }
      </svg>
      <p>Height: the work to get there. ${footOf(rest, hill, this.units)}</p>
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

/** What the ball rolls off or comes back to: the nearest neutral depth in the drawing. */
interface Rest {
  readonly kind: 'top' | 'hollow';
  readonly atM: number;
}

/** The top, or a hollow of the curve where one is nearer; null where neither is in the drawing. */
function restOf({ depthsM, energyJ, depthM, topM }: HillView): Rest | null {
  const rests: Rest[] =
    topM !== null && topM > depthsM[0]! && topM < depthsM.at(-1)! ? [{ kind: 'top', atM: topM }] : [];
  for (let i = 1; i + 1 < energyJ.length; i++) {
    const [before, at, after] = [energyJ[i - 1]!, energyJ[i]!, energyJ[i + 1]!];
    if (!(at < before && at <= after)) continue;
    // Between the points the lowest is that of the parabola through them.
    const bend = before - 2 * at + after;
    rests.push({
      kind: 'hollow',
      atM: depthsM[i]! + ((before - after) / (2 * bend)) * (depthsM[i + 1]! - depthsM[i]!),
    });
  }
  const awayM = ({ atM }: Rest) => Math.abs(atM - depthM);
  return rests.sort((a, b) => awayM(a) - awayM(b))[0] ?? null;
}

function energyAt({ depthsM, energyJ }: HillView, depthM: number): number {
  const after = Math.max(
    depthsM.findIndex((depth) => depth >= depthM),
    1,
  );
  const share = (depthM - depthsM[after - 1]!) / (depthsM[after]! - depthsM[after - 1]!);
  return energyJ[after - 1]! + (energyJ[after]! - energyJ[after - 1]!) * share;
}

/** Whether the ball lies in a hollow: near to it, and where the curve bends up. Beyond, on the way to a top, a drift grows. */
function isIn(rest: Rest, { depthsM, energyJ, depthM }: HillView): boolean {
  if (Math.abs(rest.atM - depthM) > NEAR_M) return false;
  const near = depthsM.reduce((best, z, i) => (Math.abs(z - depthM) < Math.abs(depthsM[best]! - depthM) ? i : best), 0);
  const i = clamp(near, 1, depthsM.length - 2);
  return energyJ[i - 1]! - 2 * energyJ[i]! + energyJ[i + 1]! > 0;
}

function titleOf(rest: Rest | null, hill: HillView): string {
  if (rest?.kind === 'top') return 'You on the hill';
  return rest && isIn(rest, hill) ? 'You in the hollow' : 'You on the slope';
}

function footOf(rest: Rest | null, hill: HillView, units: Units): string {
  if (!rest) return 'No top is near: the ball rolls one way.';
  if (rest.kind === 'top')
    return `Off the top the ball rolls away. The bracket: neutral within ${massText(NEUTRAL_KG, units)}.`;
  return isIn(rest, hill) ? 'Moved a little, the ball rolls back into the hollow.' : 'In the hollow a ball stays.';
}

function spoken({ depthM, topM, flatM }: HillView, rest: Rest | null, units: Units): string {
  const away = (atM: number, it: string) =>
    `you are ${depthText(Math.abs(depthM - atM), units)} ${depthM > atM ? 'deeper than' : 'shallower than'} ${it}.`;
  if (rest?.kind === 'hollow')
    return `A hollow lies at ${depthText(rest.atM, units)}, and holds you; ${away(rest.atM, 'its lowest place')}`;
  if (topM === null) return `No hilltop: you roll one way, from ${depthText(depthM, units)}.`;
  const flat = flatM ? `, flat from ${depthText(flatM[0], units)} to ${depthText(flatM[1], units)}` : '';
  return `The hilltop lies at ${depthText(topM, units)}${flat}; ${away(topM, 'it')}`;
}
