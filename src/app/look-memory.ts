import type { Look, LookChoice } from '../panels/index.ts';
import type { Shelf } from './remembered.ts';

const KEY = 'midwater-looks';

/** What was chosen to look at before; the usual for all that is missing, strange or cannot be read. */
export function rememberedLooks(shelf: Shelf | null, usual: LookChoice): LookChoice {
  let found: unknown;
  try {
    found = JSON.parse(shelf?.getItem(KEY) ?? 'null');
  } catch {
    return usual;
  }
  if (typeof found !== 'object' || found === null) return usual;
  const { reach, look, whole, bands, ahead, across, reactionS, leastL, mostL, below, above } = found as Record<
    string,
    unknown
  >;
  const least = within(leastL, 1, 8.5) ?? usual.leastL;
  const most = within(mostL, 1.5, 9) ?? usual.mostL;
  const lungs = most >= least + 0.5 ? { leastL: least, mostL: most } : { leastL: usual.leastL, mostL: usual.mostL };
  return {
    reach: reach === true,
    look: isLook(look) ? look : null,
    whole: whole === true,
    bands: bands !== false,
    ahead: ahead !== false,
    across: across === 'lead' || across === 'speed' ? across : 'gas',
    reactionS: within(reactionS, 0, 10) ?? usual.reactionS,
    ...lungs,
    below: within(below, 1, 100) ?? 'ground',
    above: above === 'rate' ? 'rate' : 'head-out',
  };
}

/** Keeps the choice where a browser allows it. */
export function rememberLooks(shelf: Shelf | null, choice: LookChoice): void {
  try {
    shelf?.setItem(KEY, JSON.stringify(choice));
  } catch {
    // What is not kept holds until the page is closed; settings say so.
  }
}

const LOOK_NAMES: readonly Look[] = ['forces', 'hilltop', 'stops', 'map', 'volumes', 'ledger'];

function isLook(value: unknown): value is Look {
  return LOOK_NAMES.some((name) => name === value);
}

function within(value: unknown, least: number, most: number): number | null {
  return typeof value === 'number' && value >= least && value <= most ? value : null;
}
