import type { Rig } from '../diver/index.ts';
import { restingControls, ventFor } from '../dive/index.ts';
import { autopilot, restCl } from './autopilot.ts';
import { chanceOf, type Chance } from './chance.ts';
import { DECISIONS_PER_S } from './eye.ts';
import { divePosture } from './posture.ts';
import type { Pilot } from './task.ts';
import { PILOT_TRAITS } from './traits.ts';

/** Every simulated diver by name, the best first. */
export const PILOT_NAMES = [
  'steady',
  'able',
  'learner',
  'pulser',
  'over-corrector',
  'latecomer',
  'kicker',
  'breath-holder',
  'random',
  'idler',
] as const satisfies readonly (keyof typeof PILOT_TRAITS | 'random' | 'idler')[];
export type PilotName = (typeof PILOT_NAMES)[number];

/**
 * A pilot at the start of a dive; the same name and seed always do the same.
 * @throws {RangeError} when nobody has that name
 */
export function pilotOf(name: PilotName, rig: Rig, seed: number): Pilot {
  if (!PILOT_NAMES.includes(name))
    throw new RangeError(`pilotOf: name must be one of ${PILOT_NAMES.join(', ')}, got ${String(name)}`);
  const chance = chanceOf(seed);
  if (name === 'idler') return idler(rig);
  if (name === 'random') return randomPilot(rig, chance);
  return autopilot(rig, PILOT_TRAITS[name], chance);
}

/** Does nothing: breathes and keeps the posture. */
function idler(rig: Rig): Pilot {
  let pitchDeg: 0 | 90 = 90;
  return {
    decide(state) {
      pitchDeg = divePosture(state.depthM, pitchDeg);
      return { ...restingControls(restCl(rig)), pitchDeg };
    },
  };
}

/** Every 0.3–2.3 s anything: adds in a quarter of cases, vents in a quarter, breath ±1.5 L, fins ±25 N in 15 %. */
function randomPilot(rig: Rig, chance: Chance): Pilot {
  let pitchDeg: 0 | 90 = 90;
  let until = 0;
  let gas: -1 | 0 | 1 = 0;
  let lungCl = restCl(rig);
  let finsN = 0;
  return {
    decide(state) {
      pitchDeg = divePosture(state.depthM, pitchDeg);
      if (until-- <= 0) {
        until = Math.floor((0.3 + 2 * chance.uniform()) * DECISIONS_PER_S);
        const draw = chance.uniform();
        gas = draw < 0.25 ? 1 : draw < 0.5 ? -1 : 0;
        lungCl = restCl(rig) + Math.floor(300 * (chance.uniform() - 0.5));
        finsN = chance.uniform() < 0.15 ? (chance.uniform() < 0.5 ? 25 : -25) : 0;
      }
      return {
        ...restingControls(lungCl),
        jacketAdd: gas > 0 ? 1 : 0,
        jacketVent: gas < 0 ? ventFor(state.pitchSin) : 0,
        pitchDeg: finsN !== 0 && pitchDeg === 0 ? 60 : pitchDeg,
        finsN,
      };
    },
  };
}
