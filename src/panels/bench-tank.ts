import { nothing, svg, html, type TemplateResult } from 'lit';
import type { BenchAsk, Placed, Point, TankView } from '../bench/index.ts';
import { forceText, leftOver, mlText } from './bench-words.ts';
import { Panel } from './panel.ts';
import { wish } from './wish.ts';

/** The drawing in millimetres: room for the glass on the left, for the scale on the right, for hand and balance above. */
const LEFT = 190;
const RIGHT = 120;
const ABOVE = 215;
const UNDER = 60;
/** Lengths of arrows, mm for each newton, of which the largest that fits is taken; the longest arrow, mm. */
const SCALES = [100, 50, 20, 10, 7.5, 5, 2, 1, 0.5] as const;
const LONGEST = 100;
/** Three lines of words reach so far up and down from the middle one, mm. */
const ACROSS = 62;
/** Forces smaller than this are not drawn, newtons. */
const LEAST_N = 0.005;

/** The tank in section: things, water, forces. Things are taken by pointer; keys are heard wherever the focus is. */
export class BenchTank extends Panel {
  static override properties = { tank: { attribute: false } };
  declare tank: TankView | null;
  #pulls = false;

  constructor() {
    super();
    this.tank = null;
  }

  override render() {
    const tank = this.tank;
    if (!tank) return html``;
    const [wide, high] = [tank.widthM * 1000, tank.heightM * 1000];
    const surface = tank.surfaceYM * 1000;
    return html`<svg
      viewBox="${-LEFT} ${-ABOVE} ${wide + LEFT + RIGHT} ${high + ABOVE + UNDER}"
      tabindex="0"
      role="application"
      aria-label="The tank. Arrow keys carry what is chosen, with Shift by five, Enter takes it and lets it go, N chooses another."
      @pointerdown=${this.#down}
      @pointermove=${this.#move}
      @pointerup=${this.#up}
      @pointercancel=${this.#up}
    >
      ${svg`<rect class="wet" x="0" y=${surface} width=${wide} height=${high - surface}></rect>
      ${tank.things.map((one) => (one.displaced.length > 0 ? svg`<path class="displaced" d=${path(one.displaced)}></path>` : nothing))}
      <path class="surface" d="M0 ${surface}H${wide}"></path>
      ${tank.things.map((one) => thing(one, one.id === tank.chosenId))}
      <path class="glass-wall" d="M0 0V${high}H${wide}V0"></path>
      ${scale(wide, high, surface)}
      ${tank.spoutYM === null ? nothing : glass(tank.spoutYM * 1000, high, tank.glassM3, tank.densityKgPerM3)}
      ${tank.hookYM === null ? nothing : balance(tank)}
      ${tank.hand && tank.hookYM === null ? hand(tank) : nothing}
      ${tank.forces ? forces(tank) : nothing}`}
    </svg>`;
  }

  #ask(ask: BenchAsk): void {
    wish(this, { kind: 'bench', ask });
  }

  /** Where a pointer is in the tank, metres. */
  #at(event: PointerEvent): Point {
    const picture = this.querySelector('svg')!;
    const to = new DOMPoint(event.clientX, event.clientY).matrixTransform(picture.getScreenCTM()!.inverse());
    return { xM: to.x / 1000, yM: to.y / 1000 };
  }

  readonly #down = (event: PointerEvent): void => {
    const at = this.#at(event);
    const near = nearest(this.tank!, at);
    if (!near) return;
    this.querySelector('svg')!.setPointerCapture(event.pointerId);
    this.#pulls = true;
    this.#ask({ do: 'choose', id: near.id });
    this.#ask({ do: 'hand', at });
  };

  readonly #move = (event: PointerEvent): void => {
    if (this.#pulls) this.#ask({ do: 'hand', at: this.#at(event) });
  };

  readonly #up = (): void => {
    if (!this.#pulls) return;
    this.#pulls = false;
    this.#ask({ do: 'let-go' });
  };
}
customElements.define('bench-tank', BenchTank);

