import { nothing, svg } from 'lit';
import type { DeepView } from '../bench/index.ts';
import { boxOf, widthPx, type Box, type Label } from './bench-labels.ts';
import { forceText } from './bench-newtons.ts';
import { depthWords, isEven, mlText } from './bench-words.ts';

/** Something drawn, the boxes of words that stand where they must, and words that stand beside something. */
export interface DrawnWithWords {
  readonly picture: unknown;
  readonly words: readonly Box[];
  readonly labels: readonly Label[];
  /** What words cover only where there is no other place. */
  readonly covered: readonly Box[];
}

const lineOf = (points: readonly (readonly [x: number, y: number])[]) =>
  points.map(([x, y], i) => `${i === 0 ? 'M' : 'L'}${x.toFixed(1)} ${y.toFixed(1)}`).join('');

/** The first of some words that fits the room. */
const fitting = (words: readonly string[], em: number, { left, right }: Box): string =>
  words.find((one) => widthPx(one, em) < right - left + em) ?? words.at(-1)!;

/** Volume of the gas against pressure, as far as it has been: the curve is drawn by going there. */
export function drawnCurve(
  { been, pressurePa, bodies: [first] }: DeepView,
  sketched: readonly (readonly [number, number])[],
  room: Box,
  em: number,
): DrawnWithWords {
  const gas = first?.gasM3 ?? 0;
  const all = [...been, ...sketched];
  const most = Math.max(gas, ...all.map(([, volume]) => volume));
  const bars = Math.max(2, ...all.map(([pa]) => pa / 1e5));
  const volumes = volumeMarks(most);
  const namesPx = Math.max(...volumes.map(({ text }) => widthPx(text, em))) + 10;
  const [left, right, top, foot] = [room.left + namesPx, room.right, room.top + 1.5 * em, room.bottom - 1.6 * em];
  const x = (pa: number) => left + (pa / 1e5 / bars) * (right - left);
  const y = (volume: number) => top + (foot - top) * (1 - volume / (1.1 * most));
  // Words at every second bar where there are many, or little room.
  const wide = widthPx('5 bar', em) + 0.6 * em;
  const apart = Math.max(bars > 3.5 ? 2 : 1, Math.ceil((wide * bars) / (right - left)));
  const marks = Array.from({ length: Math.floor((bars + apart - 1) / apart) }, (_, i) => 1 + apart * i);
  const dot: Box = { left: x(pressurePa) - 8, right: x(pressurePa) + 8, top: y(gas) - 8, bottom: y(gas) + 8 };
  const said = sketched.map(([pa, volume]) => [x(pa), y(volume)] as const).sort((a, b) => a[0] - b[0]);
  const line = [...been].sort((a, b) => a[0] - b[0]).map(([pa, volume]) => [x(pa), y(volume)] as const);
  const title = fitting(['volume of the gas', 'gas'], em, room);
  const number = gas >= 1e-4 ? `${(gas * 1e3).toFixed(2)} L` : mlText(gas);
  const labels: Label[] = [{ key: 'gas', lines: [{ kind: '', text: number }], sizePx: em, of: dot, side: 'right' }];
  const last = said.at(-1);
  if (last) {
    const of = { left: last[0] - 6, right: last[0] + 6, top: last[1] - 6, bottom: last[1] + 6 };
    labels.push({ key: 'said', lines: [{ kind: 'small', text: 'you said' }], sizePx: em, of, side: 'below' });
  }
  return {
    picture: svg`<text x=${room.left} y=${room.top + em}>${title}</text>
      ${volumes.map(
        ({ m3, text }) => svg`<path class="tick" d="M${left} ${y(m3)}h-5"></path>
        <text class="small" x=${left - 9} y=${y(m3) + 0.36 * em} text-anchor="end">${text}</text>`,
      )}
      <path class="tick" d="M${left} ${top}V${foot}H${right}"></path>
      ${marks.map(
        (bar) => svg`<path class="tick" d="M${x(bar * 1e5)} ${foot}v5"></path>
        <text class="small" x=${x(bar * 1e5)} y=${foot + 1.3 * em} text-anchor="middle">${bar} bar</text>`,
      )}
      ${sketch(said)}
      ${line.length > 0 ? svg`<path class="boyle" d=${lineOf(line)}></path>` : nothing}
      <circle class="gas-ball" cx=${x(pressurePa)} cy=${y(gas)} r="8"></circle>`,
    words: [
      boxOf(title, em, room.left, room.top + em, 'start'),
      ...volumes.map(({ m3, text }) => boxOf(text, em, left - 9, y(m3) + 0.36 * em, 'end')),
      ...marks.map((bar) => boxOf(`${bar} bar`, em, x(bar * 1e5), foot + 1.3 * em, 'middle')),
    ],
    labels,
    covered: [...along(line), ...along(said), { left: left - 2, right, top: foot - 2, bottom: foot + 2 }],
  };
}

