import type { Rig } from '../diver/index.ts';
import { CONTROL_NAMES, TICKS_PER_CHANGE, TICKS_PER_S, quantised, restingControls, type Controls } from './controls.ts';
import { hadHappened, pushDisturbances, type DiveEvent } from './events.ts';
import { hashOf } from './hash.ts';
import { Recording } from './recording.ts';
import { copyState, overwriteState, type DiveState } from './state.ts';
import { advance } from './step.ts';

/** A state is kept every so many ticks, five seconds, so that no earlier moment is far. */
export const TICKS_PER_KEPT = 5 * TICKS_PER_S;

/** One change of controls: from this tick on, these hold. */
export interface ControlChange {
  readonly tick: number;
  readonly controls: Controls;
}

/** A dive as it is kept: how it began and what the diver did. Everything else is computed again from it. */
export interface Run {
  readonly rig: Rig;
  readonly start: DiveState;
  /** In order of ticks; the first stands at the start's tick. */
  readonly changes: readonly ControlChange[];
  readonly ticks: number;
  /** true: the attitude was locked as it was at the start. */
  readonly locked: boolean;
}

/**
 * A dive under way: the state now, the 10 Hz recording, the events, and the changes of controls from which all of it can be
 * computed again. Owns its state; what it hands out is a copy.
 */
export class Dive {
  readonly rig: Rig;
  readonly recording: Recording;
  readonly events: DiveEvent[] = [];
  readonly locked: boolean;
  /** States on the way, one each {@link TICKS_PER_KEPT}, the first that of the start; not to be changed. */
  readonly kept: Readonly<DiveState>[] = [];
  readonly #start: DiveState;
  readonly #state: DiveState;
  readonly #changes: ControlChange[];
  /** How many changes the events tell of. */
  #told = 0;

  constructor(rig: Rig, start: DiveState, controls: Controls = restingControls(0), locked = false) {
    this.rig = rig;
    this.locked = locked;
    this.#start = copyState(start);
    this.#state = copyState(start);
    this.#changes = [{ tick: start.tick, controls: quantised(controls) }];
    this.recording = new Recording(rig, start.tick);
    this.recording.note(this.#state);
    this.kept.push(this.#start);
  }

  /** The present state, not to be changed: read it before the next advance, or copy it. */
  get state(): Readonly<DiveState> {
    return this.#state;
  }

  get tick(): number {
    return this.#state.tick;
  }

  get controls(): Controls {
    return this.#changes[this.#changes.length - 1]!.controls;
  }

  /** What the diver did so far. */
  get changes(): readonly ControlChange[] {
    return this.#changes;
  }

  /** Whether a twentieth of a second begins on the present tick: pilots, mishaps and what hands move on change on these alone. */
  get onTwentieth(): boolean {
    return (this.#state.tick - this.#start.tick) % TICKS_PER_CHANGE === 0;
  }

  /** Sets what the diver does from the present tick on; quantised, and kept only where it differs from before. */
  steer(controls: Controls): void {
    const wanted = quantised(controls);
    const last = this.#changes[this.#changes.length - 1]!;
    if (CONTROL_NAMES.every((name) => last.controls[name] === wanted[name])) return;
    if (last.tick === this.tick) this.#changes.pop();
    this.#changes.push({ tick: this.tick, controls: wanted });
  }

  /** Moves on by whole ticks under the present controls. */
  advance(ticks: number): void {
    const end = this.#state.tick + ticks;
    if (ticks > 0) this.#tell();
    while (this.#state.tick < end) {
      const until = Math.min(end, this.recording.dueTick);
      advance(this.rig, this.#state, this.controls, until - this.#state.tick, this.events, this.locked);
      this.recording.note(this.#state);
      if (this.tick === this.#start.tick + this.kept.length * TICKS_PER_KEPT) this.kept.push(copyState(this.#state));
    }
  }

  #tell(): void {
    for (; this.#told < this.#changes.length; this.#told++) {
      const { tick, controls } = this.#changes[this.#told]!;
      pushDisturbances(this.events, tick, this.#changes[this.#told - 1]?.controls ?? restingControls(0), controls);
    }
  }

  /** The same dive as it was at an earlier tick, of which the state is given: to be flown on another way. */
  upTo(state: Readonly<DiveState>): Dive {
    const { tick } = state;
    const dive = new Dive(this.rig, this.#start, this.#changes[0]!.controls, this.locked);
    overwriteState(dive.#state, state);
    dive.#changes.push(...this.#changes.slice(1).filter((change) => change.tick < tick));
    if (tick > this.#start.tick) dive.#told = dive.#changes.length;
    dive.events.push(...this.events.filter((event) => hadHappened(event, tick)));
    dive.kept.push(...this.kept.slice(1).filter((kept) => kept.tick <= tick));
    dive.recording.takeUpTo(this.recording, tick);
    return dive;
  }

  /** The dive so far, to be stored. */
  run(): Run {
    return {
      rig: this.rig,
      start: copyState(this.#start),
      changes: [...this.#changes],
      ticks: this.#state.tick - this.#start.tick,
      locked: this.locked,
    };
  }

  /** Hash of the present state. */
  hash(): string {
    return hashOf(this.#state);
  }
}

/**
 * Dives a run again up to a number of ticks: the same state, recording and events, to the bit.
 * @param ticks from the start; the whole run when left out
 */
export function replay(run: Run, ticks = run.ticks): Dive {
  const dive = new Dive(run.rig, run.start, run.changes[0]?.controls, run.locked);
  const end = run.start.tick + Math.min(ticks, run.ticks);
  for (let i = 1; i <= run.changes.length; i++) {
    const change = run.changes[i];
    const until = Math.min(change?.tick ?? end, end);
    if (until > dive.tick) dive.advance(until - dive.tick);
    if (!change || change.tick >= end) break;
    dive.steer(change.controls);
  }
  return dive;
}
