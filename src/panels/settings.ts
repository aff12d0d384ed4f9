import type { MovedKeys } from './key-places.ts';

/** What a person chose for this browser. */
export interface Settings {
  readonly theme: 'system' | 'light' | 'dark';
  readonly units: Units;
  /** Press once to begin and once to end, instead of holding. */
  readonly toggles: boolean;
  /** Gas under the right thumb and breath under the left. */
  readonly swapped: boolean;
  readonly cautionRead: boolean;
  /** The instructor has opened the lessons that are shown first. */
  readonly opened: boolean;
  readonly keys: MovedKeys;
  /** Parts of a gamepad that were moved, as keys are. */
  readonly pads: MovedKeys;
  /** One key or the whole water: down breathes in, up breathes out. */
  readonly oneButton: boolean;
  readonly sound: boolean;
  /** 0…1. */
  readonly soundVolume: number;
  /** What sounds, in words, whether it is heard or not. */
  readonly captions: boolean;
}

export type Units = 'metric' | 'imperial';

/** What holds before anybody chose. */
export const USUAL_SETTINGS: Settings = {
  theme: 'system',
  units: 'metric',
  toggles: false,
  swapped: false,
  cautionRead: false,
  opened: false,
  keys: {},
  pads: {},
  oneButton: false,
  sound: false,
  soundVolume: 0.6,
  captions: false,
};
