import { LEAD_KG_PER_M3, LEAD_PLACES, type LeadPart, type Rig } from '../diver/index.ts';

/** All lead of a rig, kilograms. */
export function leadKg(rig: Rig): number {
  return rig.lead.reduce((kg, piece) => kg + piece.massKg, 0);
}

/**
 * The same diver with more lead, or with less: every piece changed in proportion; who has none gets a belt that can be let go.
 * @param kg more than now; less than nothing in all is nothing
 */
export function withMoreLead(rig: Rig, kg: number): Rig {
  const now = leadKg(rig);
  const wanted = Math.max(0, now + kg);
  if (now > 0) {
    const share = wanted / now;
    const scaled = ({ massKg, volumeM3, ...piece }: LeadPart): LeadPart => ({
      ...piece,
      massKg: massKg * share,
      volumeM3: volumeM3 * share,
    });
    return { ...rig, lead: rig.lead.map(scaled) };
  }
  if (wanted === 0) return rig;
  const belt = {
    part: 'lead-1',
    massKg: wanted,
    volumeM3: wanted / LEAD_KG_PER_M3,
    ...LEAD_PLACES.belt,
    releasable: true,
  };
  return { ...rig, lead: [belt] };
}
