import { Container, Graphics, GraphicsContext } from 'pixi.js';
import { FLAG, TICKS_PER_S, type Recording } from '../dive/index.ts';
import { mouthOf } from './diver-body.ts';
import { depthToY, type Frame } from './geometry.ts';
import type { Style } from './layout.ts';
import type { StageView } from './view.ts';

/** Bubbles rise so fast, m/s, and are followed so long, seconds. Practice. */
const RISE_MPS = 0.3;
const SEEN_S = 7;
/** Rows that share their bubbles, and the gas of one bubble, m³. */
const GROUP_ROWS = 3;
const LEAST_M3 = 0.05e-3;
const ATMOSPHERE_M = 10;

/** A bubble at one moment: where, and how large, metres. */
export interface Bubble {
  readonly besideM: number;
  readonly depthM: number;
  readonly radiusM: number;
}

/**
 * The bubbles in the water at a moment, from the recording alone, so that rewinding and freezing show the same ones: gas that left
 * lungs and vents in the last seconds, risen and grown since.
 */
export function bubblesAt(recording: Recording, nowS: number): Bubble[] {
  const out: Bubble[] = [];
  const startS = recording.startTick / TICKS_PER_S;
  const last = Math.min(recording.rows - 1, Math.floor((nowS - startS) * 10));
  const first = Math.max(0, last - SEEN_S * 10);
  for (let group = Math.ceil(first / GROUP_ROWS); (group + 1) * GROUP_ROWS <= last; group++) {
    const [from, to] = [group * GROUP_ROWS, (group + 1) * GROUP_ROWS];
    if ((recording.at(to, 'flags') & FLAG.headOut) !== 0 && recording.at(to, 'depthM') < 0.5) continue;
    const breathed = breathedOutM3(recording, from, to);
    const vented = recording.at(to, 'letOutM3') - recording.at(from, 'letOutM3');
    const ageS = nowS - startS - to / 10;
    const gaze = 0.5 + 0.95 * Math.max(0, recording.at(to, 'pitchSin'));
    if (breathed > LEAST_M3) push(out, recording, to, mouthOf(gaze), breathed, ageS, group);
    if (vented > LEAST_M3) push(out, recording, to, [0.28, -0.14], vented, ageS, group + 7);
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

function push(
  out: Bubble[],
  recording: Recording,
  row: number,
  from: readonly [number, number],
  volumeM3: number,
  ageS: number,
  seed: number,
): void {
  const [cos, sin] = [recording.at(row, 'pitchCos'), recording.at(row, 'pitchSin')];
  const chance = (k: number) => Math.abs(Math.sin(seed * 12.9898 + k * 78.233)) % 1;
  const leftM = recording.at(row, 'depthM') + from[1] * cos - from[0] * sin;
  const speed = RISE_MPS * (0.85 + 0.3 * chance(1));
  const depthM = leftM - speed * ageS;
  if (depthM < 0) return;
  const grown = Math.cbrt((ATMOSPHERE_M + Math.max(0, leftM)) / (ATMOSPHERE_M + depthM));
  out.push({
    besideM: from[0] * cos + from[1] * sin + (chance(2) - 0.5) * 0.12 + 0.03 * Math.sin(ageS * 3 + seed),
    depthM,
    radiusM: Math.min(0.075, 0.55 * Math.cbrt((3 * volumeM3) / (4 * Math.PI))) * grown * (0.8 + 0.4 * chance(3)),
  });
}

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
    const shown =
      view.rig.lungs.open && !view.projector && !view.reducedMotion ? bubblesAt(view.recording, view.nowS) : [];
    const px = frame.pxPerM * frame.enlarged;
    shown.forEach(({ besideM, depthM, radiusM }, i) => {
      const bubble = (this.#pool[i] ??= this.root.addChild(new Graphics(this.#shape)));
      bubble.visible = true;
      bubble.scale.set(Math.max(2.2 * this.#style.unit, radiusM * px) / 10);
      bubble.position.set(frame.nowX + besideM * px, depthToY(frame, depthM));
    });
    for (let i = shown.length; i < this.#pool.length; i++) this.#pool[i]!.visible = false;
  }
}
