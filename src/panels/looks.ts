import type { Pulls } from './readings.ts';

/** What can lie over the water, one at a time. */
export type Look = 'forces' | 'hilltop' | 'stops' | 'map' | 'volumes' | 'ledger';

/**
 * What a key or a button of the look menu turns on and off: a look, the breath reach beside any of them, the whole column, and what
 * stands in the water by itself: bands and limits, and the line ahead.
 */
export type LookToggle = Look | 'reach' | 'whole' | 'bands' | 'ahead';

/** What lies across the recovery map. */
export type Across = 'gas' | 'lead' | 'speed';

/** What a person chose to see and what the forecasts take for granted; litres and metres a minute as people write them. */
export interface LookChoice {
  readonly reach: boolean;
  readonly look: Look | null;
  readonly whole: boolean;
  /** Where to be, and the rates that count as too fast. */
  readonly bands: boolean;
  /** What comes in ten seconds if nothing is done. */
  readonly ahead: boolean;
  readonly across: Across;
  readonly reactionS: number;
  readonly leastL: number;
  readonly mostL: number;
  /** A depth of mid-chest, metres, or the ground. */
  readonly below: number | 'ground';
  /** Rising: only the head out counts as too late, or already a speed above 18 m/min. */
  readonly above: 'head-out' | 'rate';
}

/** Nothing shown but what stands in the water by itself; a second to react; lungs from nearly breathed out to nearly full. Practice. */
export const USUAL_LOOKS: LookChoice = {
  reach: false,
  look: null,
  whole: false,
  bands: true,
  ahead: true,
  across: 'gas',
  reactionS: 1,
  leastL: 1.8,
  mostL: 5.8,
  below: 'ground',
  above: 'head-out',
};

/** Words and keys of all that can be looked at. */
export const LOOKS: readonly { readonly id: LookToggle; readonly words: string; readonly key: string }[] = [
  { id: 'reach', words: 'breath reach', key: '1' },
  { id: 'forces', words: 'forces by depth', key: '2' },
  { id: 'hilltop', words: 'why you drift: the hilltop', key: '3' },
  { id: 'stops', words: 'what still stops you', key: '4' },
  { id: 'map', words: 'recovery map', key: '5' },
  { id: 'volumes', words: 'gas, here and at the surface', key: '6' },
  { id: 'ledger', words: 'what holds you up', key: '7' },
  { id: 'bands', words: 'bands and limits', key: '8' },
  { id: 'ahead', words: 'ten seconds ahead', key: '9' },
  { id: 'whole', words: 'whole column', key: '0' },
];

/** The hill that the diver stands on, over a stretch of depth. */
export interface HillView {
  readonly depthsM: readonly number[];
  /** Potential energy, J, 0 where the diver is. */
  readonly energyJ: readonly number[];
  readonly depthM: number;
  readonly topM: number | null;
  readonly flatM: readonly [number, number] | null;
}

/** One part of the diver in the water: what lifts it and what pulls it down, newtons. */
export interface PartRow {
  readonly part: string;
  readonly upN: number;
  readonly downN: number;
}

/** What the panels show of it. */
export interface LooksView {
  readonly choice: LookChoice;
  readonly menuOpen: boolean;
  /** One sentence about what is shown; empty where nothing is. */
  readonly words: string;
  readonly hill: HillView | null;
  /** What holds up and pulls down at the moment of the sentence, whose numbers stand beside it; null where it is about something else. */
  readonly pulls: Pulls | null;
  /** Every part with its forces, of a dive that stands still; null where that is not looked at. */
  readonly parts: readonly PartRow[] | null;
}

/** The choice with one thing turned on or off: a look takes the place of another. */
export function toggled(choice: LookChoice, id: LookToggle): LookChoice {
  if (isAlone(id)) return { ...choice, [id]: !choice[id] };
  return { ...choice, look: choice.look === id ? null : id };
}

/** Whether something of the menu is on. */
export function isOn(choice: LookChoice, id: LookToggle): boolean {
  return isAlone(id) ? choice[id] : choice.look === id;
}

/** Whether something is on or off by itself, whatever look lies over the water. */
function isAlone(id: LookToggle): id is Exclude<LookToggle, Look> {
  return id === 'reach' || id === 'whole' || id === 'bands' || id === 'ahead';
}
