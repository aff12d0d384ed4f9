import { html, nothing, svg } from 'lit';
import type { DeepBody, DeepView } from '../bench/index.ts';
import { depthWords, forceText, isEven, mlText } from './bench-words.ts';
import { Panel } from './panel.ts';

/** The tank on the left, the curve of the gas on the right, the hill under it: pixels of the drawing. */
const TANK = { x: 120, y: 30, wide: 250, high: 520 };
const CURVE = { x: 540, y: 40, wide: 380, high: 220 };
const HILL = { x: 540, y: 350, wide: 380, high: 170 };
/** A gas of 1 L is drawn with this radius in the deep tank, and one of 10 mL in the flask, pixels. */
const LITRE_R = 44;
const FLASK_R = 26;
/** Newtons to pixels of arrows, of which the largest that fits is taken, and the longest arrow. */
const SCALES = [20_000, 10_000, 4000, 2000, 1000, 400, 200, 100, 50, 20, 10] as const;
const LONGEST = 90;

/** A column of water with what gives way under pressure: bag and ball in a deep tank, or a bottle in a flask. */
export class BenchDeep extends Panel {
  static override properties = { deep: { attribute: false }, sketched: { attribute: false } };
  declare deep: DeepView | null;
  /** Pressure and volume as somebody sketched them before. */
  declare sketched: readonly (readonly [number, number])[];

  constructor() {
    super();
    this.deep = null;
    this.sketched = [];
  }

  override render() {
    const deep = this.deep;
    if (!deep) return html``;
    const y = (depthM: number) => TANK.y + (depthM / deep.bottomM) * TANK.high;
    return html`<svg viewBox="0 0 980 590" role="img" aria-label="A column of water ${depthWords(deep.bottomM, deep.bottomM)} deep">
      ${svg`<rect class="wet" x=${TANK.x} y=${TANK.y} width=${TANK.wide} height=${TANK.high}></rect>
      <path class="surface" d="M${TANK.x} ${TANK.y}h${TANK.wide}"></path>
      <path class="glass-wall" d="M${TANK.x} ${TANK.y - 20}v${TANK.high + 20}h${TANK.wide}v${-TANK.high - 20}"></path>
      ${ticks(deep.bottomM).map(
        (depthM) => svg`<path class="tick" d="M${TANK.x - 12} ${y(depthM)}h12"></path>
        <text x=${TANK.x - 18} y=${y(depthM) + 7} text-anchor="end">${depthWords(depthM, deep.bottomM)}</text>`,
      )}
      ${deep.kind === 'bottle' ? this.#back(deep, y) : nothing}
      ${bodies(deep, y)}
      ${curve(deep, this.sketched)}
      ${hill(deep)}`}
    </svg>`;
  }

  /** Where it turns: above this the bottle comes back, below it does not. */
  #back({ noReturnM, bottomM }: DeepView, y: (depthM: number) => number) {
    if (noReturnM === null || noReturnM <= 0 || noReturnM >= bottomM) return nothing;
    return svg`<path class="turn" d="M${TANK.x} ${y(noReturnM)}h${TANK.wide}"></path>
      <text class="small" x=${TANK.x + TANK.wide - 8} y=${y(noReturnM) - 8} text-anchor="end">comes back</text>
      <text class="small" x=${TANK.x + TANK.wide - 8} y=${y(noReturnM) + 22} text-anchor="end">does not</text>`;
  }
}
customElements.define('bench-deep', BenchDeep);

function ticks(bottomM: number): number[] {
  const step = bottomM > 2 ? 5 : 0.1;
  return Array.from({ length: Math.floor(bottomM / step + 1e-9) + 1 }, (_, i) => i * step);
}

function bodies(deep: DeepView, y: (depthM: number) => number) {
  const most = Math.max(...deep.bodies.map(({ netN }) => Math.abs(netN)), 1e-9);
  const pxPerN = SCALES.find((scale) => scale * most <= LONGEST) ?? SCALES.at(-1)!;
  return deep.bodies.map((body, i) => {
    const x = TANK.x + TANK.wide * (deep.bodies.length > 1 ? 0.26 + 0.48 * i : 0.33);
    const middle = y(body.depthM);
    const long = -body.netN * pxPerN;
    const head = Math.min(14, Math.abs(long));
    const kind = body.netN > 0 ? 'up' : 'down';
    return svg`${deep.kind === 'bottle' ? bottle(x, middle, body) : ball(x, middle, body)}
      ${
        Math.abs(long) < 2
          ? nothing
          : svg`<path class="arrow net ${kind}" d="M${x} ${middle}v${long - Math.sign(long) * head}"></path>
        <path class="head net ${kind}" d="M${x} ${middle + long}l-9 ${-Math.sign(long) * head}h18Z"></path>`
      }
      <text class="small" x=${x} y=${middle > TANK.y + TANK.high - 90 ? middle - 62 : middle + 72} text-anchor="middle">${body.name}</text>`;
  });
}

/** Volumes are drawn as balls: radius goes with the cube root. What is firm is ink, gas amber. */
function ball(x: number, y: number, { gasM3, firmM3 }: DeepBody) {
  const r = LITRE_R * Math.cbrt(1000 * (gasM3 > 0 ? gasM3 : firmM3));
  return gasM3 > 0
    ? svg`<circle class="gas-ball" cx=${x} cy=${y} r=${r}></circle>`
    : svg`<circle class="firm-ball" cx=${x} cy=${y} r=${r}></circle>`;
}

