import { Graphics } from 'pixi.js';
import { LEAD_PLACES, type LeadPart } from '../diver/index.ts';
import { legRibs, type Pose } from './figure-pose.ts';
import type { Spot } from './figure-shape.ts';
import type { Style } from './layout.ts';
import type { StageView } from './view.ts';

/** Height of a piece as drawn against its length, and the gap between two, metres. */
const HIGH = 0.7;
const GAP_M = 0.012;

/** Where a piece sits in the figure's frame, and its sides as drawn, metres. */
export interface LeadSpot extends Spot {
  readonly longM: number;
  readonly highM: number;
}

/** The place of each piece, in the order of the rig: beside those that share its place. */
export function leadSpots(lead: readonly LeadPart[], ankle: Spot): LeadSpot[] {
  const along = new Map<string, number>();
  return lead.map((piece) => {
    const place = placeOf(piece);
    const before = along.get(place) ?? 0;
    const longM = longOf(piece.massKg);
    along.set(place, before + longM + GAP_M);
    return { ...spotOf(place, before + longM / 2, ankle), longM, highM: longM * HIGH };
  });
}

/** Lead where it sits. */
export class DiverLead {
  readonly worn = new Graphics();
  readonly #style: Style;
  #key = '';

  constructor(style: Style) {
    this.#style = style;
  }

  draw({ rig, state }: StageView, pose: Pose, pxPerM: number): void {
    const ankle = legRibs(pose.near).ankle;
    const key = `${state.releasedMask} ${pxPerM} ${Math.round(ankle.x * 300)} ${Math.round(ankle.y * 300)} ${rig.lead.length}`;
    if (key !== this.#key) {
      this.#key = key;
      this.#build(rig.lead, state.releasedMask, ankle, pxPerM);
    }
  }

  #build(lead: readonly LeadPart[], released: number, ankle: Spot, pxPerM: number): void {
    const { tokens, unit } = this.#style;
    const g = this.worn.clear();
    if (lead.some((piece, i) => placeOf(piece) === 'belt' && (released & (1 << i)) === 0))
      g.moveTo(-0.33 * pxPerM, -0.11 * pxPerM)
        .lineTo(-0.33 * pxPerM, 0.12 * pxPerM)
        .stroke({ width: 0.035 * pxPerM, color: tokens.ink });
    leadSpots(lead, ankle).forEach(({ x, y, longM, highM }, i) => {
      if ((released & (1 << i)) !== 0) return;
      const box = [x - longM / 2, y - highM / 2, longM, highM].map((m) => m * pxPerM);
      g.roundRect(...(box as [number, number, number, number]), 0.012 * pxPerM)
        .fill(tokens.ink)
        .stroke({ width: unit, color: tokens.paper });
    });
  }
}

/** Length of a piece as drawn, metres. */
function longOf(massKg: number): number {
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
