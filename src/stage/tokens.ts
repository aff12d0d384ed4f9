import type { StageView } from './view.ts';

/** Colours of one theme as 0xRRGGBB; what each stands for is the design's: amber is gas, green is where to be. */
export interface Tokens {
  readonly paper: number;
  readonly ink: number;
  readonly secondary: number;
  readonly waterTop: number;
  readonly waterBottom: number;
  readonly gas: number;
  readonly gasWords: number;
  readonly forceUp: number;
  readonly forceDown: number;
  readonly place: number;
  readonly placeWords: number;
  readonly secondDiver: number;
  /** Suit, and body within it: ink and paper mixed, so that the figure brings no colour of its own. */
  readonly suit: number;
  readonly body: number;
  readonly ground: number;
}

/** Share of the fill of a band. */
export const PLACE_ALPHA = 0.12;

/** A colour between two, channel by channel; share 0 is the first. */
export function mixed(from: number, to: number, share: number): number {
  const at = (shift: number) => {
    const a = (from >> shift) & 255;
    return Math.round(a + (((to >> shift) & 255) - a) * share) << shift;
  };
  return at(16) | at(8) | at(0);
}

/** Contrast of two colours, 1…21. @source WCAG 2.2, relative luminance, recalled */
export function contrastOf(a: number, b: number): number {
  const [low, high] = [luminance(a), luminance(b)].sort((x, y) => x - y) as [number, number];
  return (high + 0.05) / (low + 0.05);
}

function luminance(colour: number): number {
  const channel = (shift: number) => {
    const c = ((colour >> shift) & 255) / 255;
    return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4;
  };
  return 0.2126 * channel(16) + 0.7152 * channel(8) + 0.0722 * channel(0);
}

const light: Tokens = {
  paper: 0xfaf8f2,
  ink: 0x12232e,
  secondary: 0x40545f,
  waterTop: 0xe4f0f1,
  waterBottom: 0xb4ced6,
  gas: 0xe69f00,
  gasWords: 0x5e3f00,
  forceUp: 0x004b7a,
  forceDown: 0x8a3300,
  place: 0x009e73,
  placeWords: 0x004f3a,
  secondDiver: 0x6e3158,
  suit: 0x56707f,
  body: 0xdfe0db,
  ground: 0xa9b3b1,
};

const dark: Tokens = {
  paper: 0x0b141a,
  ink: 0xeef4f5,
  secondary: 0x9bb0ba,
  waterTop: 0x16303b,
  waterBottom: 0x0a161d,
  gas: 0xf2b233,
  gasWords: 0xffd98a,
  forceUp: 0x6cc0f2,
  forceDown: 0xff9463,
  place: 0x3cc79d,
  placeWords: 0x57d9b1,
  secondDiver: 0xe3a0c8,
  suit: 0x8ba3ae,
  body: 0x263a44,
  ground: 0x24323a,
};

/** The colours of a theme. @source look: table of tokens */
export function tokensOf(theme: StageView['theme']): Tokens {
  return theme === 'dark' ? dark : light;
}
