import { svg, html } from 'lit';
import type { Prompt } from '../lesson/index.ts';

/** Size of the sketch of a curve, pixels, and what its edges leave. */
const SKETCH = { width: 300, height: 120, left: 30, right: 30, top: 14, bottom: 26 } as const;

/** A curve as it is chosen so far: the places along it in their order, joined by straight lines. */
export function curveSketch(prompt: Extract<Prompt, { kind: 'curve' }>, values: readonly number[]) {
  const { along, alongUnit, least, most } = prompt;
  const { width, height, left, right, top, bottom } = SKETCH;
  const [low, high] = [Math.min(...along), Math.max(...along)];
  const x = (at: number) => left + ((at - low) / (high - low || 1)) * (width - left - right);
  const y = (value: number) => top + ((most - value) / (most - least)) * (height - top - bottom);
  const points = along.map((at, i) => [x(at), y(values[i] ?? least)] as const);
  const line = [...points].sort((a, b) => a[0] - b[0]).map((point) => point.join());
  // Nothing lies at the foot where the scale goes below it.
  const foot = y(Math.max(least, 0));
  return html`<svg class="sketch" viewBox="0 0 ${width} ${height}" aria-hidden="true">
    <line x1="0" x2=${width} y1=${foot} y2=${foot} class="rule" />
    ${least < 0 ? svg`<text x="2" y=${foot - 5}>0</text>` : null}
    <polyline points=${line.join(' ')} class="ink" />
    ${points.map(
      ([cx, cy], i) =>
        svg`<circle cx=${cx} cy=${cy} r="4.5" class="dot" />
          <text x=${cx} y=${height - 6} text-anchor="middle">${along[i]}${i === 0 ? ` ${alongUnit}` : ''}</text>`,
    )}
  </svg>`;
}

/** 9 m/min is 45° here as everywhere: seconds for each metre that the paper is wide. */
const SECONDS_PER_METRE = 1 / 0.15;
/** Widest and highest that the line of a watched dive gets, pixels, and metres that it shows at least. */
const LINE = { width: 330, height: 170, edge: 22, leastM: 2 } as const;

/** The line of a dive that was shown, slope as speed, with a number at each moment that is spoken about. */
export function watchedLine({ line = [], frames = [] }: Extract<Prompt, { kind: 'watch' }>) {
  if (line.length < 2) return html``;
  const depths = line.map(([, depthM]) => depthM);
  const shallow = Math.min(...depths);
  const tallM = Math.max(Math.max(...depths) - shallow, LINE.leastM);
  const [fromS, toS] = [line[0]![0], line[line.length - 1]![0]];
  const wideM = (toS - fromS) / SECONDS_PER_METRE;
  const perM = Math.min((LINE.width - 2 * LINE.edge) / wideM, (LINE.height - 2 * LINE.edge) / tallM);
  const x = (atS: number) => LINE.edge + ((atS - fromS) / SECONDS_PER_METRE) * perM;
  const y = (depthM: number) => LINE.edge + (depthM - shallow) * perM;
  const width = Math.max(120, Math.ceil(wideM * perM + 2 * LINE.edge + 40));
  const height = Math.ceil(tallM * perM + 2 * LINE.edge);
  return html`<svg class="watched ${width < 180 ? 'aside' : ''}" viewBox="0 0 ${width} ${height}" width=${width} height=${height} aria-hidden="true">
    ${shallow < 0.7 ? svg`<line x1="0" x2=${width} y1=${y(0)} y2=${y(0)} class="rule" />` : ''}
    <polyline points=${line.map(([atS, depthM]) => `${x(atS)},${y(depthM)}`).join(' ')} class="ink" />
    ${frames.map(
      ({ atS, depthM }, i) =>
        svg`<circle cx=${x(atS)} cy=${y(depthM)} r="4.5" class="dot" />
          <text x=${x(atS) + 8} y=${y(depthM) - 6}>${i + 1}</text>`,
    )}
  </svg>`;
}
