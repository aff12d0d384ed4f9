import type { LeadPlace } from './setup.ts';

/** A position on the diver: metres from mid-chest toward the head and toward the back. */
export interface Place {
  readonly headwardM: number;
  readonly backwardM: number;
}

/** Where things sit. Common practice, no source. */
export const PLACES = {
  tissue: { headwardM: -0.25, backwardM: 0 },
  lungs: { headwardM: 0, backwardM: 0 },
  suit: { headwardM: -0.35, backwardM: 0 },
  jacket: { headwardM: -0.1, backwardM: 0.12 },
  cylinder: { headwardM: -0.15, backwardM: 0.2 },
  loop: { headwardM: 0, backwardM: 0.1 },
  fins: { headwardM: -1.2, backwardM: 0 },
} as const satisfies Record<string, Place>;

/** Where a piece of lead sits. Common practice, no source; a pocket is on the jacket, at the waist. */
export const LEAD_PLACES: Readonly<Record<LeadPlace, Place>> = {
  belt: { headwardM: -0.35, backwardM: 0 },
  back: { headwardM: 0, backwardM: 0.15 },
  pocket: { headwardM: -0.2, backwardM: 0.05 },
  ankle: { headwardM: -1.1, backwardM: 0 },
};

/** How far jacket gas moves toward the high end when the diver is upright, metres. Common practice, no source. */
export const JACKET_GAS_SHIFT_M = 0.15;
/** How far drysuit gas moves toward the high end when the diver is upright, metres. Common practice, no source. */
export const SUIT_GAS_SHIFT_M = 0.6;
/** Where the volume above the waterline sits: toward the head when upright, toward the back when level, metres. */
export const EMERGED_UPRIGHT_M = 0.5;
export const EMERGED_LEVEL_M = 0.2;
