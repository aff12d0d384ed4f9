/** What can lie over the water, one at a time. */
export type Look = 'forces' | 'hilltop' | 'stops' | 'map';

/** What a key or a button of the look menu turns on and off: a look, the breath reach beside any of them, or the whole column. */
export type LookToggle = Look | 'reach' | 'whole';

/** What lies across the recovery map. */
export type Across = 'gas' | 'lead' | 'speed';

/** What a person chose to see and what the forecasts take for granted; litres and metres a minute as people write them. */
export interface LookChoice {
  readonly reach: boolean;
  readonly look: Look | null;
  readonly whole: boolean;
  readonly across: Across;
  readonly reactionS: number;
  readonly leastL: number;
  readonly mostL: number;
  /** A depth of mid-chest, metres, or the ground. */
  readonly below: number | 'ground';
  /** Rising: only the head out counts as too late, or already a speed above 18 m/min. */
  readonly above: 'head-out' | 'rate';
}

/** Nothing shown; a second to react; lungs from nearly breathed out to nearly full. Practice. */
export const USUAL_LOOKS: LookChoice = {
  reach: false,
  look: null,
  whole: false,
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
  { id: 'hilltop', words: 'hilltop', key: '3' },
  { id: 'stops', words: 'what still stops you', key: '4' },
  { id: 'map', words: 'recovery map', key: '5' },
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

/** What the panels show of it. */
export interface LooksView {
  readonly choice: LookChoice;
  readonly menuOpen: boolean;
  /** One sentence about what is shown; empty where nothing is. */
  readonly words: string;
  readonly hill: HillView | null;
}

/** The choice with one thing turned on or off: a look takes the place of another. */
export function toggled(choice: LookChoice, id: LookToggle): LookChoice {
  if (id === 'reach') return { ...choice, reach: !choice.reach };
  if (id === 'whole') return { ...choice, whole: !choice.whole };
  return { ...choice, look: choice.look === id ? null : id };
}

/** Whether something of the menu is on. */
export function isOn(choice: LookChoice, id: LookToggle): boolean {
  return id === 'reach' ? choice.reach : id === 'whole' ? choice.whole : choice.look === id;
}
