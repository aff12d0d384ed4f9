import { rigOf, type Setup } from '../diver/index.ts';
import { PILOT_NAMES } from '../pilot/index.ts';
import { USUAL_DIFFERENCE } from './pair-difference.ts';
import type { SecondBy } from './pair-second.ts';

const KEY = 'midwater-pair';

/** Two divers as they were chosen. */
export interface PairChoice {
  readonly on: boolean;
  readonly difference: string;
  readonly by: SecondBy;
  /** A setup of one's own, or that of the diver who was flown before. */
  readonly own: Setup | null;
  /** What the second one has that the first has not, where no difference says it. */
  readonly words: string;
}

/** Before anybody chose: two kilograms more lead, the same hands. */
export const USUAL_PAIR: PairChoice = {
  on: false,
  difference: USUAL_DIFFERENCE,
  by: 'hands',
  own: null,
  words: '',
};

/** What was chosen in this tab, after a reload too; the usual where nothing readable is kept. */
export function rememberedPair(shelf: Pick<Storage, 'getItem'> | null): PairChoice {
  try {
    const found = JSON.parse(shelf?.getItem(KEY) ?? 'null') as Record<string, unknown> | null;
    const { on, difference, by, own, words } = found ?? {};
    const known = isBy(by) && typeof difference === 'string' && typeof words === 'string';
    if (!known) return USUAL_PAIR;
    const setup = (own ?? null) as Setup | null;
    // A damaged one gives no rig.
    if (setup) rigOf(setup);
    return { on: on === true, difference, by, own: setup, words };
  } catch {
    return USUAL_PAIR;
  }
}

/** Keeps the choice where a browser allows it; null forgets it. */
export function rememberPair(shelf: Pick<Storage, 'setItem' | 'removeItem'> | null, choice: PairChoice | null): void {
  try {
    if (choice) shelf?.setItem(KEY, JSON.stringify(choice));
    else shelf?.removeItem(KEY);
  } catch {
    // What is not kept holds until the page is closed; settings say so.
  }
}

/** Whether somebody can fly the second diver under that name. */
export function isBy(by: unknown): by is SecondBy {
  return by === 'hands' || by === 'own' || PILOT_NAMES.some((name) => name === by);
}
