import { html, nothing, svg } from 'lit';
import type { DeepView } from '../bench/index.ts';
import { bottleMark, bubbleMark } from './bench-bodies.ts';
import { drawnCurve, drawnHill } from './bench-curves.ts';
import { arrow, drawnLabels } from './bench-forces.ts';
import { emOf } from './bench-frame.ts';
import { boxOf, placeLabels, widthPx, type Box, type Label } from './bench-labels.ts';
import { depthWords } from './bench-words.ts';
import { PicturePanel } from './picture-panel.ts';

/** Newtons to shares of the longest arrow: the largest that fits is taken. */
const SCALES = [20_000, 10_000, 4000, 2000, 1000, 400, 200, 100, 50, 20, 10] as const;
const LONGEST = 90;
/** A litre's ball has a radius of so much of the column's height, and so much of it is under the deepest place: the floor that bodies lie on, then room for arrows. */
const LITRE = 0.085;
const FLOOR = { deep: 0.092, bottle: 0.062 } as const;
const UNDER = 0.18;
/** Ticks of depth by metres, of which the closest that letters allow is taken. */
const TICKS_M = { deep: [5, 10, 20, 40], bottle: [0.1, 0.2, 0.4] } as const;

/** A column of water with what gives way under pressure: bag and ball in a deep tank, or a bottle in a flask. */
export class BenchDeep extends PicturePanel {
  static override properties = { deep: { attribute: false }, sketched: { attribute: false } };
  declare deep: DeepView | null;
  /** Pressure and volume as somebody sketched them before. */
  declare sketched: readonly (readonly [number, number])[];
  readonly #stood = new Map<string, number>();

  constructor() {
    super();
    this.deep = null;
    this.sketched = [];
  }

  override render() {
    const deep = this.deep;
    if (!deep) return html``;
    const [wide, high] = [Math.max(this.widePx, 1), Math.max(this.highPx, 1)];
    const em = emOf(wide);
    this.size(em, Math.max(4, 0.25 * em));
    return html`<svg
      role="img"
      aria-label="A column of water ${depthWords(deep.bottomM, deep.bottomM)} deep"
    >
      ${this.widePx > 0 ? this.#picture(deep, wide, high, em) : nothing}
    </svg>`;
  }

  #picture(deep: DeepView, wide: number, high: number, em: number) {
    const left = widthPx(depthWords(deep.bottomM, deep.bottomM), em) + 22;
    const top = 0.8 * em + 4;
    const water: Box = {
      left,
      right: Math.max(0.38 * wide, left + 7.4 * em),
      top,
      bottom: top + (high - 2 - top) / (1 + UNDER),
    };
    const right: Box = {
      left: water.right + em + 0.02 * wide,
      right: wide - Math.max(1.6 * em, 0.03 * wide),
      top: 2,
      bottom: high - 2,
    };
    // Where the hill is not shown the curve has all of the room.
    const hilly = deep.hillJ.length > 1;
    const middle = hilly ? right.top + 0.54 * (right.bottom - right.top) : right.bottom;
    const curve = drawnCurve(deep, this.sketched, { ...right, bottom: middle }, em);
    const hill = hilly
      ? drawnHill(deep, { ...right, top: middle + 0.3 * em }, em)
      : { picture: nothing, words: [], labels: [], covered: [] };
    const column = drawnColumn(deep, water, em);
    const labels: Label[] = [...column.labels, ...curve.labels, ...hill.labels];
    const taken = [...column.words, ...curve.words, ...hill.words];
    const within = { left: 1, top: 1, right: wide - 1, bottom: high - 1 };
    const placed = placeLabels(labels, within, taken, [...column.covered, ...curve.covered], this.#stood);
    return svg`${column.picture} ${curve.picture} ${hill.picture} ${drawnLabels(placed)}`;
  }
}
customElements.define('bench-deep', BenchDeep);

