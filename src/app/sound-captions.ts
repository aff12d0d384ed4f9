import { TICKS_PER_S } from '../dive/index.ts';
import type { CaptionView } from '../panels/index.ts';
import type { GasName, Sounds } from './sound-heard.ts';

/** What has ended stays to be read for so long, and what begins again sooner goes on counting, ticks. */
const STAYS_TICKS = 2.5 * TICKS_PER_S;
const SAME_TICKS = 0.3 * TICKS_PER_S;
/** So many of them at a time, the latest first: the line has no more room. */
const MOST = 2;

const WORDS: Readonly<Record<GasName, string>> = {
  inflator: 'inflator',
  'suit inflator': 'suit inflator',
  'by mouth': 'blown in by mouth',
  loop: 'gas into the loop',
  vent: 'bubbles, vent',
  'suit vent': 'bubbles, suit vent',
  'suit valve': 'bubbles, suit valve by itself',
  'relief valve': 'bubbles, relief valve by itself',
  nose: 'bubbles, nose',
};

/** Says in words what a dive sounds like, gas with its seconds. A dive that stands still keeps what was said. */
export class Captions {
  readonly #gas = new Map<GasName, { ticks: number; lastTick: number }>();
  #tick = NaN;
  #breathLps = 0;
  #speedMps = 0;

  /** Another dive, or another moment of it: nothing is heard yet. */
  clear(): void {
    this.#gas.clear();
    this.#tick = NaN;
    this.#breathLps = this.#speedMps = 0;
  }

  hear(sounds: Sounds, tick: number): void {
    const passed = Number.isNaN(this.#tick) ? 0 : tick - this.#tick;
    this.#tick = tick;
    this.#breathLps = sounds.breathLps;
    this.#speedMps = sounds.toneHz === null ? 0 : sounds.speedMps;
    for (const { name } of sounds.gas) {
      const before = this.#gas.get(name);
      const goesOn = before !== undefined && tick - before.lastTick <= passed + SAME_TICKS;
      this.#gas.set(name, { ticks: (goesOn ? before.ticks : 0) + passed, lastTick: tick });
    }
    for (const [name, { lastTick }] of this.#gas) if (tick - lastTick > STAYS_TICKS) this.#gas.delete(name);
  }

  get view(): CaptionView {
    const gas = [...this.#gas].sort(([, a], [, b]) => b.lastTick - a.lastTick).slice(0, MOST);
    const line = ([name, { ticks }]: (typeof gas)[number]) => `${WORDS[name]}: ${(ticks / TICKS_PER_S).toFixed(1)} s`;
    const over = gas.filter(([, { lastTick }]) => this.#tick - lastTick > SAME_TICKS);
    return {
      breath: this.#breathLps > 0 ? 'breath in' : this.#breathLps < 0 ? 'breath out' : '',
      gas: gas.map(line),
      over: over.map(line),
      tone: this.#speedMps < 0 ? 'high tone: rising' : this.#speedMps > 0 ? 'low tone: sinking' : '',
    };
  }
}
