import type { StageView } from '../../src/stage/index.ts';
import {
  closeLedges,
  forcesOverlay,
  ledgesOverlay,
  madeUpMap,
  mapOverlay,
  reachAbout,
} from '../stage/insight-views.ts';
import type { Beside } from './stage-page/main.ts';

/** Sizes of the picture that the scenes are drawn in. */
export const sizes = {
  laptop: { width: 1095, height: 488 },
  projector: { width: 1480, height: 930 },
  phone: { width: 360, height: 368 },
} as const;

/** One fixed state of the stage. */
export interface Scene {
  readonly script: string;
  readonly atS: number;
  readonly wish?: Partial<StageView>;
  readonly beside?: readonly Beside[];
  readonly size?: keyof typeof sizes;
}

export const dark = { theme: 'dark' } as const;
export const projector = { projector: true, forecastWords: '' } as const;
export const band = { fromS: 5, toS: null, topM: 7, bottomM: 9, words: 'stay between 7 and 9 m' };
const map = mapOverlay([madeUpMap(5e-3, 8)]);
const marked: Partial<StageView> = {
  bands: [band],
  limitTaught: true,
  said: [{ fromS: 4, overS: 10, depthsM: [6.4], words: 'you said 6.4 m', came: null }],
  rings: [{ atS: 6, number: 1 }],
  bookmarks: [{ atS: 11, number: 2, words: 'runs away' }],
};

/** A fan of three answers from where the diver is, and what was said before: a place, with what came of it. */
const lettered = [6.4, 8, 9.9].map((endM, i) => ({
  letter: 'ABC'[i]!,
  depthsM: Array.from({ length: 11 }, (_, dot) => 8 + (endM - 8) * (dot / 10) ** 2),
}));
const asked: Partial<StageView> = {
  frozen: true,
  forecastM: null,
  metresShown: 7,
  asked: { fromM: 8, overS: 10, lines: lettered, chosen: 'C', pin: null },
};
const pin = { atM: 9, leastM: 0, mostM: 16, words: '9.0 m in 10 s' };
const unchosen = { fromM: 8, overS: null, lines: [], chosen: '', pin: null };
const slope = { mps: -24 / 60, words: '24 m/min', besideMps: -9 / 60, besideWords: '9 m/min' };
const came = { depthsM: lettered[2]!.depthsM, words: 'you said 7.0 m; as asked it came to 9.9 m: 2.9 m deeper' };
const said: Partial<StageView> = {
  bands: [band],
  said: [
    { fromS: 6, overS: 10, depthsM: [7], words: 'you said 7.0 m', came },
    { fromS: 15, overS: 10, depthsM: lettered[0]!.depthsM, words: '14 said A', came: { ...came, words: '' } },
  ],
};

/** Fixed states of the stage by their names. */
export const scenes: Readonly<Record<string, Scene>> = {
  afloat: { script: 'surface', atS: 4 },
  descent: { script: 'descent', atS: 9 },
  hover: { script: 'hover', atS: 20 },
  'hover in the dark': { script: 'hover', atS: 20, wish: dark },
  'ascent with its limit': { script: 'ascent', atS: 12, wish: { limitTaught: true } },
  'on the bottom': { script: 'bottom', atS: 30 },
  runaway: { script: 'runaway', atS: 13, wish: { metresShown: 12 } },
  'runaway in the dark': { script: 'runaway', atS: 13, wish: { metresShown: 12, ...dark } },
  loop: { script: 'loop', atS: 12 },
  'foam drysuit': { script: 'drysuit', atS: 12 },
  'foam drysuit, head up': { script: 'drysuitUp', atS: 12 },
  'drysuit squeezed': { script: 'squeeze', atS: 14 },
  'two cylinders': { script: 'twin', atS: 12 },
  'no suit': { script: 'noSuit', atS: 12 },
  'lead gone': { script: 'drop', atS: 22 },
  'kicking up': { script: 'kickUp', atS: 4 },
  'holding the line': { script: 'lineHold', atS: 8 },
  'head down': { script: 'down60', atS: 4 },
  'on the back': { script: 'onBack', atS: 4 },
  inflating: { script: 'inflating', atS: 5 },
  venting: { script: 'venting', atS: 5 },
  'over-expansion': { script: 'stretched', atS: 9 },
  'breath reach': { script: 'hover', atS: 20, wish: reachAbout(8) },
  'forces by depth': { script: 'hover', atS: 20, wish: { ...reachAbout(8), overlay: forcesOverlay(8, 14, 30) } },
  'what still stops him': {
    script: 'hover',
    atS: 20,
    wish: { metresShown: 14, limitTaught: true, overlay: ledgesOverlay(20, 8) },
  },
  'ledges that share a plate': { script: 'hover', atS: 20, wish: { metresShown: 14, overlay: closeLedges(20, 8) } },
  'recovery map': { script: 'hover', atS: 20, wish: { metresShown: 20, overlay: map } },
  'recovery map in the dark': { script: 'hover', atS: 20, wish: { metresShown: 20, overlay: map, ...dark } },
  'band, limit, flag, ring, bookmark': { script: 'hover', atS: 20, wish: marked },
  'asked where he goes': { script: 'hover', atS: 20, wish: asked },
  'asked where he goes, for a class in the dark': {
    script: 'hover',
    atS: 20,
    wish: { ...projector, ...asked, ...dark },
    size: 'projector',
  },
  'asked for a depth, on a phone': {
    script: 'hover',
    atS: 20,
    wish: { ...asked, asked: { fromM: 7.7, overS: 10, lines: [], chosen: '', pin } },
    size: 'phone',
  },
  'asked for a depth of no known moment': {
    script: 'hover',
    atS: 20,
    wish: { ...asked, metresShown: 20, asked: { ...unchosen, pin: { ...pin, atM: 13, words: '13 m' } } },
  },
  'asked for a rate': { script: 'hover', atS: 20, wish: { ...asked, metresShown: 17, asked: { ...unchosen, slope } } },
  'what was said, and what came': { script: 'hover', atS: 20, wish: said },
  'branch and ghost': {
    script: 'hover',
    atS: 20,
    beside: [
      { script: 'descent', as: 'branch' },
      { script: 'bottom', as: 'ghost' },
    ],
  },
  'second diver': { script: 'hover', atS: 20, beside: [{ script: 'twin', as: 'second' }] },
  'second diver in the dark': { script: 'hover', atS: 20, wish: dark, beside: [{ script: 'twin', as: 'second' }] },
  'whole column': { script: 'hover', atS: 60, wish: { metresShown: 30 } },
  'hover for a class': { script: 'hover', atS: 20, wish: { ...projector, ...marked }, size: 'projector' },
  'recovery map for a class': {
    script: 'hover',
    atS: 20,
    wish: { ...projector, metresShown: 20, overlay: map },
    size: 'projector',
  },
  'hover on a phone': { script: 'hover', atS: 20, wish: { bands: [band] }, size: 'phone' },
  'what still stops him, on a phone in the dark': {
    script: 'hover',
    atS: 20,
    wish: { metresShown: 14, overlay: ledgesOverlay(20, 8), ...dark },
    size: 'phone',
  },
};
