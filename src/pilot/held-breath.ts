import type { Controls, DiveState } from '../dive/index.ts';
import { DECISIONS_PER_S } from './eye.ts';

/** The airway closes at this lung volume, centilitres, for the first 12 s of each phase and while rising faster than this. */
const FULL_CL = 580;
const HOLDS_S = 12;
const RISING_MPS = -0.03;
/** Filled to within this, m³, the airway is closed. */
const NEARLY_M3 = 0.05e-3;

/**
 * The habit that must never go unseen: fills the lungs and closes the airway at the start of each phase, known by its name, and
 * when rising.
 */
export function heldBreathOf(): (controls: Controls, state: Readonly<DiveState>, phase: string) => Controls {
  let phase = '';
  let left = 0;
  let closed = false;
  return (controls, state, now) => {
    if (now !== phase) {
      phase = now;
      left = HOLDS_S * DECISIONS_PER_S;
    }
    if (left > 0) left--;
    const holds = now !== 'float' && state.depthM > 1 && (left > 0 || state.speedMps < RISING_MPS);
    if (!holds) {
      closed = false;
      return controls;
    }
    closed ||= state.lungM3 >= FULL_CL * 1e-5 - NEARLY_M3;
    return { ...controls, breath: closed ? 2 : 1, lungCl: FULL_CL };
  };
}
