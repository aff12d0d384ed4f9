import { LUNG_VAPOUR_PA, midBreathM3, type Rig } from '../diver/index.ts';
import { TICKS_PER_S, type Controls } from './controls.ts';
import { drawMol, type ValveState } from './flows.ts';
import type { DiveState } from './state.ts';

/** Fastest that air goes in and out, m³/s. Practice. */
const IN_M3PS = 1.5e-3;
const OUT_M3PS = 2e-3;
/** Share of the period in which the breath goes in. Practice. */
const IN_SHARE = 0.4;
/** Thrust at which the breath is twice as fast, newtons. Practice. */
const EFFORT_N = 45;

/** Lung volumes that an open airway makes for during a step: at its middle and its end, m³. */
export interface BreathPlan {
  /** In: rate at which lung gas is blown into the jacket, m³/s, 0 when it is not. */
  oralM3ps: number;
  middleM3: number;
  endM3: number;
}

/**
 * Plans the lungs over the next step for an open airway and moves the breath's phase on. Automatic: in 40 %, out 60 % of the
 * period, each a 3u² − 2u³ ramp about the level, phases on whole ticks; direct: straight to the target. Flow and capacity
 * limit both. Blowing into the jacket empties the lungs at the mouth's rate instead.
 * Writes into `out`, so that nothing is allocated inside the step.
 * @param ticks length of the step; an automatic phase must not end within it
 */
export function planBreath(rig: Rig, s: DiveState, c: Controls, out: BreathPlan, ticks: number): void {
  const { residualM3, totalM3, tidalM3 } = rig.lungs;
  const now = s.lungM3;
  if (out.oralM3ps > 0) {
    const blownM3 = (out.oralM3ps / TICKS_PER_S) * ticks;
    out.middleM3 = Math.max(Math.min(now, residualM3), now - blownM3 / 2);
    out.endM3 = Math.max(Math.min(now, residualM3), now - blownM3);
    return;
  }
  let middle = c.lungCl * 1e-5;
  let end = middle;
  if (c.breath === 0) {
    if (s.breathTick >= s.breathTicks) {
      // The first phase of a dive is the breath in; later ones alternate.
      s.breathIn = s.breathTicks === 0 ? 1 : 1 - s.breathIn;
      s.breathTick = 0;
      s.breathTicks = phaseTicks(rig, s.thrustN, s.breathIn);
    }
    const low = middle - tidalM3 / 2;
    middle = low + tidalM3 * wave(s.breathTick + 0.5 * ticks, s.breathTicks, s.breathIn);
    end = low + tidalM3 * wave(s.breathTick + ticks, s.breathTicks, s.breathIn);
    s.breathTick += ticks;
  }
  const half = (0.5 / TICKS_PER_S) * ticks;
  out.middleM3 = toward(now, middle, half, residualM3, totalM3);
  out.endM3 = toward(now, end, 2 * half, residualM3, totalM3);
}

/**
 * Stores the lungs after a tick and moves the gas that this takes: in from the cylinders, or from the air above when the mouth
 * is out; out as bubbles, to the air, or into the jacket when blowing. Held breath moves nothing: its volume follows Boyle.
 */
export function settleLungs(
  rig: Rig,
  s: DiveState,
  at: ValveState,
  planned: BreathPlan,
  held: boolean,
  closed: boolean,
  inAir: boolean,
  blowing: boolean,
): void {
  const { ambientPa } = at;
  const plannedM3 = planned.endM3;
  const dryPa = ambientPa - LUNG_VAPOUR_PA;
  const before = s.lungMol;
  let lungM3 = plannedM3;
  if (closed) lungM3 = Math.max(rig.lungs.residualM3, Math.min((before * rig.lungJPerMol) / dryPa, plannedM3));
  s.lungM3 = lungM3;
  if (held) return;
  let gained = dryPa * lungM3 * (1 / rig.lungJPerMol) - before;
  if (closed) gained = Math.min(0, gained);
  else if (!inAir && gained > 0) gained = drawMol(rig, s.cylinderMol, gained, ambientPa);
  s.lungMol = before + gained;
  if (blowing && gained < 0) {
    s.jacketMol -= gained;
    s.letInM3 -= (gained * rig.gasJPerMol) / ambientPa;
  } else if (inAir) s.airMol -= gained;
  else if (gained < 0) s.bubbleMol -= gained;
}

/** Length of a phase of the automatic breath that begins under a thrust, whole ticks. @param inward 1 in, 0 out */
export function phaseTicks(rig: Rig, thrustN: number, inward: number): number {
  const period = rig.lungs.periodS / (1 + Math.abs(thrustN) / EFFORT_N);
  const share = inward === 1 ? IN_SHARE : 1 - IN_SHARE;
  return Math.max(1, Math.floor(period * share * TICKS_PER_S + 0.5));
}

/** Controls' level at which the diver is judged neutral: mid-breath of the rig, in centilitres. */
export function midBreathCl(rig: Rig): number {
  return Math.floor(midBreathM3(rig) * 1e5 + 0.5);
}

function wave(tick: number, ticks: number, inward: number): number {
  const u = tick / ticks;
  const ramp = u * u * (3 - 2 * u);
  return inward === 1 ? ramp : 1 - ramp;
}

function toward(from: number, to: number, seconds: number, least: number, most: number): number {
  const wanted = Math.min(Math.max(to, least), most) - from;
  return from + Math.min(Math.max(wanted, -OUT_M3PS * seconds), IN_M3PS * seconds);
}
