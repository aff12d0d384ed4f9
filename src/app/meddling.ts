import { TICKS_PER_S, ventFor, type Controls, type DiveState } from '../dive/index.ts';
import type { Mishap } from '../panels/index.ts';

/** How long what sticks is stuck, seconds. Practice. */
const STUCK_S: Readonly<Record<Exclude<Mishap, 'lead-lost'>, number>> = {
  'inflator-open': 8,
  'vent-open': 8,
  'vent-shut': 15,
  'suit-inflator-open': 8,
};

/** Valves that stick: they change what the hands do, so that a run holds it and every replay repeats it. */
export class Meddling {
  readonly #stuck = new Map<Mishap, { readonly fromTick: number; readonly toTick: number }>();

  /** From a tick on something sticks for a while; lead that is lost is gone by the hands. */
  begin(mishap: Exclude<Mishap, 'lead-lost'>, tick: number): void {
    this.#stuck.set(mishap, { fromTick: tick, toTick: tick + STUCK_S[mishap] * TICKS_PER_S });
  }

  /** What the valves do at a tick, whatever the hands want. Who went back to before it is not meddled with. */
  readonly controls = (wanted: Controls, state: Readonly<DiveState>): Controls => {
    const stuck = (mishap: Mishap) => {
      const span = this.#stuck.get(mishap);
      return span !== undefined && state.tick >= span.fromTick && state.tick < span.toTick;
    };
    return {
      ...wanted,
      ...(stuck('inflator-open') ? { jacketAdd: 1 } : {}),
      ...(stuck('vent-open') ? { jacketVent: ventFor(state.pitchSin) } : {}),
      ...(stuck('vent-shut') ? { jacketVent: 0 } : {}),
      ...(stuck('suit-inflator-open') ? { suitAdd: 1 } : {}),
    };
  };
}
