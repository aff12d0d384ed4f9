import type { Rig } from '../diver/index.ts';
import { withMoreLead } from '../insight/index.ts';
import { floatingJacketM3, neutralJacketM3 } from './carrying.ts';
import type { Lesson } from './lesson.ts';
import type { PredictStep } from './predict.ts';
import type { Parameter, Topic } from './topics.ts';
import { handsOffOutcome, leadLetGo, leastThatSinks } from './truth-float.ts';
import { gasCurve, gasOnTheWay, gasToMoveL, growthOrder, litresFor, suitGasL } from './truth-gas.ts';
import * as motion from './truth-motion.ts';
import { leadInSuitKg, leadInWaterKg, leadTooMuchKg, lighterKg, swingCurve } from './truth-weight.ts';

/** An outcome, a number in the topic's unit, item ids in order, or the numbers of a curve. */
export type Truth = string | number | readonly string[] | readonly number[];

/**
 * What the model says to a prediction, from the lesson's own setup. The few answers that it cannot compute stand in the file.
 * @throws {RangeError} when a parameter that the topic needs is missing
 */
export function truthOf(lesson: Lesson, rig: Rig, step: PredictStep): Truth {
  if (step.topic === undefined) return step.answer ?? '';
  const given = (key: Parameter) => {
    const found = step[key];
    if (found === undefined) throw new RangeError(`truthOf: ${step.id} needs ${key} for ${step.topic}`);
    return found;
  };
  const atM = () => given('atM');
  const offM3 = () => given('offL') * 1e-3;
  const ids = step.shape === 'order' ? step.items.map(({ id }) => id) : [];
  const along = step.shape === 'curve' ? step.along : [];
  const topics: Readonly<Record<Topic, () => Truth>> = {
    'floats-hands-off': () => handsOffOutcome(lesson, rig),
    'what-sinks': () => leastThatSinks(lesson, rig),
    'lead-let-go': () => leadLetGo(lesson, rig),
    'jacket-for-neutral': () => neutralJacketM3(rig, atM()) * 1e3,
    'jacket-with-more-lead': () => neutralJacketM3(withMoreLead(rig, given('kg')), atM()) * 1e3,
    'jacket-for-floating': () => floatingJacketM3(rig) * 1e3,
    'litres-for-kilograms': () => litresFor(rig, atM(), given('kg')),
    'gas-to-move': () => gasToMoveL(rig, atM(), given('toM')),
    'gas-on-the-way-up': () => gasOnTheWay(rig, atM(), given('toM')),
    'gas-curve': () => gasCurve(rig, along),
    'jacket-curve': () => along.map((depthM) => neutralJacketM3(rig, depthM) * 1e3),
    'gas-growth-order': () => growthOrder(rig, ids),
    'suit-gas': () => suitGasL(rig, atM(), given('toM')),
    'breath-lag': () => motion.breathStops(rig, atM()).afterS,
    'breath-overshoot': () => motion.breathStops(rig, atM()).deeperM,
    'deep-breath': () => motion.deepBreath(rig, atM()),
    'drift-leads': () => motion.driftM(rig, atM(), given('byM'), offM3(), given('afterS')),
    'comes-back': () => motion.comesBack(rig, atM()),
    'doubling-time': () => motion.doublingS(rig, atM()),
    'doubling-order': () => motion.doublingOrder(rig, ids),
    'still-stops': () => motion.stillStops(rig, atM(), offM3(), given('speedMpmin') / 60),
    'stops-at': () => motion.stopsAtM(rig, atM(), given('afterS')),
    'second-costs': () =>
      motion.stopsAtM(rig, atM(), given('afterS') + 1) - motion.stopsAtM(rig, atM(), given('afterS')),
    'latest-vent': () => motion.latestVentS(rig, atM(), offM3()),
    'lost-lead-rate': () => motion.lostLeadMpmin(rig, atM(), given('kg')),
    'breath-reaches-to': () => motion.breathReachesToM(rig),
    'posture-force': () => motion.postureForce(rig, atM(), given('kg')),
    'posture-speed': () => motion.postureSpeed(rig, atM(), given('kg')),
    'lead-too-much': () => leadTooMuchKg(rig),
    'lighter-at-reserve': () => lighterKg(rig),
    'lead-in-other-water': () => leadInWaterKg(rig, given('toPsu')),
    'lead-in-other-suit': () => leadInSuitKg(rig, given('suitShare')),
    'swing-curve': () => swingCurve(rig, atM(), along),
  };
  return topics[step.topic]();
}
