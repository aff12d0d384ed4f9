import { Container, Graphics, GraphicsContext } from 'pixi.js';
import { TICKS_PER_S } from '../dive/index.ts';
import { depthToY, type Frame } from './geometry.ts';
import type { Style } from './layout.ts';
import { rowAtTick } from './line.ts';
import { mixed } from './tokens.ts';
import type { StageView } from './view.ts';

/** Silt that was stirred up hangs so long, seconds; contacts that follow within so long stir up no more. Practice. */
const HANGS_S = 9;
const APART_S = 1;
/** Speed of a contact that stirs up all that there is, m/s, and the least share of it. Practice. */
const FULL_MPS = 0.35;
const LEAST = 0.3;
/** Puffs of one contact, how high they rise in the end and how wide they are, metres. */
const PUFFS = 26;
const RISES_M = 0.34;
const WIDE_M = 0.2;
/** Where motion is unwelcome the cloud stands as it is after so long, seconds. */
const STILL_S = 1.6;
const RADIUS_PX = 20;

/** A puff of silt: its middle beside the chest and above the ground, metres, its radius and how dense it is, 0…1. */
export interface Puff {
  readonly besideM: number;
  readonly depthM: number;
  readonly radiusM: number;
  readonly dense: number;
}

/** The silt in the water at a moment: it rises where the body came down, spreads, and settles. */
export function siltAt({ events, rig, nowS, recording, reducedMotion }: StageView): Puff[] {
  const out: Puff[] = [];
  let lastS = -Infinity;
  for (const { tick, kind, speedMps = 0 } of events) {
    const atS = tick / TICKS_PER_S;
    if (kind !== 'bottom-touched' && kind !== 'ledge-touched') continue;
    const ageS = nowS - atS;
    if (ageS < 0) break;
    if (atS - lastS < APART_S) continue;
    lastS = atS;
    if (ageS >= HANGS_S) continue;
    const groundM = kind === 'ledge-touched' ? (rig.ledgeM ?? rig.bottomM) : rig.bottomM;
    const strength = Math.min(Math.max(speedMps / FULL_MPS, LEAST), 1);
    // A body that stands stirs up less of the ground than one that lies.
    const reachM = 0.35 + 0.85 * Math.abs(recording.at(rowAtTick(recording, tick), 'pitchCos'));
    const s = reducedMotion ? STILL_S : ageS;
    for (let i = 0; i < PUFFS; i++) {
      const along = (i / (PUFFS - 1)) * 2 - 1;
      const chance = Math.abs(Math.sin((tick + i * 57) * 12.9898) * 43758.5453) % 1;
      const height = RISES_M * strength * (0.4 + 0.6 * chance) * (1 - Math.exp(-s / 0.9)) * (1 - (s / HANGS_S) ** 2);
      const dense = strength * (1 - s / HANGS_S) * Math.min(1, s / 0.25 + 0.3);
      out.push({
        besideM: -0.35 + along * reachM * (1 + 0.05 * s),
        depthM: groundM - height * (1 - 0.5 * along * along),
        radiusM: WIDE_M * (0.6 + 0.4 * chance) * (0.7 + 0.12 * s),
        dense,
      });
    }
  }
  return out;
}

/** Silt over the ground after the diver touched it: a soft cloud that settles; a still smudge where motion is unwelcome. */
export class Silt {
  readonly root = new Container();
  readonly #shape: GraphicsContext;
  readonly #puffs: Graphics[] = [];

  constructor({ tokens }: Style) {
    this.#shape = new GraphicsContext().circle(0, 0, RADIUS_PX).fill(mixed(tokens.ground, tokens.secondary, 0.45));
  }

  draw(view: StageView, frame: Frame): void {
    const puffs = siltAt(view);
    const px = frame.pxPerM * frame.enlarged;
    puffs.forEach(({ besideM, depthM, radiusM, dense }, i) => {
      const g = (this.#puffs[i] ??= this.root.addChild(new Graphics(this.#shape)));
      g.visible = true;
      g.alpha = 0.16 * dense;
      g.scale.set((radiusM * px) / RADIUS_PX);
      g.position.set(frame.nowX + besideM * px, depthToY(frame, depthM));
    });
    for (let i = puffs.length; i < this.#puffs.length; i++) this.#puffs[i]!.visible = false;
  }
}
