import { nothing, svg } from 'lit';
import type { Placed, Point, TankView } from '../bench/index.ts';
import { STANDARD_GRAVITY_MPS2 } from '../water/index.ts';
import { GLASS_M, boxAround, xPx, yPx, type TankFrame } from './bench-frame.ts';
import { boxOf, widthPx, type Box } from './bench-labels.ts';
import { forceText, newtonsOf } from './bench-newtons.ts';
import { mlText } from './bench-words.ts';

/** Something drawn, and the boxes of its words, over which no others are to stand. */
export interface Drawn {
  readonly picture: unknown;
  readonly words: readonly Box[];
  /** What words cover only where there is no other place. */
  readonly covered?: readonly Box[];
}

export function pathOf(frame: TankFrame, outline: readonly Point[]): string {
  return `${outline
    .map(({ xM, yM }, i) => `${i === 0 ? 'M' : 'L'}${xPx(frame, xM).toFixed(1)} ${yPx(frame, yM).toFixed(1)}`)
    .join('')}Z`;
}

/** A thing with its air or its water. */
export function drawnThing(frame: TankFrame, one: Placed, chosen: boolean) {
  const { kind } = one.thing.spec;
  return svg`<path class="solid ${kind} ${chosen ? 'chosen' : ''}" d=${pathOf(frame, one.solid)}></path>
    ${kind === 'can' ? svg`<path class="air" d=${pathOf(frame, insideOfCan(one))}></path>` : nothing}
    ${one.soaked.length > 0 ? svg`<path class="soaked" d=${pathOf(frame, one.soaked)}></path>` : nothing}`;
}

/** The air of a can, drawn a little smaller than its outside by the wall. */
function insideOfCan({ thing: { spec }, at, solid }: Placed): Point[] {
  if (spec.kind !== 'can') return [];
  const share = (size: number) => Math.max(0, (size - 2 * spec.wallM) / size);
  const [across, along] = [share(spec.widthM), share(spec.heightM)];
  // Corners stand half a width and half a height from the middle along the can's own sides.
  const [a, b, , d] = solid as [Point, Point, Point, Point];
  const side = { x: (b.xM - a.xM) / 2, y: (b.yM - a.yM) / 2 };
  const up = { x: (d.xM - a.xM) / 2, y: (d.yM - a.yM) / 2 };
  const corner = (i: number, k: number) => ({
    xM: at.xM + i * across * side.x + k * along * up.x,
    yM: at.yM + i * across * side.y + k * along * up.y,
  });
  return [corner(-1, -1), corner(1, -1), corner(1, 1), corner(-1, 1)];
}

/** Depth under the surface, in numbers as close as letters allow. */
export function drawnScale(frame: TankFrame, { widthM, heightM, surfaceYM }: TankView): Drawn {
  const x = xPx(frame, widthM);
  const everyCm = frame.pxPerM * 0.1 >= 1.3 * frame.emPx ? 10 : 20;
  const marks = Array.from({ length: Math.floor((heightM - surfaceYM) / 0.05 + 1e-9) + 1 }, (_, i) => i * 5);
  const words = marks
    .filter((cm) => cm % everyCm === 0)
    .map((cm) => ({ cm, y: yPx(frame, surfaceYM + cm / 100) + 0.36 * frame.emPx }));
  return {
    picture: svg`<g class="scale">
      ${marks.map((cm) => svg`<path d="M${x + 5} ${yPx(frame, surfaceYM + cm / 100)}h${cm % 10 === 0 ? 13 : 7}"></path>`)}
      ${words.map(({ cm, y }) => svg`<text x=${x + 24} y=${y}>${cm} cm</text>`)}
    </g>`,
    words: words.map(({ cm, y }) => boxOf(`${cm} cm`, frame.emPx, x + 24, y, 'start')),
  };
}