/** Two or three round volumes up to the most that is drawn, in litres or millilitres. */
function volumeMarks(mostM3: number): { readonly m3: number; readonly text: string }[] {
  const ten = 10 ** Math.floor(Math.log10(Math.max(mostM3, 1e-9)));
  const stepM3 = [0.5, 1, 2, 5].map((share) => share * ten).find((step) => mostM3 / step < 3.5) ?? 5 * ten;
  return Array.from({ length: Math.floor(mostM3 / stepM3 + 1e-9) }, (_, i) => {
    const m3 = (i + 1) * stepM3;
    return {
      m3,
      text: m3 >= 1e-4 ? `${Number((m3 * 1e3).toPrecision(2))} L` : `${Number((m3 * 1e6).toPrecision(2))} mL`,
    };
  });
}

/** Boxes along a line, so that words keep off it. */
function along(points: readonly (readonly [x: number, y: number])[]): Box[] {
  return points.slice(1).map(([x, y], i) => {
    const [fromX, fromY] = points[i]!;
    return { left: fromX - 3, right: x + 3, top: Math.min(y, fromY) - 3, bottom: Math.max(y, fromY) + 3 };
  });
}

/** What was sketched before it was seen: hollow, and broken, so that it is told from what is. */
function sketch(said: readonly (readonly [x: number, y: number])[]) {
  if (said.length < 2) return nothing;
  return svg`<path class="sketched" d=${lineOf(said)}></path>
    ${said.map(([px, py]) => svg`<circle class="sketched" cx=${px} cy=${py} r="6"></circle>`)}`;
}

/** The work to carry the first body down, with the body as a ball: a hilltop where it is neutral. */
export function drawnHill({ kind, hillJ, bodies: [first], bottomM }: DeepView, room: Box, em: number): DrawnWithWords {
  if (!first) return { picture: nothing, words: [], labels: [], covered: [] };
  const [low, high] = [Math.min(...hillJ), Math.max(...hillJ)];
  const range = Math.max(high - low, 1e-4);
  const r = 0.45 * em;
  const [left, right, top, foot] = [room.left, room.right, room.top + 1.5 * em + 2 * r, room.bottom - 1.5 * em];
  const x = (share: number) => left + share * (right - left);
  const y = (joules: number) => top + (foot - top) * (1 - (joules - low) / range);
  const at = (first.depthM / bottomM) * (hillJ.length - 1);
  const i = Math.min(Math.floor(at), hillJ.length - 2);
  const here = hillJ[i]! + (at - i) * (hillJ[i + 1]! - hillJ[i]!);
  const line = lineOf(hillJ.map((joules, k) => [x(k / (hillJ.length - 1)), y(joules)] as const));
  const title = fitting([`the ${first.name} on its hill`, 'its hill'], em, room);
  const net = isEven(first.netN, kind) ? 'even' : `${forceText(first.netN)} ${first.netN > 0 ? 'light' : 'heavy'}`;
  const end = depthWords(bottomM, bottomM);
  const half = widthPx(net, em) / 2 + 0.5 * em;
  const middle = (left + right) / 2;
  const tight = middle - half < left + widthPx('surface', em) || middle + half > right - widthPx(end, em);
  const words = [
    { text: title, x: left, y: room.top + em, anchor: 'start' as const, kind: '' },
    { text: end, x: right, y: foot + 1.3 * em, anchor: 'end' as const, kind: 'small' },
    {
      text: net,
      x: middle,
      y: foot + 1.3 * em,
      anchor: 'middle' as const,
      kind: '',
    },
    { text: 'surface', x: left, y: foot + 1.3 * em, anchor: 'start' as const, kind: 'small' },
  ];
  // What is left over is told in any case; where there is no room for all three, the ends are not named.
  const shown = tight ? words.filter(({ text }) => text === title || text === net) : words;
  return {
    picture: svg`<path class="hill" d="${line}V${foot}H${left}Z"></path>
      <path class="edge" d=${line}></path>
      <circle class="rolls" cx=${x(first.depthM / bottomM)} cy=${y(here) - r} r=${r}></circle>
      ${shown.map((one) => svg`<text class=${one.kind} x=${one.x} y=${one.y} text-anchor=${one.anchor}>${one.text}</text>`)}`,
    words: shown.map((one) => boxOf(one.text, em, one.x, one.y, one.anchor)),
    labels: [],
    covered: [],
  };
}
