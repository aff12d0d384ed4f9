import { wetAreaM2, type Point } from './section.ts';

/** A tank in section, metres and m²; depths run downward from its lip. */
export interface Tank {
  readonly widthM: number;
  readonly heightM: number;
  /** Depth of the overflow spout below the lip; null while it is shut. */
  readonly spoutYM: number | null;
  /** Section of the water in it. */
  readonly waterM2: number;
  /** Section of the water that ran over into the measuring glass. */
  readonly glassM2: number;
}

/** A surface is found to within this, metres. */
const FOUND_M = 1e-9;

/**
 * Depth of the surface below the lip with some outlines in the water: it rises by what they displace. Water that would stand
 * above the lip is counted all the same: the caller lets it run over.
 */
export function surfaceYM({ widthM, heightM, waterM2 }: Tank, outlines: readonly (readonly Point[])[]): number {
  // What is missing, or too much, with the surface at a depth: it only falls on the way down.
  const spareM2 = (yM: number) => widthM * (heightM - yM) - waterM2 - displacedM2(outlines, yM);
  let low = heightM - waterM2 / widthM;
  let below = spareM2(low);
  if (below > -FOUND_M * widthM) return low;
  let high = low + below / widthM;
  let above = spareM2(high);
  // Things that come out of the water as it is lowered make room for more: so far it may stand higher, never beyond what all displace.
  while (above < 0) {
    high += above / widthM;
    above = spareM2(high);
    if (above > -FOUND_M * widthM) return high;
  }
  // False position, its stale end halved (Illinois): a handful of looks.
  let side = 0;
  while (low - high > FOUND_M) {
    const yM = low - (below * (high - low)) / (above - below);
    const spare = spareM2(yM);
    if (Math.abs(spare) < FOUND_M * widthM) return yM;
    if (spare > 0) {
      high = yM;
      above = spare;
      if (side > 0) below /= 2;
      side = 1;
    } else {
      low = yM;
      below = spare;
      if (side < 0) above /= 2;
      side = -1;
    }
  }
  return (low + high) / 2;
}

function displacedM2(outlines: readonly (readonly Point[])[], yM: number): number {
  let sum = 0;
  for (let i = 0; i < outlines.length; i++) sum += wetAreaM2(outlines[i]!, yM);
  return sum;
}

/** What stands above the spout falls to 1/e of it in this time, seconds: so slowly that a thing that bobs hardly spills. Chosen. */
const SPOUT_S = 4;

/** The tank after a while: what stands above its spout runs into the glass, what stands above its lip is lost at once. */
export function runOver(tank: Tank, outlines: readonly (readonly Point[])[], seconds: number): Tank {
  const standing = surfaceYM(tank, outlines);
  const lost = standing < 0 ? cutAt(tank, outlines, 0) : 0;
  const { spoutYM } = tank;
  if (spoutYM === null || standing >= spoutYM) return lost === 0 ? tank : { ...tank, waterM2: tank.waterM2 - lost };
  const overM2 = cutAt(tank, outlines, spoutYM) - lost;
  const spiltM2 = Math.max(0, overM2) * (1 - Math.exp(-seconds / SPOUT_S));
  return { ...tank, waterM2: tank.waterM2 - lost - spiltM2, glassM2: tank.glassM2 + spiltM2 };
}

/** The water that would have to go for the surface to stand at an edge. */
function cutAt({ widthM, heightM, waterM2 }: Tank, outlines: readonly (readonly Point[])[], edgeYM: number): number {
  return Math.min(waterM2, waterM2 - (widthM * (heightM - edgeYM) - displacedM2(outlines, edgeYM)));
}
