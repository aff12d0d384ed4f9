import { midBreathM3, type Rig } from '../diver/index.ts';
import { DECISIONS_PER_S } from './eye.ts';

/** Fastest change of the level, m³/s. Practice. */
const LEVEL_M3PS = 0.6e-3;
/** Share of the period in which the breath goes in. */
const IN_SHARE = 0.4;

/**
 * A pilot's own breathing: of period 0 not at all, otherwise waves about a level that moves no faster than 0.6 L/s. Gives the lung volume for each decision in
 * centilitres, between residual volume and capacity.
 */
export function breathingOf(rig: Rig, periodS: number, tidalShare = 1): (biasM3: number) => number {
  const { residualM3, totalM3 } = rig.lungs;
  const tidalM3 = rig.lungs.tidalM3 * tidalShare;
  const middle = midBreathM3(rig);
  let level = middle;
  let phase = 0;
  return (biasM3) => {
    const most = LEVEL_M3PS / DECISIONS_PER_S;
    const wanted = Math.min(Math.max(middle + biasM3, residualM3 + tidalM3 / 2), totalM3 - tidalM3 / 2);
    level += Math.min(Math.max(wanted - level, -most), most);
    if (periodS > 0) phase += 1 / (periodS * DECISIONS_PER_S);
    if (phase >= 1) phase -= 1;
    const lung = periodS > 0 ? level + tidalM3 * (wave(phase) - 0.5) : level;
    return Math.floor(Math.min(Math.max(lung, residualM3), totalM3) * 1e5 + 0.5);
  };
}

function wave(phase: number): number {
  const inward = phase < IN_SHARE;
  const u = inward ? phase / IN_SHARE : (phase - IN_SHARE) / (1 - IN_SHARE);
  const ramp = u * u * (3 - 2 * u);
  return inward ? ramp : 1 - ramp;
}
