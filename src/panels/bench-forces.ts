import { nothing, svg } from 'lit';
import type { Placed, TankView } from '../bench/index.ts';
import { boxAround, xPx, yPx, type TankFrame } from './bench-frame.ts';
import { linesOf, widthPx, type Box, type Label, type Line, type PlacedLabel } from './bench-labels.ts';
import { newtonsOf } from './bench-newtons.ts';
import { leftOver, shortName } from './bench-words.ts';

/** Lengths of arrows, mm for each newton, of which the largest that fits is taken; the longest arrow, mm. */
const SCALES = [100, 50, 20, 10, 7.5, 5, 2, 1, 0.5] as const;
const LONGEST = 80;
/** Forces smaller than this are not drawn, newtons. */
const LEAST_N = 0.005;
/** What is left over stands beside the thing by this, pixels. */
const BESIDE_PX = 24;
/** Names that take so many widths of the tank are turned: in stairs over it, long lines would lead to them. */
const CROWDED = 1.6;

/** How many pixels an arrow has for each newton. */
function pxPerN({ pxPerM }: TankFrame, { things }: TankView): number {
  const most = Math.max(...things.map(({ weightN, buoyantN }) => Math.max(weightN, buoyantN)));
  const mmPerN = SCALES.find((scale) => scale * most <= LONGEST) ?? SCALES.at(-1)!;
  return (mmPerN * pxPerM) / 1000;
}

/** What is left of the forces on a thing, newtons upward, and whether that is nothing. */
function left(one: Placed): { readonly netN: number; readonly even: boolean } {
  const netN = one.buoyantN + one.balanceN - one.weightN;
  return { netN, even: Math.abs(netN) < Math.max(LEAST_N, 2e-2 * one.weightN) };
}

/** Which side of a thing has more room. */
const sideOf = (one: Placed, { widthM }: TankView): 1 | -1 => (one.at.xM > widthM / 2 ? -1 : 1);

/** Weight from the centre of mass, buoyancy from the centre of the displaced water, the pull of the balance where its string is. */
export function drawnForces(frame: TankFrame, tank: TankView, one: Placed) {
  const scale = pxPerN(frame, tank);
  const box = boxAround(frame, one);
  const [x, y] = [xPx(frame, one.at.xM), yPx(frame, one.at.yM)];
  const liftY = yPx(frame, one.buoyancyAt.yM);
  const { netN, even } = left(one);
  const alone = one.id === tank.chosenId && tank.things.length === 1;
  const liftTop = one.buoyantN > LEAST_N ? liftY - one.buoyantN * scale : box.top;
  const beside = sideOf(one, tank) > 0 ? box.right + BESIDE_PX : box.left - BESIDE_PX;
  const net = Math.sign(-netN) * Math.max(Math.min(Math.abs(netN) * scale, one.weightN * scale), 10);
  return svg`<g class="forces">
    ${arrow(frame, 'weight', x, y, one.weightN * scale)}
    ${one.buoyantN > LEAST_N ? arrow(frame, 'lift', xPx(frame, one.buoyancyAt.xM), liftY, -one.buoyantN * scale) : nothing}
    ${one.balanceN > LEAST_N ? arrow(frame, 'pull', x, Math.min(box.top, liftTop), -one.balanceN * scale) : nothing}
    ${alone && !even && tank.hookYM === null ? arrow(frame, netN > 0 ? 'net up' : 'net down', beside, y, net) : nothing}
  </g>`;
}

/** How far the arrow of the balance's pull reaches over a thing, beyond that of its lift where this is longer. */
export function pullPx(frame: TankFrame, tank: TankView, one: Placed): number {
  const scale = pxPerN(frame, tank);
  const lifted = Math.max(0, boxAround(frame, one).top - yPx(frame, one.buoyancyAt.yM) + one.buoyantN * scale);
  return lifted + one.balanceN * scale;
}

/** What of a thing is covered only where there is no other place: the thing with its arrows. */
export function coveredBy(frame: TankFrame, tank: TankView, one: Placed): Box[] {
  const box = boxAround(frame, one);
  if (!tank.forces) return [box];
  const scale = pxPerN(frame, tank);
  const [x, y] = [xPx(frame, one.at.xM), yPx(frame, one.at.yM)];
  const half = 1.5 * frame.boldPx;
  const up = Math.max(one.buoyantN, one.buoyantN + one.balanceN) * scale;
  return [box, { left: x - half, right: x + half, top: y - up, bottom: y + one.weightN * scale }];
}