/** A thumb is wider than a stone: whatever lies within so much of a pointer is meant, metres. */
const THUMB_M = 0.05;

function nearest({ things }: TankView, at: Point): Placed | null {
  let best: Placed | null = null;
  let bestM = THUMB_M;
  for (const one of things) {
    const size = Math.max(...one.thing.hull.map(({ xM, yM }) => Math.hypot(xM, yM)));
    const away = Math.max(0, Math.hypot(one.at.xM - at.xM, one.at.yM - at.yM) - size);
    if (away < bestM) [best, bestM] = [one, away];
  }
  return best;
}

function path(outline: readonly Point[]): string {
  return `${outline.map(({ xM, yM }, i) => `${i === 0 ? 'M' : 'L'}${(xM * 1000).toFixed(1)} ${(yM * 1000).toFixed(1)}`).join('')}Z`;
}

function thing(one: Placed & { readonly name: string }, chosen: boolean) {
  const kind = one.thing.spec.kind;
  const inside = kind === 'can' ? svg`<path class="air" d=${path(insideOfCan(one))}></path>` : nothing;
  return svg`<path class="solid ${kind} ${chosen ? 'chosen' : ''}" d=${path(one.solid)}></path>${inside}
    ${one.soaked.length > 0 ? svg`<path class="soaked" d=${path(one.soaked)}></path>` : nothing}`;
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

function scale(wide: number, high: number, surface: number) {
  const ticks = Array.from({ length: Math.floor((high - surface) / 50) + 1 }, (_, i) => i * 50);
  return svg`<g class="scale">${ticks.map(
    (mm) => svg`<path d="M${wide + 6} ${surface + mm}h${mm % 100 === 0 ? 16 : 9}"></path>
      ${mm % 100 === 0 ? svg`<text x=${wide + 28} y=${surface + mm + 8}>${mm / 10} cm</text>` : nothing}`,
  )}</g>`;
}

function glass(spout: number, high: number, glassM3: number, densityKgPerM3: number) {
  // The glass holds a litre over its height of 150 mm.
  const filled = Math.min(150, glassM3 * 1e6 * 0.15);
  const foot = high;
  const weight = forceText(glassM3 * densityKgPerM3 * 9.80665);
  return svg`<g class="overflow">
    <path class="spout" d="M0 ${spout - 6}L-60 ${spout + 14}M0 ${spout + 8}L-60 ${spout + 26}"></path>
    <rect class="wet" x="-150" y=${foot - filled} width="90" height=${filled}></rect>
    <path class="glass-wall" d="M-150 ${foot - 160}V${foot}H-60V${foot - 160}"></path>
    <text x="-105" y=${foot - 172} text-anchor="middle">${mlText(glassM3)}</text>
    <text class="small" x="-105" y=${foot - 172} dy="-1.3em" text-anchor="middle">${weight} of water</text>
  </g>`;
}

function balance({ things, chosenId, hookYM }: TankView) {
  const one = things.find(({ id }) => id === chosenId);
  if (!one || hookYM === null) return nothing;
  const [x, y] = [one.at.xM * 1000, one.at.yM * 1000];
  const top = hookYM * 1000 - 100;
  return svg`<g class="balance">
    <path d="M${x} ${top}V${top - 60}"></path>
    <rect x=${x - 62} y=${top - 34} width="124" height="52" rx="9"></rect>
    <text x=${x} y=${top + 2} text-anchor="middle">${forceText(one.balanceN)}</text>
    <path d="M${x} ${top + 18}V${y}"></path>
  </g>`;
}

function hand({ things, chosenId }: TankView) {
  const one = things.find(({ id }) => id === chosenId);
  if (!one) return nothing;
  const [x, y] = [one.at.xM * 1000, one.at.yM * 1000];
  const r = 1000 * Math.max(...one.thing.hull.map(({ xM, yM }) => Math.hypot(xM, yM))) + 12;
  return svg`<g class="hand"><circle cx=${x} cy=${y} r=${r}></circle><text x=${x} y=${y - r - 10} text-anchor="middle">held</text></g>`;
}

/** Weight from the centre of mass, buoyancy from the centre of the displaced water, what is left of both beside them. */
function forces(tank: TankView): TemplateResult<2>[] {
  const { things, chosenId } = tank;
  const most = Math.max(...things.map(({ weightN, buoyantN }) => Math.max(weightN, buoyantN)));
  const mmPerN = SCALES.find((scale) => scale * most <= LONGEST) ?? SCALES.at(-1)!;
  return things.map((one) => {
    const chosen = one.id === chosenId;
    const centre = { x: one.at.xM * 1000, y: one.at.yM * 1000 };
    const lift = { x: one.buoyancyAt.xM * 1000, y: one.buoyancyAt.yM * 1000 };
    const netN = one.buoyantN + one.balanceN - one.weightN;
    const even = Math.abs(netN) < Math.max(LEAST_N, 2e-2 * one.weightN);
    return svg`<g class="forces">
      ${arrow('weight', centre.x, centre.y, one.weightN * mmPerN)}
      ${one.buoyantN > LEAST_N ? arrow('lift', lift.x, lift.y, -one.buoyantN * mmPerN) : nothing}
      ${chosen && things.length === 1 ? forceWords(one, netN, even, mmPerN, tank) : nothing}
      ${chosen && things.length > 1 ? evenWord(one, netN, even) : nothing}
    </g>`;
  });
}

/** Among others only what is left of the forces is written, over the thing; the sentence has the rest. */
function evenWord(one: Placed, netN: number, even: boolean) {
  const topM = Math.min(...one.solid.map(({ yM }) => yM));
  const { kind, words } = leftOver(one, netN, even);
  return svg`<text class=${kind} x=${one.at.xM * 1000} y=${topM * 1000 - 34} text-anchor="middle">${words}</text>`;
}

/** The numbers of the chosen thing stand where there is more room, what is left of the forces beside it on that side. */
function forceWords(
  one: Placed,
  netN: number,
  even: boolean,
  mmPerN: number,
  { widthM, heightM, surfaceYM }: TankView,
) {
  const surface = surfaceYM * 1000;
  const side = one.at.xM > widthM / 2 ? -1 : 1;
  const [x, y] = [one.at.xM * 1000, one.at.yM * 1000];
  const r = 1000 * Math.max(...one.solid.map(({ xM }) => Math.abs(xM - one.at.xM)));
  const net = x + side * (r + 34);
  const words = net + side * 22;
  const anchor = side > 0 ? 'start' : 'end';
  const down = one.weightN * mmPerN;
  // Words stand in the water or on the paper, and never across the surface or the bottom.
  const inside = Math.min(y, heightM * 1000 - ACROSS);
  const wordsY = Math.abs(inside - surface) < ACROSS ? surface - ACROSS : inside;
  const line = (kind: string, em: number, what: string) =>
    svg`<text class=${kind} x=${words} y=${wordsY} dy=${`${em}em`} text-anchor=${anchor}>${what}</text>`;
  const left = leftOver(one, netN, even);
  const lines = [line('weight', 1.3, `weight ${forceText(one.weightN)}`), line(left.kind, 0, left.words)];
  if (one.buoyantN > LEAST_N) lines.push(line('lift', -1.3, `water lifts ${forceText(one.buoyantN)}`));
  return svg`${left.kind === 'even' ? nothing : arrow(netN > 0 ? 'net up' : 'net down', net, y, Math.sign(-netN) * Math.min(Math.abs(netN) * mmPerN, Math.max(down, 12)))}${lines}`;
}

/** An arrow down by so many millimetres, up by fewer than none. */
function arrow(kind: string, x: number, y: number, down: number) {
  const sign = Math.sign(down);
  const head = Math.min(16, Math.abs(down));
  // A short arrow keeps its form.
  const half = (9 * head) / 16;
  return svg`<path class="arrow ${kind}" d="M${x} ${y}V${y + down - sign * head}"></path>
    <path class="head ${kind}" d="M${x} ${y + down}l${-half} ${-sign * head}h${2 * half}Z"></path>`;
}
