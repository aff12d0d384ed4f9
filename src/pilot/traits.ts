import type { Aim } from './aims.ts';
import type { EyeTraits } from './eye.ts';
import type { Quirk } from './quirks.ts';
import type { TargetTraits } from './target.ts';

/** A hand on the jacket led by the breath: what a diver does who balances with the lungs and corrects with gas. */
export interface BreathLaw {
  readonly kind: 'breath';
  /** Litres that the breath may be off its middle; litres a metre; litres for each m/s. */
  readonly rangeL: number;
  readonly perML: number;
  readonly perMpsL: number;
  readonly pressS: number;
  /** One press when the 4 s mean of the breath's bias passes this, litres, then a wait. */
  readonly bandL: number;
  readonly waitS: number;
  /** On the way up adding, on the way down venting, needs so much more, litres. */
  readonly oneWayL: number;
}

/** A hand on the jacket alone, in short pulses: on |e + 6 v|. */
export interface PulseLaw {
  readonly kind: 'pulse';
  readonly pressS: number;
  readonly overM: number;
  readonly leadS: number;
  readonly fromPressToPressS: number;
}

/** A hand that stays on the button until what is seen stands still. */
export interface UntilStillLaw {
  readonly kind: 'until-still';
  readonly overM: number;
  readonly overMps: number;
  readonly stillMps: number;
  readonly longestS: number;
  readonly waitS: number;
}

/** Fins instead of gas. */
export interface KickLaw {
  readonly kind: 'kick';
  readonly finsN: number;
  readonly overM: number;
}

export type Law = BreathLaw | PulseLaw | UntilStillLaw | KickLaw;

/** How the surface is left: in pulses, or all gas at once. */
export interface LeavingTraits {
  readonly onS: number;
  /** A pulse once the head goes under: what is let out now is what he falls by. */
  readonly lastS: number;
  /** 0: the vent stays open. */
  readonly everyS: number;
}

export interface PilotTraits {
  readonly eye: EyeTraits;
  readonly target: TargetTraits;
  readonly leaving: LeavingTraits;
  readonly periodS: number;
  /** Share of his usual breath that a breath is; left out: all of it. */
  readonly tidalShare?: number;
  readonly law: Law;
  /** Closes the airway at 5.8 L at the start of each phase and whenever he rises. */
  readonly holdsBreath: boolean;
  readonly quirk?: Quirk;
  readonly aim?: Aim;
}

const noDrops = { dropsPerS: 0, dropS: 0 };
const leavesAtOnce = { onS: 1, lastS: 1, everyS: 0 };
const hasty: TargetTraits = { upMps: 0.12, downMps: 0.18, slowM: 0, leadM: 1.2, paceShare: 0 };

const steady: PilotTraits = {
  eye: { delayS: 0.35, noticesMps: 0.02, noiseM: 0.05, ...noDrops },
  target: { upMps: 0.08, downMps: 0.1, slowM: 1, leadM: 0.5, paceShare: 0.5 },
  leaving: { onS: 0.5, lastS: 0.25, everyS: 1.5 },
  periodS: 8,
  law: { kind: 'breath', rangeL: 1, perML: 0.8, perMpsL: 8, pressS: 0.25, bandL: 0.25, waitS: 2.5, oneWayL: 0.2 },
  holdsBreath: false,
};

/** Steady eyes, and few presses: each of them most of what a change of depth needs. */
const sparing: PilotTraits = {
  ...steady,
  law: { kind: 'breath', rangeL: 1, perML: 0.8, perMpsL: 8, pressS: 0.8, bandL: 0.5, waitS: 8, oneWayL: 0.2 },
};

/** Steady, and quick with long presses where the rate says that something runs away. */
const rescuer: PilotTraits = {
  ...steady,
  quirk: { kind: 'acts-at-once', atMps: 0.2, untilMps: 0.06, breathL: 2 },
};

const able = {
  eye: { delayS: 0.6, noticesMps: 0.04, noiseM: 0.1, dropsPerS: 0.08, dropS: 1.5 },
  target: { upMps: 0.11, downMps: 0.2, slowM: 0, leadM: 0.45, paceShare: 0 },
  leaving: { onS: 0.5, lastS: 0.5, everyS: 1.2 },
  periodS: 6,
  law: { kind: 'breath', rangeL: 0.9, perML: 0.6, perMpsL: 5, pressS: 0.4, bandL: 0.3, waitS: 3, oneWayL: 0.2 },
  holdsBreath: false,
} as const satisfies PilotTraits;

const learner: PilotTraits = {
  eye: { delayS: 0.8, noticesMps: 0.05, noiseM: 0.15, dropsPerS: 0.08, dropS: 2 },
  target: { upMps: 0.12, downMps: 0.2, slowM: 0, leadM: 0.8, paceShare: 0 },
  leaving: leavesAtOnce,
  periodS: 5.5,
  law: { kind: 'breath', rangeL: 0.6, perML: 0.5, perMpsL: 4, pressS: 0.6, bandL: 0.3, waitS: 3.5, oneWayL: 0 },
  holdsBreath: false,
};

const pulser: PilotTraits = {
  eye: { delayS: 0.8, noticesMps: 0.05, noiseM: 0.1, ...noDrops },
  target: hasty,
  leaving: leavesAtOnce,
  periodS: 6,
  law: { kind: 'pulse', pressS: 0.4, overM: 0.6, leadS: 6, fromPressToPressS: 2 },
  holdsBreath: false,
};

