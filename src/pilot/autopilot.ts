import { HEAD_CLEAR_M, HEAD_OUT_M, jacketM3, midBreathM3, type Rig } from '../diver/index.ts';
import { restingControls, ventFor, type Controls, type DiveState } from '../dive/index.ts';
import { waterAt } from '../water/index.ts';
import type { Act } from './act.ts';
import { aimOf } from './aims.ts';
import { breathingOf } from './breathing.ts';
import type { Chance } from './chance.ts';
import { DECISIONS_PER_S, eyeOf, type Sight } from './eye.ts';
import { handsOf } from './hands.ts';
import { heldBreathOf } from './held-breath.ts';
import { divePosture } from './posture.ts';
import { twistOf, type Twist } from './quirks.ts';
import { nextTargetM } from './target.ts';
import { nameOf, type Pilot, type Task } from './task.ts';
import type { PilotTraits } from './traits.ts';

/** Sinking this fast under water, m/s, the surface is left; mid-chest below this depth, metres, the head is covered. */
const LEAVES_MPS = 0.06;
const COVERED_M = 0.7;
/** A head that goes under by turns with each breath, for so long in all, seconds, is not clear either. */
const WET_IN_ALL_S = 3;
/** Mid-chest this deep, metres, little is left that floats. */
const GOES_UNDER_M = 0.5;
/** Deeper than this the head is under for good, metres. */
const UNDER_M = 1;
/** At the surface the jacket is filled until mid-chest is this shallow, metres: the head clear with some to spare. */
const FLOATS_M = 0.3;
/** A pilot without a quirk. */
const asHandsDo: Twist = (act) => act;
/** Breathing out as far as it goes, litres off mid-breath. */
const OUT_L = -6;

/**
 * A pilot who sees late and roughly, leads himself to each depth, and acts by the law of his traits. Decides from depth and
 * speed alone, except that he knows when the jacket has nothing left to vent.
 */
export function autopilot(rig: Rig, traits: PilotTraits, chance: Chance): Pilot {
  const see = eyeOf(traits.eye, chance);
  const hands = handsOf(traits.law);
  const breathe = breathingOf(rig, traits.periodS, traits.tidalShare);
  const hold = traits.holdsBreath ? heldBreathOf() : undefined;
  const twist = traits.quirk ? twistOf(traits.quirk, chance) : asHandsDo;
  const aim = traits.aim ? aimOf(traits.aim, chance) : undefined;
  const water = { densityKgPerM3: 0, pressurePa: 0 };
  let pitchDeg: 0 | 90 = 90;
  let targetM = NaN;
  let left = false;
  let decision = 0;
  let phase = '';
  let phaseFrom = 0;
  let topped = 0;
  let wet = 0;
  let wetInAll = 0;
  let filling = false;

  /** Lungs low, and the vent in pulses or held until he sinks. */
  const leave = (seen: Sight): Act => {
    const { onS, lastS, everyS } = traits.leaving;
    const pressS = seen.depthM > GOES_UNDER_M && seen.depthM < UNDER_M ? lastS : onS;
    const on = everyS === 0 || decision % Math.floor(everyS * DECISIONS_PER_S) < pressS * DECISIONS_PER_S;
    const sinks = everyS > 0 && seen.depthM > COVERED_M && seen.speedMps >= LEAVES_MPS;
    return { gas: on && !sinks ? -1 : 0, biasL: OUT_L, finsUpN: 0 };
  };

  const act = (seen: Sight, task: Task, taskS: number, empty: boolean): Act => {
    if (task.kind === 'float' || (task.kind === 'surface' && seen.depthM < HEAD_OUT_M)) {
      left = false;
      targetM = NaN;
      // Afloat from the start he acts only on a head that stays wet; come up, he fills at once. The button is let go for good
      // once the head is clear: a wave of breath is no reason to press again.
      wet = seen.depthM > HEAD_CLEAR_M ? wet + 1 : 0;
      if (wet > 0) wetInAll++;
      if (task.kind === 'surface' || wet >= DECISIONS_PER_S || wetInAll >= WET_IN_ALL_S * DECISIONS_PER_S)
        filling = true;
      topped = filling && seen.depthM < FLOATS_M ? topped + 1 : topped;
      return { gas: filling && topped < 3 ? 1 : 0, biasL: 0, finsUpN: 0 };
    }
    topped = wet = wetInAll = 0;
    filling = false;
    const goalM = task.kind === 'surface' ? 0 : task.depthM;
    // Who bobs up again on the way down begins again.
    if (task.kind === 'travel' && seen.depthM < HEAD_OUT_M) left = false;
    if (!left && task.kind === 'travel' && seen.depthM < 1.5) {
      const sinking = seen.depthM > COVERED_M && seen.speedMps >= LEAVES_MPS;
      if (!sinking || (traits.leaving.everyS === 0 && !empty))
        return twist(leave(seen), { seen, task, taskS, way: 1, errorM: 0, leaving: true });
    }
    left = true;
    const before = Number.isNaN(targetM) ? seen.depthM : targetM;
    targetM = nextTargetM(traits.target, before, goalM, seen.depthM);
    const way = Math.abs(goalM - targetM) < 0.01 ? 0 : goalM > targetM ? 1 : -1;
    const paceMps = (targetM - before) * DECISIONS_PER_S * traits.target.paceShare;
    const errorM = seen.depthM - targetM;
    return twist(hands(errorM, seen.speedMps - paceMps, way), { seen, task, taskS, way, errorM, leaving: false });
  };

  return {
    decide(state: Readonly<DiveState>, told: Task): Controls {
      const seen = see(state.depthM, state.speedMps);
      const now = nameOf(told);
      if (now !== phase) phaseFrom = decision;
      phase = now;
      const taskS = (decision - phaseFrom) / DECISIONS_PER_S;
      const task = aim ? aim(told, taskS, seen.depthM) : told;
      const { pressurePa } = waterAt(rig.column, state.depthM, water);
      const empty = jacketM3(rig, state.jacketMol, pressurePa) < 0.05e-3;
      const { gas, biasL, finsUpN, holdsLine, releaseMask } = act(seen, task, taskS, empty);
      decision++;
      pitchDeg = divePosture(state.depthM, pitchDeg);
      const controls: Controls = {
        ...restingControls(breathe(biasL * 1e-3)),
        breath: 1,
        jacketAdd: gas > 0 ? 1 : 0,
        jacketVent: gas < 0 ? ventFor(state.pitchSin) : 0,
        pitchDeg: finsUpN !== 0 && pitchDeg === 0 ? 60 : pitchDeg,
        finsN: finsUpN !== 0 && state.pitchSin > 0.5 ? finsUpN : 0,
        ...(holdsLine ? { holdLine: 1 } : {}),
        ...(releaseMask ? { releaseMask } : {}),
      };
      return hold ? hold(controls, state, now) : controls;
    },
  };
}

/** Lung volume that a pilot of this rig breathes about, centilitres. */
export function restCl(rig: Rig): number {
  return Math.floor(midBreathM3(rig) * 1e5 + 0.5);
}
