import { TOP_UPRIGHT_M, netForceN, type Rig } from '../diver/index.ts';
import { FLOATING_M } from './force-line.ts';
import { USUAL_WEIGHING, emptied } from './weigh.ts';

/** How far the eyes are below the top of the head, metres. Common practice, no source. */
export const EYES_M = 0.12;

/** How a diver floats, in the words of the trade, by the waterline below the top of the head, metres. Practice. */
const WORDS = [
  [0.09, 'top of the head out'],
  [0.15, 'at eye level'],
  [0.24, 'eyes out'],
  [0.4, 'chin out'],
  [Infinity, 'shoulders out'],
] as const;

/** One line of the surface check. */
export interface SurfaceCheck {
  /** As filled, or with the reserve left. */
  readonly cylinder: 'full' | 'reserve';
  /** On a closed loop breathing lifts nothing: one line stands for all. */
  readonly breath: 'breathed out' | 'normal breath' | 'full breath' | 'any breath';
  /** null on a closed loop. */
  readonly lungM3: number | null;
  readonly floats: boolean;
  /** Where the waterline is, metres below the top of the head; null when the diver goes under. */
  readonly waterlineM: number | null;
  readonly word: (typeof WORDS)[number][1] | 'goes under';
  /** Net force with the head just covered: it decides. Newtons, up positive. */
  readonly coveredN: number;
  /** Net force with the waterline at the eyes: 0 floats there, above 0 higher. Newtons, up positive. */
  readonly atEyesN: number;
}

/**
 * The surface check: upright and still, jacket, drysuit and loop as empty as they get, with the cylinder full and at the
 * reserve; breathed out as far as it goes, with a normal breath taken, and with a full one. The waterline is the root of the
 * net force, in which what is out of the water does not displace.
 * @param reserveBar gauge
 * @throws {RangeError} when the pressure is impossible
 */
export function surfaceCheck(rig: Rig, reserveBar: number = USUAL_WEIGHING.reserveBar): SurfaceCheck[] {
  const { residualM3, endExpiratoryM3, tidalM3, totalM3, open } = rig.lungs;
  const breaths: readonly (readonly [SurfaceCheck['breath'], number | null])[] = open
    ? [
        ['breathed out', residualM3],
        ['normal breath', endExpiratoryM3 + tidalM3],
        ['full breath', totalM3],
      ]
    : [['any breath', null]];
  return (['full', 'reserve'] as const).flatMap((cylinder) =>
    breaths.map(([breath, lungM3]) => {
      const cylinderBar = cylinder === 'reserve' ? reserveBar : undefined;
      return { cylinder, breath, lungM3, ...floating(rig, lungM3, cylinderBar) };
    }),
  );
}

function floating(
  rig: Rig,
  lungM3: number | null,
  cylinderBar: number | undefined,
): Omit<SurfaceCheck, 'cylinder' | 'breath' | 'lungM3'> {
  const weighed = { ...(lungM3 === null ? {} : { lungM3 }), ...(cylinderBar === undefined ? {} : { cylinderBar }) };
  const netN = (waterlineM: number) => {
    const depthM = TOP_UPRIGHT_M - waterlineM;
    const at = emptied(rig, Math.max(depthM, 0), weighed);
    return netForceN(rig, { ...at, depthM, pitchCos: 0, pitchSin: 1 });
  };
  const coveredN = netN(0);
  const atEyesN = netN(EYES_M);
  if (coveredN < 0) return { floats: false, waterlineM: null, word: 'goes under', coveredN, atEyesN };
  let low = 0;
  let high = TOP_UPRIGHT_M - FLOATING_M;
  for (let i = 0; i < 50; i++) {
    const middle = (low + high) / 2;
    if (netN(middle) < 0) high = middle;
    else low = middle;
  }
  return { floats: true, waterlineM: low, word: wordOf(low), coveredN, atEyesN };
}

function wordOf(waterlineM: number): SurfaceCheck['word'] {
  return WORDS.find(([below]) => waterlineM < below)![1];
}