/** The glass beside the tank with what ran over: it holds a litre over its height less a rim. */
export function drawnGlass(
  frame: TankFrame,
  { spoutYM, heightM, glassM3, densityKgPerM3 }: TankView,
  one: Placed | undefined,
): Drawn {
  if (spoutYM === null) return { picture: nothing, words: [] };
  const [right, left] = [xPx(frame, -GLASS_M.from), xPx(frame, -GLASS_M.from - GLASS_M.wide)];
  const foot = yPx(frame, heightM);
  const mm = frame.pxPerM / 1000;
  const filled = Math.min(0.15, glassM3 * 150) * frame.pxPerM;
  const [lip, spout] = [foot - GLASS_M.high * frame.pxPerM, yPx(frame, spoutYM)];
  // Words end where the spout does.
  const half = widthPx('99.9 mN', frame.emPx) / 2;
  const x = Math.max(half + 4, Math.min((left + right) / 2, right + 4 - half));
  const weightN = glassM3 * densityKgPerM3 * STANDARD_GRAVITY_MPS2;
  // Beside the forces on a thing it is told in their digits: what ran over weighs what the water lifts.
  const weight = one && glassM3 > 0 ? newtonsOf(one).beside(weightN) : forceText(weightN);
  const lines = [mlText(glassM3), weight].map((text, i) => ({
    text,
    y: lip - 10 - (1 - i) * 1.25 * frame.emPx,
  }));
  return {
    picture: svg`<g class="overflow">
      <path class="spout" d="M${xPx(frame, 0)} ${spout - 6 * mm}L${right} ${spout + 14 * mm}M${xPx(frame, 0)} ${spout + 8 * mm}L${right} ${spout + 26 * mm}"></path>
      <rect class="wet" x=${left} y=${foot - filled} width=${right - left} height=${filled}></rect>
      <path class="glass-wall" d="M${left} ${lip}V${foot}H${right}V${lip}"></path>
      ${lines.map(({ text, y }) => svg`<text x=${x} y=${y} text-anchor="middle">${text}</text>`)}
    </g>`,
    words: lines.map(({ text, y }) => boxOf(text, frame.emPx, x, y, 'middle')),
  };
}

/**
 * The spring balance over what hangs on it; it writes what it reads, and never slips out of the picture.
 * @param pullPx how long the arrow of its pull is, over which it hangs
 */
export function drawnBalance(frame: TankFrame, { hookYM, surfaceYM }: TankView, one: Placed, pullPx: number): Drawn {
  if (hookYM === null) return { picture: nothing, words: [] };
  const { emPx } = frame;
  const x = xPx(frame, one.at.xM);
  const top = boxAround(frame, one).top;
  const text = newtonsOf(one).balance;
  const [wide, high] = [widthPx('100.0 N', emPx) + emPx, 1.9 * emPx];
  // It stays dry, on a longer string: in water it would not read what hangs on it.
  const dry = yPx(frame, surfaceYM) - high / 2 - 0.5 * emPx;
  const over = Math.min(yPx(frame, hookYM - 0.1), top - pullPx - high / 2 - 0.5 * emPx, dry);
  const middle = Math.max(high / 2 + 4, over);
  const box = { left: x - wide / 2, top: middle - high / 2, right: x + wide / 2, bottom: middle + high / 2 };
  return {
    picture: svg`<g class="balance">
      <path d="M${x} ${box.top}V0"></path>
      <path d="M${x} ${box.bottom}V${Math.max(box.bottom, top)}"></path>
      <rect x=${box.left} y=${box.top} width=${wide} height=${high} rx="8"></rect>
      <text x=${x} y=${middle + 0.36 * emPx} text-anchor="middle">${text}</text>
    </g>`,
    words: [box],
    covered: [{ left: x - 2, right: x + 2, top: 0, bottom: Math.max(box.bottom, top) }],
  };
}

/** A hand about a thing. */
export function drawnHand({ left, top, right, bottom }: Box) {
  const room = 9;
  return svg`<rect class="hand" x=${left - room} y=${top - room} width=${right - left + 2 * room} height=${bottom - top + 2 * room} rx="16"></rect>`;
}