const overCorrector: PilotTraits = {
  eye: { delayS: 1, noticesMps: 0.06, noiseM: 0.15, ...noDrops },
  target: hasty,
  leaving: leavesAtOnce,
  periodS: 6,
  law: { kind: 'until-still', overM: 0.7, overMps: 0.15, stillMps: 0.02, longestS: 3, waitS: 1.5 },
  holdsBreath: false,
};

const latecomer: PilotTraits = {
  eye: { delayS: 1.5, noticesMps: 0.12, noiseM: 0.2, ...noDrops },
  target: hasty,
  leaving: leavesAtOnce,
  periodS: 6,
  law: { kind: 'until-still', overM: 1.5, overMps: 0.3, stillMps: 0.02, longestS: 4, waitS: 1 },
  holdsBreath: false,
};

const kicker: PilotTraits = {
  eye: { delayS: 1, noticesMps: 0.04, noiseM: 0.1, ...noDrops },
  target: hasty,
  leaving: leavesAtOnce,
  periodS: 6,
  law: { kind: 'kick', finsN: 25, overM: 0.4 },
  holdsBreath: false,
};

/** Able hands with one habit each. */
const withHabits = {
  lifter: { ...able, quirk: { kind: 'lifts', onS: 0.6, everyS: 1.5, untilMps: 0.2 } },
  'late-venter': { ...able, quirk: { kind: 'vents-late', atMps: 0.35 } },
  'heavy-kicker': { ...able, quirk: { kind: 'kicks-for-gas', finsN: 25, overM: 0.3 } },
  'wrong-hander': { ...able, quirk: { kind: 'confuses', share: 0.35 } },
  dumper: { ...able, leaving: leavesAtOnce, quirk: { kind: 'empties', toM: 6 } },
  'early-leaver': { ...able, aim: { kind: 'leaves-stop', afterS: 15 } },
} as const satisfies Readonly<Record<string, PilotTraits>>;

/** Able hands that go after the marks instead of the task: they get there, and then take a short cut. */
const shortCuts = {
  'fin-holder': { ...able, quirk: { kind: 'fins-hold', mostN: 45, firstS: Infinity } },
  'soft-fin-holder': { ...able, quirk: { kind: 'fins-hold', mostN: 12, firstS: Infinity } },
  burster: { ...able, quirk: { kind: 'bursts', finsN: 100, onS: 0.5, everyS: 4 } },
  'fin-braker': { ...able, quirk: { kind: 'fins-brake', finsN: 45 } },
  rester: { ...able, quirk: { kind: 'rests' } },
  'lung-holder': { ...able, quirk: { kind: 'breath-only', from: 'hold' } },
  'bottom-sitter': { ...able, aim: { kind: 'bottom' } },
  'far-aimer': { ...able, aim: { kind: 'off', byM: 2.4 } },
} as const satisfies Readonly<Record<string, PilotTraits>>;

/** Able hands that bend the task a little, where a mark might not look. */
const bends = {
  'near-aimer': { ...able, aim: { kind: 'off', byM: 0.8 } },
  crawler: { ...able, target: { ...able.target, upMps: 0.06, downMps: 0.08 } },
  stayer: { ...able, aim: { kind: 'stays-down' } },
  'lungs-only': { ...able, quirk: { kind: 'breath-only', from: 'start' } },
  'first-kicker': { ...able, quirk: { kind: 'fins-hold', mostN: 45, firstS: 10 } },
  'swims-up': { ...able, quirk: { kind: 'swims-up', finsN: 25 } },
  'swims-down': { ...able, quirk: { kind: 'swims-down', finsN: 25 } },
  'little-kicker': { ...able, quirk: { kind: 'fins-little', finsN: 12, overM: 0.25, inAllNs: 18 } },
  'line-holder': { ...able, quirk: { kind: 'line', overMps: 0.12 } },
  'line-starter': { ...able, quirk: { kind: 'line-first', firstS: 9 } },
  'lead-dropper': { ...able, quirk: { kind: 'drops-lead', piece: 0 } },
  'still-lungs': { ...able, periodS: 0 },
  sipper: { ...able, periodS: 3, tidalShare: 0.3 },
  panter: { ...able, periodS: 3, tidalShare: 0.4 },
  bouncer: { ...able, law: { ...able.law, rangeL: 2, bandL: 0.6 } },
  sculler: { ...able, quirk: { kind: 'fins-little', finsN: 4, overM: 0.1, inAllNs: 19 } },
  'one-button': { ...able, quirk: { kind: 'one-button' } },
  'early-presser': { ...able, quirk: { kind: 'breath-only', from: 'window' } },
  pauser: { ...able, aim: { kind: 'pauses', beforeM: 1.4, forS: 20 } },
} as const satisfies Readonly<Record<string, PilotTraits>>;

/** Able hands with more of one skill: what is gained by it is no trick. */
const skills = {
  'deep-breather': { ...able, law: { ...able.law, rangeL: 2 } },
} as const satisfies Readonly<Record<string, PilotTraits>>;

/** Parameters of every pilot that sees and acts. @source practice: chosen so that marks tell them apart, measured on a reduced model first and on this one after */
export const PILOT_TRAITS = {
  steady,
  sparing,
  rescuer,
  able,
  learner,
  pulser,
  'over-corrector': overCorrector,
  latecomer,
  kicker,
  'breath-holder': { ...able, holdsBreath: true },
  ...withHabits,
  ...shortCuts,
  ...bends,
  ...skills,
} as const satisfies Readonly<Record<string, PilotTraits>>;
