import { Container, Graphics, GraphicsContext } from 'pixi.js';
import { FLAG, TICKS_PER_S, type Recording } from '../dive/index.ts';
import type { Rig } from '../diver/index.ts';
import { waterAt, type WaterAt } from '../water/index.ts';
import { mouthOf } from './diver-body.ts';
import { ACROSS_M } from './diver-gas.ts';
import { ventSpot } from './figure-pose.ts';
import type { Spot } from './figure-shape.ts';
import { depthToY, type Frame } from './geometry.ts';
import type { Style } from './layout.ts';
import type { StageView } from './view.ts';

/** Bubbles rise so fast, m/s, and are followed so long, seconds. Practice. */
const RISE_MPS = 0.3;
const SEEN_S = 7;
/** Rows that share their bubbles, and the gas of a bubble too small to be drawn, m³. */
const GROUP_ROWS = 3;
const LEAST_M3 = 0.05e-3;
/** Shares of the gas of one moment in the bubbles that it breaks into. */
const SHARES = [0.55, 0.3, 0.15] as const;

/** A bubble at one moment: where, and how large, metres. */
export interface Bubble {
  readonly besideM: number;
  readonly depthM: number;
  readonly radiusM: number;
}

/**
 * The bubbles in the water at a moment, from the recording alone, so that rewinding and freezing show the same ones: gas that left
 * lungs and vents in the last seconds, risen and grown since. Their areas are to the litres at that depth as those of lungs and
 * jacket are.
 */
export function bubblesAt(rig: Rig, recording: Recording, nowS: number): Bubble[] {
  const out: Bubble[] = [];
  const startS = recording.startTick / TICKS_PER_S;
  const last = Math.min(recording.rows - 1, Math.floor((nowS - startS) * 10 + 1e-6));
  const first = Math.max(0, last - SEEN_S * 10);
  for (let group = Math.ceil(first / GROUP_ROWS); (group + 1) * GROUP_ROWS <= last; group++) {
    const [from, to] = [group * GROUP_ROWS, (group + 1) * GROUP_ROWS];
    if ((recording.at(to, 'flags') & FLAG.headOut) !== 0 && recording.at(to, 'depthM') < 0.5) continue;
    const breathed = rig.lungs.open ? breathedOutM3(recording, from, to) : 0;
    const vented = recording.at(to, 'letOutM3') - recording.at(from, 'letOutM3');
    const ageS = nowS - startS - to / 10;
    const pitchSin = recording.at(to, 'pitchSin');
    const [mouthX, mouthY] = mouthOf(0.5 + 0.95 * Math.max(0, pitchSin));
    const left = { rig, recording, row: to, ageS };
    if (breathed > LEAST_M3) push(out, { ...left, from: { x: mouthX, y: mouthY }, volumeM3: breathed, seed: group });
    const vent = ventSpot(pitchSin);
    if (vented > LEAST_M3) push(out, { ...left, from: vent, volumeM3: vented, seed: group + 7 });
  }
  return out;
}

/** Gas that left open lungs between two rows, m³; what was blown into the jacket stays with the diver. */
function breathedOutM3(recording: Recording, from: number, to: number): number {
  const before = recording.at(from, 'lungMol');
  const lost = before - recording.at(to, 'lungMol');
  if (!(lost > 0)) return 0;
  const volume = (lost / before) * recording.at(from, 'lungM3');
  return volume - Math.max(0, recording.at(to, 'letInM3') - recording.at(from, 'letInM3'));
}

/** Gas that left at one moment: the row, the place in the figure's frame, how much, m³ at the depth of the diver. */
interface Left {
  readonly rig: Rig;
  readonly recording: Recording;
  readonly row: number;
  readonly ageS: number;
  readonly from: Spot;
  readonly volumeM3: number;
  readonly seed: number;
}

function push(out: Bubble[], { rig, recording, row, ageS, from, volumeM3, seed }: Left): void {
  const [cos, sin] = [recording.at(row, 'pitchCos'), recording.at(row, 'pitchSin')];
  const chance = (k: number) => Math.abs(Math.sin(seed * 12.9898 + k * 78.233)) % 1;
  const leftM = recording.at(row, 'depthM') + from.y * cos - from.x * sin;
  const pressurePa = (depthM: number) => waterAt(rig.column, Math.max(depthM, 0), WATER).pressurePa;
  const molLike = volumeM3 * pressurePa(recording.at(row, 'depthM'));
  SHARES.forEach((share, i) => {
    const depthM = leftM - RISE_MPS * (0.8 + 0.4 * chance(3 * i + 1)) * (ageS + 0.06 * i);
    if (depthM < 0) return;
    out.push({
      besideM:
        from.x * cos + from.y * sin + (chance(3 * i + 2) - 0.5) * 0.16 + 0.03 * Math.sin(ageS * 3 + seed + 2 * i),
      depthM,
      radiusM: Math.sqrt((share * molLike) / pressurePa(depthM) / ACROSS_M / Math.PI),
    });
  });
}

const WATER: WaterAt = { densityKgPerM3: NaN, pressurePa: NaN };

/** Gas on its way up: amber with an ink outline. Not on a projector, not where motion is unwelcome. */
export class Bubbles {
  readonly root = new Container();
  readonly #style: Style;
  readonly #shape: GraphicsContext;
  readonly #pool: Graphics[] = [];

  constructor(style: Style) {
    this.#style = style;
    this.#shape = new GraphicsContext()
      .circle(0, 0, 10)
      .fill(style.tokens.gas)
      .stroke({ width: 2.6, color: style.tokens.ink });
  }

  draw(view: StageView, frame: Frame): void {
    const shown = view.projector || view.reducedMotion ? [] : bubblesAt(view.rig, view.recording, view.nowS);
    const px = frame.pxPerM * frame.enlarged;
    shown.forEach(({ besideM, depthM, radiusM }, i) => {
      const bubble = (this.#pool[i] ??= this.root.addChild(new Graphics(this.#shape)));
      bubble.visible = true;
      bubble.scale.set(Math.max(1.6 * this.#style.unit, radiusM * px) / 10);
      bubble.position.set(frame.nowX + besideM * px, depthToY(frame, depthM));
    });
    for (let i = shown.length; i < this.#pool.length; i++) this.#pool[i]!.visible = false;
  }
}