/** An open bottle, mouth down, with a bubble in its top. */
function bottle(x: number, y: number, { gasM3 }: DeepBody) {
  const high = Math.min(66, FLASK_R * 0.16 * gasM3 * 1e6 + 4);
  return svg`<path class="gas-ball" d="M${x - 15} ${y - 42}h30v${high}h-30Z"></path>
    <path class="bottle" d="M${x - 15} ${y + 30}V${y - 36}q0 -8 8 -8h14q8 0 8 8V${y + 30}"></path>`;
}

/** Volume of the gas against pressure, as far as it has been: the curve is drawn by going there. */
function curve({ been, pressurePa, bodies: [first] }: DeepView, sketched: readonly (readonly [number, number])[]) {
  const gas = first?.gasM3 ?? 0;
  const most = Math.max(gas, ...[...been, ...sketched].map(([, volume]) => volume));
  const bars = Math.max(2, ...[...been, ...sketched].map(([pa]) => pa / 1e5));
  // Words at every second bar where there are many.
  const apart = bars > 3.5 ? 2 : 1;
  const x = (pa: number) => CURVE.x + (pa / 1e5 / bars) * CURVE.wide;
  const y = (volume: number) => CURVE.y + CURVE.high * (1 - volume / (1.1 * most));
  // Near the right edge the number stands to the left of its dot.
  const late = x(pressurePa) > CURVE.x + 0.75 * CURVE.wide;
  const line = [...been].sort((a, b) => a[0] - b[0]);
  return svg`<text x=${CURVE.x} y=${CURVE.y - 12}>volume of the gas</text>
    <path class="tick" d="M${CURVE.x} ${CURVE.y}v${CURVE.high}h${CURVE.wide}"></path>
    ${Array.from({ length: Math.floor((bars + apart - 1) / apart) }, (_, i) => 1 + apart * i).map(
      (bar) => svg`<path class="tick" d="M${x(bar * 1e5)} ${CURVE.y + CURVE.high}v6"></path>
      <text class="small" x=${x(bar * 1e5)} y=${CURVE.y + CURVE.high + 24} text-anchor="middle">${bar} bar</text>`,
    )}
    ${sketch(sketched.map(([pa, volume]) => [x(pa), y(volume)] as const))}
    <path class="boyle" d=${line.map(([pa, volume], i) => `${i === 0 ? 'M' : 'L'}${x(pa).toFixed(1)} ${y(volume).toFixed(1)}`).join('') || 'M0 0'}></path>
    <circle class="gas-ball" cx=${x(pressurePa)} cy=${y(gas)} r="8"></circle>
    <text x=${x(pressurePa) + (late ? 8 : 14)} y=${y(gas) - (late ? 16 : 10)} text-anchor=${late ? 'end' : 'start'}>${gas >= 1e-4 ? `${(gas * 1e3).toFixed(2)} L` : mlText(gas)}</text>`;
}

/** What was sketched before it was seen: hollow, and broken, so that it is told from what is. */
function sketch(points: readonly (readonly [x: number, y: number])[]) {
  if (points.length < 2) return nothing;
  const sorted = [...points].sort((a, b) => a[0] - b[0]);
  const [lastX, lastY] = sorted.at(-1)!;
  return svg`<path class="sketched" d=${sorted.map(([px, py], i) => `${i === 0 ? 'M' : 'L'}${px.toFixed(1)} ${py.toFixed(1)}`).join('')}></path>
    ${sorted.map(([px, py]) => svg`<circle class="sketched" cx=${px} cy=${py} r="6"></circle>`)}
    <text class="small" x=${lastX} y=${lastY} dy="1.5em" text-anchor="end">you said</text>`;
}

/** The work to carry the first body down, with the body as a ball: a hilltop where it is neutral. */
function hill({ kind, hillJ, bodies: [first], bottomM }: DeepView) {
  if (!first || hillJ.length < 2) return nothing;
  const [low, top] = [Math.min(...hillJ), Math.max(...hillJ)];
  const range = Math.max(top - low, 1e-4);
  const x = (depthM: number) => HILL.x + (depthM / bottomM) * HILL.wide;
  const y = (joules: number) => HILL.y + HILL.high * (1 - (joules - low) / range);
  const at = (first.depthM / bottomM) * (hillJ.length - 1);
  const [i, share] = [Math.min(Math.floor(at), hillJ.length - 2), at - Math.min(Math.floor(at), hillJ.length - 2)];
  const here = hillJ[i]! + share * (hillJ[i + 1]! - hillJ[i]!);
  const line = hillJ
    .map(
      (joules, k) =>
        `${k === 0 ? 'M' : 'L'}${x((k / (hillJ.length - 1)) * bottomM).toFixed(1)} ${y(joules).toFixed(1)}`,
    )
    .join('');
  return svg`<text x=${HILL.x} y=${HILL.y - 24}>the ${first.name} as a ball on its hill</text>
    <path class="hill" d="${line}V${HILL.y + HILL.high}H${HILL.x}Z"></path>
    <path class="edge" d=${line}></path>
    <circle class="rolls" cx=${x(first.depthM)} cy=${y(here) - 9} r="9"></circle>
    <text class="small" x=${HILL.x} y=${HILL.y + HILL.high + 24}>surface</text>
    <text class="small" x=${HILL.x + HILL.wide} y=${HILL.y + HILL.high + 24} text-anchor="end">${depthWords(bottomM, bottomM)}</text>
    <text class="small" x=${HILL.x + HILL.wide / 2} y=${HILL.y + HILL.high + 24} text-anchor="middle">${isEven(first.netN, kind) ? 'even' : `${forceText(first.netN)} ${first.netN > 0 ? 'light' : 'heavy'}`}</text>`;
}
