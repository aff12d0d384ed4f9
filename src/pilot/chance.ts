/** A source of chance that gives the same numbers for the same seed in every engine. */
export interface Chance {
  /** From 0 up to, never reaching, 1. */
  uniform(): number;
  /** Mean 0, deviation 1, between −6 and 6: twelve uniforms less six, since logarithms differ between engines. */
  normal(): number;
}

/** Chance of a whole-number seed. @source mulberry32, a public-domain mixer of 32 bits; recalled */
export function chanceOf(seed: number): Chance {
  let state = Math.floor(seed) >>> 0;
  const uniform = () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
  const normal = () => {
    let sum = -6;
    for (let i = 0; i < 12; i++) sum += uniform();
    return sum;
  };
  return { uniform, normal };
}
