import type { Chance } from './chance.ts';

/** Decisions in a second: as often as controls may change. */
export const DECISIONS_PER_S = 20;

/** What a diver makes of depth and speed. */
export interface EyeTraits {
  readonly delayS: number;
  /** Speeds below this read as 0, m/s. */
  readonly noticesMps: number;
  /** Deviation of what is seen from the depth, metres. */
  readonly noiseM: number;
  /** How often a second what is seen freezes, and for how long on average, seconds. */
  readonly dropsPerS: number;
  readonly dropS: number;
}

/** What is seen: depth and speed, both positive down. */
export interface Sight {
  readonly depthM: number;
  readonly speedMps: number;
}

/** Correlation of the noise at the eye from one decision to the next: e^(−0.05 s/0.5 s). */
const KEEPS = 0.9048374180359595;
const RENEWS = Math.sqrt(1 - KEEPS * KEEPS);

/** An eye of given traits: hand it depth and speed at every decision, it gives what is seen of them. */
export function eyeOf(traits: EyeTraits, chance: Chance): (depthM: number, speedMps: number) => Sight {
  const line: Sight[] = [];
  const delay = Math.floor(traits.delayS * DECISIONS_PER_S + 0.5);
  let noise = chance.normal();
  let frozenFor = 0;
  let seen: Sight | undefined;
  return (depthM, speedMps) => {
    noise = KEEPS * noise + RENEWS * chance.normal();
    const read = Math.abs(speedMps) < traits.noticesMps ? 0 : speedMps;
    line.push({ depthM: depthM + traits.noiseM * noise, speedMps: read });
    const delayed = line.length > delay ? line.shift() : line[0];
    if (frozenFor > 0) frozenFor--;
    else if (traits.dropsPerS > 0 && chance.uniform() < traits.dropsPerS / DECISIONS_PER_S)
      frozenFor = Math.floor(traits.dropS * (0.5 + chance.uniform()) * DECISIONS_PER_S);
    if (frozenFor === 0 || !seen) seen = delayed!;
    return seen;
  };
}
