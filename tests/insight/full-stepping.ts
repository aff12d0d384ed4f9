import { HEAD_OUT_M, instantOf, netForceN, type Rig } from '../../src/diver/index.ts';
import {
  TICKS_PER_CHANGE,
  TICKS_PER_S,
  advance,
  copyState,
  supplyPa,
  type Controls,
  type DiveState,
} from '../../src/dive/index.ts';
import { MEANS, actionOf, handsOff, type Means, type StoppingAsk, type Way } from '../../src/insight/index.ts';
import { pressurePa, waterAt } from '../../src/water/index.ts';

/** Thrust that a diver can keep up, newtons: written again here, so that a change of the model's is seen. Practice. */
const KEPT_UP_N = 45;
/** For how long a dive is stepped at most, seconds. */
const STEPPED_S = 120;

/** A dive flown to its end with the full model: hands off first, then one means. */
export interface Flown {
  readonly end: 'arrested' | 'slow enough' | 'floor' | 'too fast' | 'time is up';
  readonly stops: boolean;
  /** Where and when the motion turned; of a rise that stays slow enough, where the head came out. */
  readonly depthM: number | null;
  readonly timeS: number | null;
  readonly peakMps: number;
  /** The farthest that it went the bad way: with a sprint it may turn, give way again and turn once more, nearer. */
  readonly farthestM: number;
  /** Metres that were left to the floor at the closest; Infinity where there is none, and for a dive that ended on it. */
  readonly leftM: number;
  /** The state in which it ended. */
  readonly state: DiveState;
}

/** How a dive is moved on, and how many ticks at a time. */
export interface Stepping {
  readonly ticks: number;
  readonly move: (rig: Rig, s: DiveState, c: Controls, ticks: number) => void;
}

/** The full model, and a look at every change of controls. */
const FULL: Stepping = { ticks: TICKS_PER_CHANGE, move: advance };

/**
 * Flies a rescue with the full model: nothing for the reaction, then what the action says, asked again at every change of
 * controls, until the motion is arrested, the floor is reached, or time is up.
 */
export function fly(
  rig: Rig,
  from: Readonly<DiveState>,
  controls: Controls,
  ask: StoppingAsk,
  means: Means,
  way: Way,
  stepping = FULL,
): Flown {
  const s = copyState(from);
  const idle = handsOff(controls);
  const action = actionOf(means, way, rig, controls, ask.lungs);
  const floor = way > 0 ? ask.below : ask.above;
  const reactionTicks = Math.round(ask.reactionS * TICKS_PER_S);
  const begun = s.tick;
  let peakMps = Math.max(0, way * s.speedMps);
  let turnedM = way * s.speedMps <= 0 ? s.depthM : null;
  let turnedS = turnedM === null ? null : 0;
  let leftM = Infinity;
  let farthestM = s.depthM;
  const ended = (end: Flown['end'], depthM: number | null, timeS: number | null): Flown => ({
    end,
    stops: depthM !== null,
    depthM,
    timeS,
    peakMps,
    farthestM,
    leftM: end === 'floor' ? Infinity : leftM,
    state: s,
  });
  for (;;) {
    const ran = s.tick - begun;
    const acting = ran >= reactionTicks;
    const c = acting ? action(s) : idle;
    if (turnedM !== null && way * s.speedMps <= 0 && way * lastingN(rig, s, c) >= 0)
      return ended('arrested', turnedM, turnedS);
    if (ran >= STEPPED_S * TICKS_PER_S) return ended('time is up', null, null);
    const { depthM, speedMps } = s;
    const ticks = acting ? stepping.ticks : Math.min(stepping.ticks, reactionTicks - ran);
    stepping.move(rig, s, c, ticks);
    peakMps = Math.max(peakMps, way * s.speedMps);
    farthestM = way > 0 ? Math.max(farthestM, s.depthM) : Math.min(farthestM, s.depthM);
    if (way * speedMps > 0 && way * s.speedMps <= 0) {
      // Within a twentieth of a second speed is a straight line of time.
      const lastedS = ((speedMps / (speedMps - s.speedMps)) * ticks) / TICKS_PER_S;
      turnedS = ran / TICKS_PER_S + lastedS;
      turnedM = depthM + (speedMps * lastedS) / 2;
    }
    if (way > 0) {
      if (s.resting !== 0) return ended('floor', null, null);
      leftM = Math.min(leftM, groundM(rig, s, c) - s.depthM);
      if (floor.kind === 'depth') {
        if (s.depthM >= floor.depthM) return ended('floor', null, null);
        leftM = Math.min(leftM, floor.depthM - s.depthM);
      }
      continue;
    }
    if (floor.kind === 'rate' && peakMps > floor.mps) return ended('too fast', null, null);
    if (s.depthM < HEAD_OUT_M && floor.kind === 'rate') {
      const share = depthM > HEAD_OUT_M ? (depthM - HEAD_OUT_M) / (depthM - s.depthM) : 0;
      return ended('slow enough', Math.min(depthM, HEAD_OUT_M), (ran + share * ticks) / TICKS_PER_S);
    }
    if (s.depthM < HEAD_OUT_M && floor.kind === 'head-out') return ended('floor', null, null);
    leftM = Math.min(leftM, s.depthM - HEAD_OUT_M);
  }
}

