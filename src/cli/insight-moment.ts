import type { Rig } from '../diver/index.ts';
import { midBreathCl, restingControls, startState, type Controls, type DiveState } from '../dive/index.ts';
import { USUAL_ASK, USUAL_LUNGS, type Floor, type LungRange, type StoppingAsk } from '../insight/index.ts';
import { rigAt } from './files.ts';
import { ABOVE, RATE_MPMIN, SHALLOWEST_M, oneOf, whole } from './insight-options.ts';
import { litres, lungsM3 } from './options.ts';
import { UsageError, within, type Asked } from './usage.ts';

/** A moment of a dive as the options describe it, and what is feared in it. */
export interface Moment {
  readonly rig: Rig;
  readonly state: DiveState;
  readonly controls: Controls;
  readonly ask: StoppingAsk;
}

/**
 * The moment that was asked for: nothing pressed, breathing about the lungs given, that attitude held.
 * @throws {UsageError} when this setup cannot be in such a moment
 * @throws {BadFile} when the setup's file has problems
 */
export function momentOf(asked: Asked): Moment {
  const rig = rigAt(asked.things[0]);
  const { depth, speed = 0, cylinder, pitch = 0 } = asked.numbers;
  const depthM = within('--depth', depth!, SHALLOWEST_M, rig.bottomM, 'the bottom of this setup');
  const lungM3 = lungsM3(asked, rig);
  // Of the lungs only whole centilitres can be commanded, of the attitude whole degrees: the moment has exactly those.
  const lungCl = lungM3 === undefined ? midBreathCl(rig) : Math.round(lungM3 * 1e5);
  const pitchDeg = whole('--pitch', pitch);
  const state = startState(rig, {
    depthM,
    speedMps: speed,
    pitchDeg,
    lungM3: lungCl * 1e-5,
    ...gasOf(asked, rig),
    ...(cylinder === undefined ? {} : { cylinderBar: cylinder }),
  });
  return { rig, state, controls: { ...restingControls(lungCl), pitchDeg }, ask: askOf(asked, rig, depthM) };
}

function gasOf(asked: Asked, rig: Rig): { jacketM3?: number; suitGasM3?: number } {
  const { jacket, 'suit-gas': suitGas } = asked.numbers;
  if (jacket !== undefined) within('--jacket', jacket, 0, litres(rig.jacket.capacityM3), 'what the jacket holds');
  if (suitGas !== undefined) {
    if (!rig.drysuit) throw new UsageError('--suit-gas: this setup has no drysuit; leave it out');
    within('--suit-gas', suitGas, 0, litres(rig.drysuit.capacityM3), 'what the suit holds');
  }
  return {
    ...(jacket === undefined ? {} : { jacketM3: jacket * 1e-3 }),
    ...(suitGas === undefined ? {} : { suitGasM3: suitGas * 1e-3 }),
  };
}

function askOf(asked: Asked, rig: Rig, depthM: number): StoppingAsk {
  const { reaction = USUAL_ASK.reactionS, floor } = asked.numbers;
  const written = asked.texts['above'];
  const isRate = written !== undefined && oneOf('--above', written, ABOVE) === 'rate';
  const above: Floor = isRate ? { kind: 'rate', mps: RATE_MPMIN / 60 } : { kind: 'head-out' };
  const below: Floor =
    floor === undefined
      ? { kind: 'ground' }
      : { kind: 'depth', depthM: within('--floor', floor, depthM, rig.bottomM, 'from --depth to the bottom') };
  return { lungs: lungRangeOf(asked, rig), reactionS: reaction, below, above };
}

function lungRangeOf(asked: Asked, rig: Rig): LungRange {
  const { least, most } = asked.numbers;
  if (least === undefined && most === undefined) return USUAL_LUNGS;
  if (!rig.lungs.open)
    throw new UsageError(
      `--${least === undefined ? 'most' : 'least'}: not on a closed loop, where breathing changes no volume`,
    );
  const smallest = litres(rig.lungs.residualM3);
  const largest = litres(rig.lungs.totalM3);
  const why = 'the smallest and the largest lungs of this setup';
  const leastL = least === undefined ? litres(USUAL_LUNGS.leastM3) : within('--least', least, smallest, largest, why);
  const mostL = most === undefined ? litres(USUAL_LUNGS.mostM3) : within('--most', most, smallest, largest, why);
  if (!(leastL < mostL)) throw new UsageError(`--least: found "${leastL}"; allowed: less than --most, here ${mostL}`);
  return { leastM3: leastL * 1e-3, mostM3: mostL * 1e-3 };
}
