import { Container, Graphics } from 'pixi.js';
import { Sinking, type Drop, type FallWater } from '../bench/index.ts';
import { TICKS_PER_S } from '../dive/index.ts';
import { LEAD_KG_PER_M3 } from '../diver/index.ts';
import { waterAt } from '../water/index.ts';
import { leadSpots } from './diver-lead.ts';
import { legRibs, poseOf } from './figure-pose.ts';
import { depthToY, type Frame } from './geometry.ts';
import type { Style } from './layout.ts';
import { rowAtTick } from './line.ts';
import type { StageView } from './view.ts';

/** A piece that was let go: when, and how it leaves. */
export interface Loose {
  readonly atS: number;
  readonly drop: Drop;
  readonly water: FallWater;
}

/** So many ways are kept before they are reckoned anew. */
const KEPT = 32;

/** The pieces let go up to now, in the order in which they went: each leaves where it sat, with the diver's speed and attitude. */
export function looseOf(view: StageView): Loose[] {
  const { rig, events, nowS, recording, controls } = view;
  const out: Loose[] = [];
  for (const { tick, kind, piece = 1 } of events) {
    const atS = tick / TICKS_PER_S;
    const part = rig.lead[piece - 1];
    if (kind !== 'lead-released' || atS > nowS || !part) continue;
    const { depthM, speedMps, pitchCos, pitchSin } = recording.row(rowAtTick(recording, tick));
    // Legs at rest: what kicks moves on, what has gone must not.
    const still = { ...view, nowS: 0, state: { ...view.state, pitchCos, pitchSin, thrustN: 0 } };
    const spot = leadSpots(rig.lead, legRibs(poseOf(still).near).ankle)[piece - 1]!;
    const { densityKgPerM3 } = waterAt(rig.column, Math.max(depthM, 0), { densityKgPerM3: 0, pressurePa: 0 });
    const leavesM = depthM + spot.y * pitchCos - spot.x * pitchSin;
    const onLedge = rig.ledgeM !== null && controls.ledge === 1 && leavesM < rig.ledgeM;
    out.push({
      atS,
      drop: {
        massKg: part.massKg,
        densityKgPerM3: LEAD_KG_PER_M3,
        longM: spot.longM,
        highM: spot.highM,
        depthM: leavesM,
        besideM: spot.x * pitchCos + spot.y * pitchSin,
        speedMps,
        turn: -Math.atan2(pitchSin, pitchCos),
        turnRadps: (piece % 2 === 0 ? -1 : 1) * (1.2 + 0.4 * piece),
      },
      water: {
        densityKgPerM3,
        gravityMps2: rig.column.gravityMps2,
        groundM: onLedge ? rig.ledgeM : rig.bottomM,
      },
    });
  }
  return out;
}

/** Lead that was let go: it sinks to the ground and lies there. Where motion is unwelcome it lies there at once. */
export class LooseLead {
  readonly root = new Container();
  readonly #style: Style;
  readonly #ways = new Map<string, Sinking>();
  readonly #pieces: { readonly g: Graphics; key: string }[] = [];

  constructor(style: Style) {
    this.#style = style;
  }

  draw(view: StageView, frame: Frame): void {
    const loose = view.state.releasedMask === 0 ? [] : looseOf(view);
    if (this.#ways.size > KEPT) this.#ways.clear();
    let chain = '';
    const gone: { readonly piece: Loose; readonly way: Sinking }[] = [];
    loose.forEach((piece, i) => {
      // Each way follows from the piece and from those that went before.
      chain += JSON.stringify(piece);
      let way = this.#ways.get(chain);
      if (!way) {
        const before = gone.filter((other) => other.piece.atS < piece.atS);
        way = new Sinking(
          piece.drop,
          piece.water,
          before.map((other) => ({ drop: other.piece.drop, pose: other.way.rest() })),
        );
        this.#ways.set(chain, way);
      }
      gone.push({ piece, way });
      this.#place(i, piece, view.reducedMotion ? way.rest() : way.at(view.nowS - piece.atS), frame);
    });
    for (let i = loose.length; i < this.#pieces.length; i++) this.#pieces[i]!.g.visible = false;
  }

  #place(i: number, { drop, water }: Loose, pose: ReturnType<Sinking['at']>, frame: Frame): void {
    const { tokens, unit } = this.#style;
    const px = frame.pxPerM * frame.enlarged;
    const slot = (this.#pieces[i] ??= { g: this.root.addChild(new Graphics()), key: '' });
    const [long, high] = [drop.longM * px, drop.highM * px];
    const key = `${long} ${high}`;
    if (key !== slot.key)
      slot.g
        .clear()
        .roundRect(-long / 2, -high / 2, long, high, 0.012 * px)
        .fill(tokens.ink)
        .stroke({ width: unit, color: tokens.paper });
    slot.key = key;
    // An enlarged piece reaches as far down as it would at its true size: it lies on the ground, not in it.
    const half = (Math.abs(Math.sin(pose.turn)) * long + Math.abs(Math.cos(pose.turn)) * high) / 2;
    const y = Math.min(depthToY(frame, pose.depthM), depthToY(frame, water.groundM) - half);
    slot.g.visible = y > -long && y < frame.heightPx + long;
    slot.g.position.set(frame.nowX + pose.besideM * px, y);
    slot.g.rotation = pose.turn;
  }
}