/** The water with its depths and its bodies, and in the flask where it turns. */
function drawnColumn(deep: DeepView, water: Box, em: number) {
  const { left, right, top, bottom } = water;
  const y = (depthM: number) => top + (depthM / deep.bottomM) * (bottom - top);
  const floor = bottom + FLOOR[deep.kind] * (bottom - top);
  const steps = TICKS_M[deep.kind];
  const apart = steps.find((m) => y(m) - top >= 1.3 * em) ?? steps.at(-1)!;
  const ticks = Array.from({ length: Math.floor(deep.bottomM / apart + 1e-9) + 1 }, (_, i) => {
    const depthM = i * apart;
    return { words: depthWords(depthM, deep.bottomM), y: y(depthM) };
  });
  const bodies = drawnBodies(deep, water, y, em);
  const back = turn(deep, water, y, em);
  return {
    picture: svg`<rect class="wet" x=${left} y=${top} width=${right - left} height=${floor - top}></rect>
      <path class="surface" d="M${left} ${top}H${right}"></path>
      <path class="glass-wall" d="M${left} 2V${floor}H${right}V2"></path>
      ${ticks.map(
        (tick) => svg`<path class="tick" d="M${left - 10} ${tick.y}h10"></path>
        <text class="small" x=${left - 15} y=${tick.y + 0.36 * em} text-anchor="end">${tick.words}</text>`,
      )}
      ${back.picture} ${bodies.picture}`,
    words: [...ticks.map((tick) => boxOf(tick.words, em, left - 15, tick.y + 0.36 * em, 'end')), ...back.words],
    labels: bodies.labels,
    covered: [...bodies.covered, { left, right, top: floor - 2, bottom: floor + 2 }],
  };
}

/** Above this the bottle comes back, below it does not. */
function turn({ kind, noReturnM, bottomM }: DeepView, { left, right }: Box, y: (depthM: number) => number, em: number) {
  if (kind !== 'bottle' || noReturnM === null || noReturnM <= 0 || noReturnM >= bottomM)
    return { picture: nothing, words: [] };
  const at = y(noReturnM);
  const lines = [
    { text: 'comes back', y: at - 0.4 * em },
    { text: 'does not', y: at + 1.2 * em },
  ];
  return {
    picture: svg`<path class="turn" d="M${left} ${at}H${right}"></path>
      ${lines.map((line) => svg`<text class="small" x=${right - 8} y=${line.y} text-anchor="end">${line.text}</text>`)}`,
    words: lines.map((line) => boxOf(line.text, em, right - 8, line.y, 'end')),
  };
}

function drawnBodies(deep: DeepView, { left, right, top, bottom }: Box, y: (depthM: number) => number, em: number) {
  const most = Math.max(...deep.bodies.map(({ netN }) => Math.abs(netN)), 1e-9);
  const longest = 0.17 * (bottom - top);
  const pxPerN = ((SCALES.find((scale) => scale * most <= LONGEST) ?? SCALES.at(-1)!) * longest) / LONGEST;
  const all = deep.bodies.map((body, i) => {
    const x = left + (right - left) * (deep.bodies.length > 1 ? [0.22, 0.67][i]! : 0.3);
    const middle = y(body.depthM);
    const mark =
      deep.kind === 'bottle'
        ? bottleMark(x, middle, 0.13 * (bottom - top), body)
        : bubbleMark(x, middle, Math.min(0.2 * (right - left), LITRE * (bottom - top)), body);
    const long = -body.netN * pxPerN;
    const boldPx = Math.max(4, 0.25 * em);
    const kind = body.netN > 0 ? 'net up' : 'net down';
    return {
      picture: svg`${mark.picture} ${Math.abs(long) < 2 ? nothing : arrow({ boldPx }, kind, x, middle, long)}`,
      covered: [
        mark.box,
        { left: x - boldPx, right: x + boldPx, top: middle + Math.min(0, long), bottom: middle + Math.max(0, long) },
      ],
      label: {
        key: body.name,
        lines: [{ kind: 'small', text: body.name }],
        sizePx: em,
        of: mark.box,
        side: middle > (top + bottom) / 2 ? 'above' : 'below',
      } satisfies Label,
    };
  });
  return {
    picture: all.map(({ picture }) => picture),
    labels: all.map(({ label }) => label),
    covered: all.flatMap(({ covered }) => covered),
  };
}
