import { Container, Graphics } from 'pixi.js';
import { LEAD_PLACES, type LeadPart } from '../diver/index.ts';
import { TICKS_PER_S } from '../dive/index.ts';
import type { Frame } from './geometry.ts';
import { legRibs, type Pose } from './figure-pose.ts';
import type { Spot } from './figure-shape.ts';
import type { Style } from './layout.ts';
import type { StageView } from './view.ts';

/** How fast a piece that was let go sinks, m/s, and for how long it is seen. Practice. */
const SINKS_MPS = 1.6;
const SEEN_S = 4;

/** Lead where it sits; what was let go sinks away below. */
export class DiverLead {
  readonly worn = new Graphics();
  readonly sinking = new Container();
  readonly #style: Style;
  readonly #fallen: Graphics[] = [];
  #key = '';

  constructor(style: Style) {
    this.#style = style;
  }

  /** @param toPage from metres in the figure's frame to the page, for what has left the figure */
  draw(view: StageView, frame: Frame, pose: Pose, pxPerM: number): void {
    const { rig, state } = view;
    const ankle = legRibs(pose.near).ankle;
    const key = `${state.releasedMask} ${pxPerM} ${Math.round(ankle.x * 300)} ${Math.round(ankle.y * 300)} ${rig.lead.length}`;
    if (key !== this.#key) {
      this.#key = key;
      this.#build(rig.lead, state.releasedMask, ankle, pxPerM);
    }
    this.#sink(view, frame, pxPerM);
  }

  #build(lead: readonly LeadPart[], released: number, ankle: Spot, pxPerM: number): void {
    const { tokens, unit } = this.#style;
    const g = this.worn.clear();
    if (lead.some((piece, i) => placeOf(piece) === 'belt' && (released & (1 << i)) === 0))
      g.moveTo(-0.33 * pxPerM, -0.11 * pxPerM)
        .lineTo(-0.33 * pxPerM, 0.12 * pxPerM)
        .stroke({ width: 0.035 * pxPerM, color: tokens.ink });
    const taken = new Map<string, number>();
    lead.forEach((piece, i) => {
      const place = placeOf(piece);
      const before = taken.get(place) ?? 0;
      const width = widthOf(piece.massKg);
      taken.set(place, before + width + 0.012);
      if ((released & (1 << i)) !== 0) return;
      const { x, y } = spotOf(place, before + width / 2, ankle);
      const high = width * 0.7;
      g.roundRect((x - width / 2) * pxPerM, (y - high / 2) * pxPerM, width * pxPerM, high * pxPerM, 0.012 * pxPerM)
        .fill(tokens.ink)
        .stroke({ width: unit, color: tokens.paper });
    });
  }

  #sink({ rig, events, nowS, recording }: StageView, frame: Frame, pxPerM: number): void {
    const { tokens, unit } = this.#style;
    let used = 0;
    for (const event of events) {
      const age = nowS - event.tick / TICKS_PER_S;
      if (event.kind !== 'lead-released' || age < 0 || age > SEEN_S) continue;
      const g = (this.#fallen[used] ??= this.sinking.addChild(
        new Graphics()
          .roundRect(-0.05, -0.031, 0.1, 0.062, 0.012)
          .fill(tokens.ink)
          .stroke({ width: 0.012 * unit, color: tokens.paper }),
      ));
      const row = Math.min(Math.round((event.tick - recording.startTick) / 12), recording.rows - 1);
      const depthM = recording.at(Math.max(0, row), 'depthM') + 0.15 + SINKS_MPS * age;
      g.visible = depthM < rig.bottomM + 0.05;
      g.scale.set((pxPerM * widthOf(event.massKg ?? 1)) / 0.1);
      g.position.set(frame.nowX + (-0.34 - 0.11 * used) * pxPerM, (depthM - frame.topM) * frame.pxPerM);
      g.rotation = age * (used % 2 === 0 ? 0.8 : -1.1);
      used++;
    }
    for (let i = used; i < this.#fallen.length; i++) this.#fallen[i]!.visible = false;
  }
}

/** Side of a piece as drawn, metres: lead of that mass as a block twice as long as thick. */
function widthOf(massKg: number): number {
  return 0.1 * Math.cbrt(Math.max(massKg, 0.2));
}

function placeOf(piece: LeadPart): keyof typeof LEAD_PLACES {
  const names = Object.keys(LEAD_PLACES) as (keyof typeof LEAD_PLACES)[];
  return (
    names.find(
      (name) => LEAD_PLACES[name].headwardM === piece.headwardM && LEAD_PLACES[name].backwardM === piece.backwardM,
    ) ?? 'belt'
  );
}

function spotOf(place: keyof typeof LEAD_PLACES, along: number, ankle: Spot): Spot {
  if (place === 'ankle') return { x: ankle.x + 0.06 + along, y: ankle.y + 0.03 };
  if (place === 'back') return { x: 0.2 - along, y: -0.125 };
  if (place === 'pocket') return { x: -0.1 - along, y: 0.06 };
  return { x: -0.24 - along, y: 0.135 };
}
