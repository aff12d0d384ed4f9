import type { Act } from './act.ts';
import { DECISIONS_PER_S } from './eye.ts';
import type { BreathLaw, KickLaw, Law, PulseLaw, UntilStillLaw } from './traits.ts';

/**
 * From where a pilot thinks he should be: metres below it, m/s by which he sinks faster than it, and which way it travels (1
 * down, −1 up, 0 stays).
 */
export type Hands = (errorM: number, speedMps: number, way: -1 | 0 | 1) => Act;

/** Share by which the 4 s mean of the bias comes nearer to the bias at each decision. */
const MEAN_SHARE = 1 / (4 * DECISIONS_PER_S);
const decisions = (seconds: number) => Math.floor(seconds * DECISIONS_PER_S + 0.5);

/** The hands of a law, at rest. */
export function handsOf(law: Law): Hands {
  switch (law.kind) {
    case 'breath':
      return breathHands(law);
    case 'pulse':
      return pulseHands(law);
    case 'until-still':
      return untilStillHands(law);
    case 'kick':
      return kickHands(law);
  }
}

function breathHands(law: BreathLaw): Hands {
  let mean = 0;
  let pressing = 0;
  let waiting = 0;
  let gas: -1 | 0 | 1 = 0;
  return (errorM, speedMps, way) => {
    const wanted = law.perML * errorM + law.perMpsL * speedMps;
    const biasL = Math.min(Math.max(wanted, -law.rangeL), law.rangeL);
    mean += (biasL - mean) * MEAN_SHARE;
    if (pressing > 0) {
      pressing--;
      if (pressing === 0) waiting = decisions(law.waitS);
    } else if (waiting > 0) waiting--;
    else if (mean > law.bandL + (way < 0 ? law.oneWayL : 0)) {
      gas = 1;
      pressing = decisions(law.pressS);
    } else if (mean < -law.bandL - (way > 0 ? law.oneWayL : 0)) {
      gas = -1;
      pressing = decisions(law.pressS);
    }
    return { gas: pressing > 0 ? gas : 0, biasL, finsUpN: 0 };
  };
}

function pulseHands(law: PulseLaw): Hands {
  let since = decisions(law.fromPressToPressS);
  let gas: -1 | 0 | 1 = 0;
  return (errorM, speedMps) => {
    since++;
    const felt = errorM + law.leadS * speedMps;
    if (since >= decisions(law.fromPressToPressS) && Math.abs(felt) > law.overM) {
      since = 0;
      gas = felt > 0 ? 1 : -1;
    }
    return { gas: since < decisions(law.pressS) ? gas : 0, biasL: 0, finsUpN: 0 };
  };
}

function untilStillHands(law: UntilStillLaw): Hands {
  let pressed = 0;
  let waiting = 0;
  let gas: -1 | 0 | 1 = 0;
  return (errorM, speedMps) => {
    if (waiting > 0) waiting--;
    else if (gas !== 0) {
      pressed++;
      // A press goes on until the motion it was meant to stop, or to start, is seen.
      const done = gas > 0 ? speedMps <= law.stillMps : speedMps >= -law.stillMps;
      if ((done && pressed > 2) || pressed >= decisions(law.longestS)) {
        gas = 0;
        pressed = 0;
        waiting = decisions(law.waitS);
      }
    } else if (errorM > law.overM || speedMps > law.overMps) gas = 1;
    else if (errorM < -law.overM || speedMps < -law.overMps) gas = -1;
    return { gas: waiting > 0 ? 0 : gas, biasL: 0, finsUpN: 0 };
  };
}

function kickHands(law: KickLaw): Hands {
  return (errorM) => ({ gas: 0, biasL: 0, finsUpN: errorM > law.overM ? law.finsN : 0 });
}
