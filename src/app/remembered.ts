import { USUAL_SETTINGS, type Settings } from '../panels/index.ts';

const KEY = 'midwater-settings';

/** The part of a browser's storage that is used. */
export type Shelf = Pick<Storage, 'getItem' | 'setItem'>;

/** What was chosen before; the usual settings for all that is missing, strange or cannot be read. */
export function remembered(shelf: Shelf | null): Settings {
  let found: unknown;
  try {
    found = JSON.parse(shelf?.getItem(KEY) ?? 'null');
  } catch {
    return USUAL_SETTINGS;
  }
  if (typeof found !== 'object' || found === null) return USUAL_SETTINGS;
  const { theme, units, toggles, swapped, cautionRead, opened, keys, pads, oneButton, sound, soundVolume, captions } =
    found as Record<string, unknown>;
  return {
    theme: theme === 'light' || theme === 'dark' ? theme : 'system',
    units: units === 'imperial' ? 'imperial' : 'metric',
    toggles: toggles === true,
    swapped: swapped === true,
    cautionRead: cautionRead === true,
    opened: opened === true,
    keys: movedPlaces(keys, /^\w{1,20}$/),
    pads: movedPlaces(pads, /^[\w ]{1,40}$/),
    oneButton: oneButton === true,
    sound: sound === true,
    soundVolume: isShare(soundVolume) ? soundVolume : USUAL_SETTINGS.soundVolume,
    captions: captions === true,
  };
}

const isShare = (found: unknown): found is number => typeof found === 'number' && found >= 0 && found <= 1;

/** Places of keys or parts as they were kept, or none: half a list would leave two acts on one key. */
function movedPlaces(found: unknown, place: RegExp): Settings['keys'] {
  const codes = typeof found === 'object' ? Object.entries(found ?? {}).flat() : [''];
  return codes.every((code) => place.test(code)) ? ((found as Settings['keys']) ?? {}) : {};
}

/** Keeps the settings. @returns whether it worked: a browser may refuse */
export function remember(shelf: Shelf | null, settings: Settings): boolean {
  if (!shelf) return false;
  try {
    shelf.setItem(KEY, JSON.stringify(settings));
    return true;
  } catch {
    return false;
  }
}

/** The browser's storage, or null where even asking for it is refused. */
export function shelfOf(view: Window): Shelf | null {
  try {
    return view.localStorage;
  } catch {
    return null;
  }
}
