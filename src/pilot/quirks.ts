import type { Act } from './act.ts';
import type { Chance } from './chance.ts';
import { DECISIONS_PER_S, type Sight } from './eye.ts';
import type { Task } from './task.ts';

/** What a pilot does beside, or instead of, the law of his hands. Numbers in seconds, m/s, newtons, metres. */
export type Quirk =
  | { readonly kind: 'lifts'; readonly onS: number; readonly everyS: number; readonly untilMps: number }
  | { readonly kind: 'vents-late'; readonly atMps: number }
  | { readonly kind: 'kicks-for-gas'; readonly finsN: number; readonly overM: number }
  | { readonly kind: 'confuses'; readonly share: number }
  | { readonly kind: 'empties'; readonly toM: number }
  | { readonly kind: 'fins-hold'; readonly mostN: number; readonly firstS: number }
  | { readonly kind: 'bursts'; readonly finsN: number; readonly onS: number; readonly everyS: number }
  | { readonly kind: 'fins-brake'; readonly finsN: number }
  | { readonly kind: 'fins-little'; readonly finsN: number; readonly overM: number; readonly inAllNs: number }
  | { readonly kind: 'swims-up'; readonly finsN: number }
  | { readonly kind: 'swims-down'; readonly finsN: number }
  | { readonly kind: 'rests' }
  | { readonly kind: 'breath-only'; readonly from: 'hold' | 'start' | 'window' }
  | { readonly kind: 'one-button' }
  | { readonly kind: 'acts-at-once'; readonly atMps: number; readonly untilMps: number; readonly breathL: number }
  | { readonly kind: 'line'; readonly overMps: number }
  | { readonly kind: 'line-first'; readonly firstS: number }
  | { readonly kind: 'drops-lead'; readonly piece: number };

/** What a quirk looks at: what is seen, what is to be done, for how long, and where the target lies. */
export interface Moment {
  readonly seen: Sight;
  readonly task: Task;
  readonly taskS: number;
  /** 1 down, −1 up, 0 stays. */
  readonly way: -1 | 0 | 1;
  readonly errorM: number;
  /** Still at the surface, about to go down. */
  readonly leaving: boolean;
}

/** Turns what the hands would do into what is done. */
export type Twist = (act: Act, at: Moment) => Act;

const FIN_PER_M = 40;
const FIN_PER_MPS = 150;
/** Fins below this are not moved, newtons. */
const LEAST_FIN_N = 2;
/** A bursting kicker begins when he is, or will be in four seconds, this far off, metres. */
const BURSTS_OVER_M = 0.3;
const BURST_LOOKS_S = 4;
/** A hold is looked at this long after its depth is reached, seconds. */
const WINDOW_OPENS_S = 10;
/** Rises, or sinks, faster than this and is braked, m/s. */
const BRAKES_OVER_MPS = 0.13;

/** The twist of a quirk. */
export function twistOf(quirk: Quirk, chance: Chance): Twist {
  switch (quirk.kind) {
    case 'lifts':
      return ({ ...act }, { way, seen, taskS }) => {
        if (way >= 0) return act;
        const rises = -seen.speedMps;
        const presses = taskS % quirk.everyS < quirk.onS;
        return { ...act, gas: rises < quirk.untilMps ? (presses ? 1 : 0) : rises > 1.5 * quirk.untilMps ? -1 : 0 };
      };
    case 'vents-late':
      return ventsLate(quirk.atMps);
    case 'kicks-for-gas':
      return (act, { errorM, leaving }) =>
        leaving ? act : { ...act, gas: act.gas > 0 ? 0 : act.gas, finsUpN: errorM > quirk.overM ? quirk.finsN : 0 };
    case 'confuses':
      return confuses(quirk.share, chance);
    case 'empties':
      return (act, { way, seen, leaving }) =>
        leaving || way <= 0 ? act : { ...act, gas: seen.depthM < quirk.toM ? -1 : 0, biasL: -1 };
    case 'fins-hold':
      return (act, { task, taskS, errorM, seen }) => {
        if (task.kind !== 'hold' || taskS > quirk.firstS) return act;
        const wanted = FIN_PER_M * errorM + FIN_PER_MPS * seen.speedMps;
        const finsUpN = Math.floor(Math.min(Math.max(wanted, -quirk.mostN), quirk.mostN));
        const forGood = quirk.firstS === Infinity;
        return {
          ...act,
          ...(forGood ? { gas: 0, biasL: 0 } : {}),
          finsUpN: Math.abs(finsUpN) < LEAST_FIN_N ? 0 : finsUpN,
        };
      };
    case 'fins-little':
      return finsLittle(quirk.finsN, quirk.overM, quirk.inAllNs);
    case 'bursts':
      return bursts(quirk.finsN, quirk.onS, quirk.everyS);
    case 'fins-brake':
      return (act, { way, seen, leaving }) => {
        if (leaving) return { ...act, gas: 0, finsUpN: -quirk.finsN };
        if (way === 0) return act;
        const against = way * seen.speedMps > BRAKES_OVER_MPS ? way * quirk.finsN : 0;
        return { ...act, gas: way < 0 && act.gas < 0 ? 0 : way > 0 && act.gas > 0 ? 0 : act.gas, finsUpN: against };
      };
    case 'swims-up':
      return (act, { way, seen }) =>
        way >= 0
          ? act
          : { ...act, gas: act.gas > 0 ? 0 : act.gas, finsUpN: -seen.speedMps < BRAKES_OVER_MPS ? quirk.finsN : 0 };
    case 'swims-down':
      return (act, { way, seen, leaving }) =>
        leaving || way <= 0
          ? act
          : { ...act, gas: act.gas < 0 ? 0 : act.gas, finsUpN: seen.speedMps < BRAKES_OVER_MPS ? -quirk.finsN : 0 };
    case 'rests':
      return (act, { task }) => (task.kind === 'hold' ? { gas: 0, biasL: 0, finsUpN: 0 } : act);
    case 'breath-only':
      return (act, { task, taskS, leaving }) =>
        (quirk.from === 'window' && (task.kind !== 'hold' || taskS < WINDOW_OPENS_S)) ||
        leaving ||
        (quirk.from === 'hold' && task.kind !== 'hold') ||
        task.kind === 'float'
          ? act
          : { ...act, gas: 0 };
    case 'acts-at-once':
      return actsAtOnce(quirk.atMps, quirk.untilMps, quirk.breathL);
    case 'one-button': {
      let first = 0;
      return (act, { task, taskS }) => {
        if (taskS === 0) first = 0;
        if (task.kind !== 'hold') return act;
        if (first === 0) first = act.gas;
        return act.gas === first ? act : { ...act, gas: 0 };
      };
    }
    case 'line':
      return (act, { task, seen }) =>
        task.kind !== 'hold' && Math.abs(seen.speedMps) > quirk.overMps ? { ...act, holdsLine: true } : act;
    case 'line-first':
      return (act, { task, taskS }) =>
        task.kind === 'hold' && taskS < quirk.firstS ? { ...act, holdsLine: true } : act;
    case 'drops-lead': {
      let dropped = false;
      return (act, { task }) => {
        dropped ||= task.kind !== 'float';
        return dropped ? { ...act, releaseMask: 1 << quirk.piece } : act;
      };
    }
  }
}