/** Whether names side by side would take far more than the width of the tank. */
export function crowded(frame: TankFrame, { things, widthM }: TankView): boolean {
  const namesPx = things.reduce((sum, one) => sum + widthPx(shortName(one), frame.emPx) + frame.emPx / 2, 0);
  return namesPx > CROWDED * widthM * frame.pxPerM;
}

/** The words of a thing: its name among others, who holds it, and the forces in newtons where it is the chosen one. */
export function labelOf(frame: TankFrame, tank: TankView, one: Placed): Label | null {
  const chosen = one.id === tank.chosenId;
  const many = tank.things.length > 1;
  const lines: Line[] = many ? [{ kind: chosen ? 'name chosen' : 'name', text: shortName(one) }] : [];
  if (chosen) lines.push(...heldLine(tank), ...(tank.forces ? forceLines(tank, one, many) : []));
  if (lines.length === 0) return null;
  const box = boxAround(frame, one);
  const side = sideOf(one, tank);
  const { even } = left(one);
  const arrowed = chosen && !many && tank.forces && !even && tank.hookYM === null;
  const reach = arrowed ? BESIDE_PX + 1.5 * frame.boldPx : 0;
  const held = chosen && tank.hand !== null ? 9 : 0;
  const of = {
    left: box.left - held - (side < 0 ? reach : 0),
    right: box.right + held + (side > 0 ? reach : 0),
    top: box.top - held,
    bottom: box.bottom + held,
  };
  const high = yPx(frame, tank.surfaceYM + 0.1) > box.top;
  return {
    key: String(one.id),
    lines,
    sizePx: frame.emPx,
    alone: !many,
    turned: !chosen && crowded(frame, tank),
    of,
    side: many ? (high && one.at.yM < tank.heightM / 2 ? 'below' : 'above') : side > 0 ? 'right' : 'left',
  };
}

function heldLine({ hand, hookYM }: TankView): Line[] {
  return hand !== null && hookYM === null ? [{ kind: 'small', text: 'held' }] : [];
}

/** Among others only what is left of the forces is written; the sentence has the rest. */
function forceLines({ hookYM }: TankView, one: Placed, many: boolean): Line[] {
  const { netN, even } = left(one);
  const { kind, words } = leftOver(one, netN, even);
  if (many) return [{ kind, text: words }];
  const lines: Line[] = [];
  const { weight, water, balance } = newtonsOf(one);
  if (one.balanceN > LEAST_N) lines.push({ kind: 'weight', text: `balance pulls ${balance}` });
  if (one.buoyantN > LEAST_N) lines.push({ kind: 'lift', text: `water lifts ${water}` });
  if (hookYM === null) lines.push({ kind, text: words });
  lines.push({ kind: 'weight', text: `weight ${weight}` });
  return lines;
}

/** Words where they were placed, over thin lines to what they belong to where they stand away from it: no line strikes words through. */
export function drawnLabels(labels: readonly PlacedLabel[]) {
  return svg`${labels.map(({ leader }) => (leader ? svg`<path class="leader" d="M${leader[0]} ${leader[1]}L${leader[2]} ${leader[3]}"></path>` : nothing))}
    ${labels.map((label) =>
      linesOf(label).map(({ kind, text, x, y }) =>
        label.turned
          ? svg`<text class="placed ${kind}" x=${x} y=${y} transform="rotate(-90 ${x} ${y})">${text}</text>`
          : svg`<text class="placed ${kind}" x=${x} y=${y} text-anchor=${label.anchor}>${text}</text>`,
      ),
    )}`;
}

/** An arrow down by so many pixels, up by fewer than none. */
export function arrow({ boldPx }: Pick<TankFrame, 'boldPx'>, kind: string, x: number, y: number, down: number) {
  const sign = Math.sign(down);
  const head = Math.min(2.7 * boldPx, Math.abs(down));
  // A short arrow keeps its form.
  const half = 0.56 * head;
  return svg`<path class="arrow ${kind}" d="M${x} ${y}V${y + down - sign * head}"></path>
    <path class="head ${kind}" d="M${x} ${y + down}l${-half} ${-sign * head}h${2 * half}Z"></path>`;
}