/** The gentlest means that a dive needs, and against which danger: sinking first, then rising; `none` against neither. */
export interface Needed {
  readonly means: Means | 'lost';
  readonly way: -1 | 0 | 1;
}

/** What a dive needs that begins so, by flying one means after the other, the gentlest first. */
export function needed(rig: Rig, from: Readonly<DiveState>, controls: Controls, ask: StoppingAsk): Needed {
  for (const way of [1, -1] as const) {
    const helps = MEANS.filter((means) => means !== 'lead' || way > 0);
    const gentlest = helps.find((means) => fly(rig, from, controls, ask, means, way).stops);
    if (gentlest !== 'none') return { means: gentlest ?? 'lost', way };
  }
  return { means: 'none', way: 0 };
}

/** The same moment at another depth: gas in the bags, speed, breath and attitude as they are, lungs of the same volume. */
export function carried(rig: Rig, state: Readonly<DiveState>, depthM: number): DiveState {
  const { lungMol } = instantOf(rig, { depthM, lungM3: state.lungM3 });
  return { ...copyState(state), depthM, lungMol, resting: 0, calmUntil: 0 };
}

/** Depth of mid-chest at which the body touches what is under it: 0.25 m above it level, 1.3 m upright. */
export function groundM(rig: Rig, { depthM, pitchSin }: Readonly<DiveState>, { ledge }: Controls): number {
  const onLedge = rig.ledgeM !== null && ledge === 1 && depthM <= rig.ledgeM - 0.25;
  return (onLedge ? rig.ledgeM! : rig.bottomM) - (0.25 + 1.05 * pitchSin * pitchSin);
}

/**
 * Net force that lasts under these controls, newtons, up positive: lungs in the middle of the breath, or where they are told to
 * be if there is gas to fill them, and of the thrust what can be kept up; less what water that sinks pulls with at who stays.
 */
export function lastingN(rig: Rig, s: Readonly<DiveState>, c: Controls): number {
  const { open, residualM3, totalM3 } = rig.lungs;
  const toldM3 = Math.min(Math.max(c.lungCl * 1e-5, residualM3), totalM3);
  const breathes = supplyPa(rig, s.cylinderMol) > pressurePa(rig.column, Math.max(s.depthM, 0)) + 1e5;
  const reached = open && c.breath !== 2 && (breathes || toldM3 <= s.lungM3);
  const thrustN = Math.min(Math.max(c.finsN, -KEPT_UP_N), KEPT_UP_N);
  const downMps = rig.currentDownMps + c.waterDownMmps / 1000;
  const areaM2 = rig.dragAreaLevelM2 + (rig.dragAreaUprightM2 - rig.dragAreaLevelM2) * s.pitchSin ** 2;
  const { densityKgPerM3 } = waterAt(rig.column, s.depthM, { densityKgPerM3: NaN, pressurePa: NaN });
  const pullN = 0.5 * densityKgPerM3 * areaM2 * downMps * Math.abs(downMps);
  return netForceN(rig, { ...s, lungM3: reached ? toldM3 : s.lungM3 }) + thrustN * s.pitchSin - pullN;
}
