import { suitGasM3, type Rig } from '../diver/index.ts';
import { waterAt } from '../water/index.ts';
import type { Pilot } from './task.ts';

/** So far from what keeps him warm the suit may be before the hand moves, m³: a pinch that is felt, a fold that swells. Practice. */
const FELT_M3 = 0.6e-3;

/**
 * A pilot who has a hand for his drysuit beside all else that he does: gas in against the squeeze, the valve pressed once it swells;
 * and who takes the attitude that a task asks for.
 * @param opens whether he ever presses the valve
 */
export function withSuitHand(pilot: Pilot, rig: Rig, opens: boolean): Pilot {
  const water = { densityKgPerM3: 0, pressurePa: 0 };
  const rightM3 = rig.drysuit?.startM3 ?? 0;
  let way: -1 | 0 | 1 = 0;
  return {
    decide(state, task) {
      const controls = pilot.decide(state, task);
      const { pressurePa } = waterAt(rig.column, state.depthM, water);
      const overM3 = suitGasM3(rig, state.suitMol, pressurePa) - rightM3;
      if (way * overM3 >= 0) way = overM3 < -FELT_M3 ? 1 : overM3 > FELT_M3 && opens ? -1 : 0;
      const pitchDeg = task.kind === 'hold' ? task.pitchDeg : undefined;
      return {
        ...controls,
        suitAdd: way > 0 ? 1 : 0,
        suitVent: way < 0 ? 1 : 0,
        ...(pitchDeg === undefined ? {} : { pitchDeg }),
      };
    },
  };
}