/** On the way up the vent stays shut until the climb is seen to be fast, and then open until it is slow. */
function ventsLate(atMps: number): Twist {
  let venting = false;
  return (act, { way, seen }) => {
    if (way >= 0) {
      venting = false;
      return act;
    }
    const rises = -seen.speedMps;
    venting = venting ? rises > 0.1 : rises > atMps;
    return { ...act, gas: venting ? -1 : act.gas > 0 ? 1 : 0 };
  };
}

/** In a hold a rate that no trim explains is answered at once by a breath and a press that lasts until the rate falls. */
function actsAtOnce(atMps: number, untilMps: number, breathL: number): Twist {
  let gas: -1 | 0 | 1 = 0;
  return (act, { task, seen }) => {
    if (task.kind !== 'hold') return act;
    const { speedMps } = seen;
    if (gas !== 0 && gas * speedMps <= untilMps) gas = 0;
    if (gas === 0 && Math.abs(speedMps) > atMps) gas = speedMps > 0 ? 1 : -1;
    return gas === 0 ? act : { ...act, gas, biasL: gas * breathL };
  };
}

/** A share of all presses goes the wrong way, each as a whole. */
function confuses(share: number, chance: Chance): Twist {
  let before = 0;
  let wrong = false;
  return (act, { leaving }) => {
    if (leaving) return act;
    if (act.gas !== 0 && act.gas !== before) wrong = chance.uniform() < share;
    before = act.gas;
    return wrong && act.gas !== 0 ? { ...act, gas: act.gas > 0 ? -1 : 1 } : act;
  };
}

/** In a hold a few kicks beside the gas, as long as what is left of an impulse lasts. */
function finsLittle(finsN: number, overM: number, inAllNs: number): Twist {
  let leftNs = inAllNs;
  return (act, { task, taskS, errorM, seen }) => {
    if (task.kind !== 'hold') return act;
    if (taskS === 0) leftNs = inAllNs;
    const outward = errorM * seen.speedMps > 0;
    const kickNs = finsN / DECISIONS_PER_S;
    if (!outward || Math.abs(errorM) < overM || leftNs < kickNs) return act;
    leftNs -= kickNs;
    return { ...act, finsUpN: errorM > 0 ? finsN : -finsN };
  };
}

function bursts(finsN: number, onS: number, everyS: number): Twist {
  const every = everyS * DECISIONS_PER_S;
  let since = every;
  let up = 0;
  return (act, { task, errorM, seen }) => {
    if (task.kind !== 'hold') return act;
    since++;
    const felt = errorM + BURST_LOOKS_S * seen.speedMps;
    if (since >= every && Math.abs(felt) > BURSTS_OVER_M) {
      since = 0;
      up = felt > 0 ? finsN : -finsN;
    }
    return { gas: 0, biasL: 0, finsUpN: since < onS * DECISIONS_PER_S ? up : 0 };
  };
}
