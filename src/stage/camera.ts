import { DIVER_LENGTH_M, enlargementOf, pxPerSOf, type Frame } from './geometry.ts';
import type { Style } from './layout.ts';
import type { StageView } from './view.ts';

/** Air above the surface and ground below the bottom that may show, metres; an enlarged head needs more of it. */
const AIR_M = 1.2;
const HEAD_M = 0.74;
const GROUND_M = 1;
/** The camera covers 95 % of its way in three of these: a quarter second. */
const EASING_S = 0.25 / 3;
/** A jump in time longer than this is a cut, not a move. */
const CUT_S = 0.5;

/**
 * Follows the diver: keeps him in the middle third, shows at least the metres asked for, and eases by the dive's own time, so that
 * a frozen dive is a still picture. Keeps no more than where it looked last.
 */
export class Camera {
  #pxPerM = NaN;
  #topM = NaN;
  #nowS = NaN;

  /** The frame of a view; call once per frame, in order. */
  frame(view: StageView, style: Style): Frame {
    const { heightPx, waterPx, nowX } = style;
    const freePx = heightPx - style.footPx;
    const passedS = view.nowS - this.#nowS;
    const cut = !(Math.abs(passedS) < CUT_S);
    const still = cut || view.reducedMotion || passedS <= 0;
    const share = still ? 1 : 1 - Math.exp(-passedS / EASING_S);
    const { airM, metresM } = wantedOf(view, freePx, style.leastDiverPx);
    const wantedPxPerM = freePx / metresM;
    this.#pxPerM = toward(this.#pxPerM, wantedPxPerM, share, 2e-3 * wantedPxPerM);
    const shownM = freePx / this.#pxPerM;
    // What is asked lies about the diver, above and below alike.
    const from = cut || view.asked ? view.depthM - shownM / 2 : this.#topM;
    const enlarged = enlargementOf(this.#pxPerM, style.leastDiverPx);
    const wantedM = Math.max(topFor(view, from, shownM, airM), this.#uncovered(view, freePx, enlarged));
    this.#topM = toward(this.#topM, wantedM, share, 1e-4);
    this.#nowS = view.nowS;
    return {
      waterPx,
      heightPx,
      nowX,
      nowS: view.nowS,
      pxPerM: this.#pxPerM,
      pxPerS: pxPerSOf(this.#pxPerM),
      topM: this.#topM,
      enlarged,
    };
  }

  /**
   * The least top with which a diver is clear of what covers the foot, or in the middle of what is left: there while something is asked.
   * @param freePx height above the bars, which stand on what covers the foot
   */
  #uncovered(view: StageView, freePx: number, enlarged: number): number {
    const { coveredPx = 0, depthM, asked } = view;
    if (coveredPx === 0) return -Infinity;
    const leftM = (freePx - coveredPx) / this.#pxPerM;
    const aboveM = asked ? 0 : leftM - (DIVER_LENGTH_M / 2) * enlarged;
    const forDiverM = depthM - Math.max(aboveM, leftM / 2);
    // What was said, too, as far as the diver is not sent out at the head for it.
    const forSaidM = Math.max(...saidAheadM(view)) - (1 - EDGE_SHARE) * leftM;
    return Math.max(forDiverM, Math.min(forSaidM, depthM - EDGE_SHARE * leftM));
  }
}

/**
 * Air that may show, and metres of picture in all. Who wants the whole column has all of it, whatever the air takes; that makes him
 * smaller and perhaps more enlarged, so it is asked until it holds.
 */
function wantedOf(
  { metresShown, rig }: StageView,
  freePx: number,
  leastDiverPx: number,
): { airM: number; metresM: number } {
  const leastM = Math.max(metresShown, 1);
  const whole = metresShown >= rig.bottomM + AIR_M + GROUND_M;
  let [airM, metresM] = [AIR_M, leastM];
  for (let i = 0; i < 4; i++) {
    airM = Math.max(airM, airAt(freePx / metresM, leastDiverPx));
    if (whole) metresM = leastM + airM - AIR_M;
  }
  return { airM, metresM };
}

/** Air that may show at a scale: more where the diver is drawn larger than he is. */
export function airAt(pxPerM: number, leastDiverPx: number): number {
  return Math.max(AIR_M, HEAD_M * enlargementOf(pxPerM, leastDiverPx));
}

/** Least share of the picture between its edge and the nearer one of two divers. */
const EDGE_SHARE = 0.1;

/**
 * Top of the picture nearest to `from` that keeps the diver in the middle third, two divers as near to it as both fit, and little
 * beside the water in sight. Who does not fit is left out of the picture: the first diver never.
 */
function topFor(view: StageView, from: number, shownM: number, airM: number): number {
  const { depthM, second, rig } = view;
  const both = [depthM, ...(second ? [second.depthM] : [])];
  const fit = Math.min(1 / 3, (1 - (Math.max(...both) - Math.min(...both)) / shownM) / 2);
  const [share, kept] = fit < EDGE_SHARE ? [1 / 3, [depthM]] : [fit, both];
  const [least, most] = topsWith(kept, shownM, share);
  const [saidLeast, saidMost] = topsWith(saidAheadM(view), shownM, EDGE_SHARE);
  let followed = Math.min(Math.max(from, least), most);
  // What was said needs to be in sight, not in the middle; for it the divers go as near to the edge as it does.
  if (saidLeast <= saidMost) {
    const [edgeLeast, edgeMost] = topsWith(kept, shownM, EDGE_SHARE);
    const shown = Math.min(Math.max(followed, saidLeast), saidMost);
    if (shown >= edgeLeast && shown <= edgeMost) followed = shown;
  }
  return Math.max(Math.min(followed, rig.bottomM + GROUND_M - shownM), -airM);
}

/** The least and the most top of a picture in which all these depths are a share of it or more from its edges. */
function topsWith(depthsM: readonly number[], shownM: number, share: number): readonly [number, number] {
  return [Math.max(...depthsM) - shownM * (1 - share), Math.min(...depthsM) - shownM * share];
}

/** Depths of what was said of a moment that lies ahead, from its flag down: it stays in the picture until that moment has passed. */
function saidAheadM({ said = [], nowS }: StageView): number[] {
  return said.flatMap(({ fromS, overS, depthsM }) => {
    const endM = depthsM[depthsM.length - 1]!;
    return nowS >= fromS && nowS < fromS + overS ? [endM] : [];
  });
}

function toward(from: number, to: number, share: number, near: number): number {
  if (!(Math.abs(to - from) > near)) return to;
  return from + (to - from) * share;
}
