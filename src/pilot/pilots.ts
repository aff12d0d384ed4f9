import type { Rig } from '../diver/index.ts';
import { restingControls, ventFor } from '../dive/index.ts';
import { autopilot, restCl } from './autopilot.ts';
import { chanceOf, type Chance } from './chance.ts';
import { DECISIONS_PER_S } from './eye.ts';
import { divePosture } from './posture.ts';
import { withSuitHand } from './suit-hand.ts';
import type { Pilot } from './task.ts';
import { PILOT_TRAITS } from './traits.ts';

/**
 * What a pilot is there for: a diver of a certain skill, one with a habit, one who does no diving, one who goes after the mark by
 * a short cut, one who bends the task, one who has more of one skill, which marks must not take for a trick, or one who has a hand
 * for a drysuit.
 */
export type PilotSort = 'diver' | 'habit' | 'nobody' | 'short-cut' | 'bend' | 'skill' | 'suit';

interface Described {
  readonly sort: PilotSort;
  /** One plain sentence: what he does, and what is wrong with it. */
  readonly does: string;
}

/** Every simulated diver by name: divers the best first, then habits, then those that only prove marks. */
export const PILOTS = {
  steady: { sort: 'diver', does: 'Trims with slow breaths, corrects the gas in short presses, and waits.' },
  sparing: { sort: 'diver', does: 'Presses seldom and as long as it takes, and leaves the rest to the breath.' },
  rescuer: {
    sort: 'diver',
    does: 'Flies like the steady one, and answers a fast rate at once: breath, and a press that lasts.',
  },
  able: { sort: 'diver', does: 'Does the same with later eyes and longer presses, and sometimes looks away.' },
  learner: {
    sort: 'diver',
    does: 'Presses too long, breathes too little for it, and lets all the gas out at the surface.',
  },
  pulser: { sort: 'habit', does: 'Leaves the breath out of it and gives gas a pulse every two seconds.' },
  'over-corrector': { sort: 'habit', does: 'Presses until he sees that it works, which is too long.' },
  latecomer: { sort: 'habit', does: 'Does nothing until he is far off and fast, and then much.' },
  kicker: { sort: 'habit', does: 'Leaves the gas as it is and kicks when he is too deep.' },
  'breath-holder': { sort: 'habit', does: 'Holds a full breath at the start of each phase and whenever he rises.' },
  lifter: { sort: 'habit', does: 'Lets gas in to come up, as if the jacket were a lift.' },
  'late-venter': { sort: 'habit', does: 'Lets no gas out on the way up until he is fast.' },
  'heavy-kicker': { sort: 'habit', does: 'Never adds gas: when he is too deep he kicks, heavy as he is.' },
  'wrong-hander': { sort: 'habit', does: 'Presses the wrong button one time in three.' },
  dumper: { sort: 'habit', does: 'Lets everything out at once on the way down and adds nothing until he is there.' },
  'early-leaver': { sort: 'habit', does: 'Comes to the stop, soon loses patience, and goes on up.' },
  random: { sort: 'nobody', does: 'Presses, breathes and kicks by chance.' },
  idler: { sort: 'nobody', does: 'Breathes and does nothing else.' },
  'fin-holder': { sort: 'short-cut', does: 'Holds his depth with hard fins, whatever the gas.' },
  'soft-fin-holder': { sort: 'short-cut', does: 'Holds his depth with gentle fins, whatever the gas.' },
  burster: { sort: 'short-cut', does: 'Holds his depth with rare, short, hard kicks.' },
  'fin-braker': {
    sort: 'short-cut',
    does: 'Goes down by kicking and brakes the way up with fins, and leaves the gas in.',
  },
  rester: { sort: 'short-cut', does: 'Comes to the depth and does nothing more.' },
  'lung-holder': {
    sort: 'short-cut',
    does: 'Comes to the depth and holds it with the lungs alone, however wrong the gas.',
  },
  'bottom-sitter': { sort: 'short-cut', does: 'Sinks to the bottom and stays there.' },
  'far-aimer': { sort: 'short-cut', does: 'Holds a depth more than two bands off, where nothing is asked.' },
  'near-aimer': { sort: 'bend', does: 'Holds a depth at the edge of the band, above or below.' },
  crawler: { sort: 'bend', does: 'Takes all the time there is for every way.' },
  stayer: { sort: 'bend', does: 'Stays at the stop and spares himself the last metres.' },
  'lungs-only': { sort: 'bend', does: 'Touches no button once he is under.' },
  'first-kicker': { sort: 'bend', does: 'Kicks himself into place before the time that counts begins.' },
  'swims-up': { sort: 'bend', does: 'Comes up heavy, swimming, and spares himself the gas.' },
  'swims-down': { sort: 'bend', does: 'Goes down light, kicking, and lets no gas out.' },
  'little-kicker': { sort: 'bend', does: 'Holds his depth with a few gentle kicks, as many as cost nothing.' },
  'line-holder': { sort: 'bend', does: 'Takes hold of the line whenever he gets fast.' },
  'line-starter': { sort: 'bend', does: 'Holds the line until the time that counts begins, and is still by then.' },
  'lead-dropper': { sort: 'bend', does: 'Lets lead go first of all and has less to balance.' },
  'still-lungs': { sort: 'bend', does: 'Stops breathing, so that no breath moves him.' },
  sipper: { sort: 'bend', does: 'Breathes in quick small sips, so that hardly a breath moves him.' },
  panter: { sort: 'bend', does: 'Breathes fast and shallow, just deep enough that no breath stands still.' },
  bouncer: { sort: 'bend', does: 'Bounces back with great breaths instead of touching the gas.' },
  sculler: { sort: 'bend', does: 'Sculls all the while with fins, as gently as nobody counts.' },
  'one-button': { sort: 'bend', does: 'Uses one of the two buttons only in a hold, so that nothing goes to and fro.' },
  'early-presser': { sort: 'bend', does: 'Presses until the time that counts begins, and not once after it.' },
  pauser: { sort: 'bend', does: 'Waits just outside the band until he is still, and only then drifts in.' },
  'deep-breather': { sort: 'skill', does: 'Presses like the able one, and has more of his lungs to brake with.' },
  'suit-feeder': { sort: 'suit', does: 'Does as steady does, and keeps what is in the drysuit as it is, down and up.' },
  'suit-keeper': { sort: 'suit', does: 'Does the same, and never presses the valve of the drysuit.' },
} as const satisfies Readonly<Record<keyof typeof PILOT_TRAITS | 'random' | 'idler' | SuitPilot, Described>>;
type SuitPilot = 'suit-feeder' | 'suit-keeper';
export type PilotName = keyof typeof PILOTS;

/** Their names in that order. */
export const PILOT_NAMES = Object.keys(PILOTS) as readonly PilotName[];

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
  if (name === 'suit-feeder' || name === 'suit-keeper')
    return withSuitHand(autopilot(rig, PILOT_TRAITS.steady, chance), rig, name === 'suit-feeder');
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
