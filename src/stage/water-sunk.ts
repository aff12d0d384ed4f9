import { TICKS_PER_S, type ControlChange } from '../dive/index.ts';
import type { StageView } from './view.ts';

/**
 * How far the water has sunk since the start of a dive, metres: what hangs in it has sunk with it. Keeps its sum up to the last change
 * of the water, since nobody wants to add up a whole dive in every frame.
 */
export class WaterSunk {
  #changes: readonly ControlChange[] = [];
  #at = 0;
  #sumM = 0;

  sunkM({ rig, changes, nowS }: Pick<StageView, 'rig' | 'changes' | 'nowS'>): number {
    const nowTick = nowS * TICKS_PER_S;
    const known = changes[this.#at];
    if (this.#changes !== changes || !known || known.tick > nowTick) this.#at = this.#sumM = 0;
    this.#changes = changes;
    for (let next = changes[this.#at + 1]; next && next.tick <= nowTick; next = changes[this.#at + 1]) {
      this.#sumM += this.#sinksM(next.tick);
      this.#at++;
    }
    return rig.currentDownMps * nowS + this.#sumM + this.#sinksM(nowTick);
  }

  /** Metres from the change that is looked at to a tick. */
  #sinksM(tick: number): number {
    const change = this.#changes[this.#at];
    return change ? ((tick - change.tick) / TICKS_PER_S) * change.controls.waterDownMmps * 1e-3 : 0;
  }
}
