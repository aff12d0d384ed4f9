import type { Rig } from '../diver/index.ts';
import {
  Dive,
  TICKS_PER_S,
  commonTick,
  diveAt,
  midBreathCl,
  momentAt,
  restingControls,
  type DiveState,
  type Moment,
} from '../dive/index.ts';
import type { Act } from '../panels/index.ts';
import { pilotOf, type Pilot, type PilotName } from '../pilot/index.ts';
import { handsOf, restingHands, type Hands } from './hands.ts';
import { saidOn, type Said } from './on-press.ts';
import { levelWith, sameHands } from './pair-hands.ts';

/** Who flies the second diver: the hands of the first, hands of his own, or a simulated diver. */
export type SecondBy = 'hands' | 'own' | PilotName;

/** A pilot's chance begins here: the same pair does the same. */
const SEED = 1;

/** Where a second diver comes from: how he begins beside a first one, or a dive that he has made already. */
export interface SecondFrom {
  readonly rig: Rig;
  readonly by: SecondBy;
  readonly begin: (first: Dive) => DiveState;
  /** He has dived so far, together with the first one. */
  readonly made?: { readonly first: Dive; readonly dive: Dive };
  /** What his own hands hold down now. */
  readonly held?: () => ReadonlySet<Act>;
}

/**
 * The second of two divers on one axis of time. He follows the first one tick by tick: forward through the same ticks, back where the
 * first goes back, and along another line where the first takes one. By the same hands or by a pilot he follows from the first dive
 * alone, to the bit.
 */
export class Second {
  readonly rig: Rig;
  readonly by: SecondBy;
  readonly #begin: SecondFrom['begin'];
  readonly #held: () => ReadonlySet<Act>;
  /** The dives that he made beside others of the first diver. */
  readonly #beside = new WeakMap<Dive, Dive>();
  #first: Dive | null = null;
  #dive: Dive | null = null;
  #beforeM = NaN;
  #change = 0;
  #hands: Hands;
  #said: Said | null = null;
  #pilot: Pilot | null = null;
  /** From here on he is flown as now, ticks. */
  #sinceTick = 0;

  constructor({ rig, by, begin, made, held }: SecondFrom) {
    this.rig = rig;
    this.by = by;
    this.#begin = begin;
    this.#held = held ?? (() => new Set());
    this.#hands = restingHands(rig, 0);
    if (!made) return;
    this.#first = made.first;
    this.#take(made.dive);
    this.#sinceTick = made.dive.tick;
    this.#anew();
  }

  /** His dive, as far as it has followed. @throws {RangeError} before it has followed any */
  get dive(): Dive {
    if (!this.#dive) throw new RangeError('Second.dive: he has followed nobody yet');
    return this.#dive;
  }

  /** Dives on, or back, to where the first one is. */
  follow(first: Dive): void {
    if (first !== this.#first) this.#turn(first);
    const dive = this.dive;
    while (dive.tick < first.tick) {
      this.#steer(first, dive);
      this.#beforeM = dive.state.depthM;
      dive.advance(1);
    }
  }

  /** His depth at a moment between the last two ticks, for the picture. */
  depthAtM(nowS: number): number {
    const { tick, state } = this.dive;
    const back = Math.min(Math.max(tick - nowS * TICKS_PER_S, 0), 1);
    return state.depthM + (this.#beforeM - state.depthM) * back;
  }

  /** An earlier moment of his dive. */
  momentAt(tick: number): Moment {
    return tick === this.dive.tick ? this.dive : momentAt(this.dive, tick);
  }

  /** The first diver has another dive in hand: an earlier moment of it, another line, or one of its own. */
  #turn(first: Dive): void {
    if (this.#first && this.#dive) this.#beside.set(this.#first, this.#dive);
    const known = this.#beside.get(first);
    const common = this.#first && commonTick(this.#first, first);
    this.#first = first;
    const pieces = this.#dive && common !== null ? diveAt(this.#dive, common) : null;
    const dive = known ?? pieces ?? this.#beginning(first);
    const { tick } = dive;
    this.#sinceTick = dive === pieces || known ? Math.min(this.#sinceTick, tick) : tick;
    // What a pilot has seen so far he sees again.
    this.#take(this.#flies ? diveAt(dive, this.#sinceTick) : dive);
    this.#anew();
  }

  get #flies(): boolean {
    return this.by !== 'hands' && this.by !== 'own';
  }

  #beginning(first: Dive): Dive {
    const start = this.#begin(first);
    return new Dive(this.rig, start, restingControls(midBreathCl(this.rig)), first.locked);
  }

  #take(dive: Dive): void {
    this.#dive = dive;
    this.#beforeM = dive.state.depthM;
    this.#hands = handsOf(dive.controls, this.#hands);
    this.#change = 0;
    this.#said = null;
  }

  #anew(): void {
    this.#pilot = this.by === 'hands' || this.by === 'own' ? null : pilotOf(this.by, this.rig, SEED);
  }

  /** As hands on the first one do: twenty times a second, and where one of them presses or lets go. */
  #steer(first: Dive, dive: Dive): void {
    if (this.#pilot) {
      if (dive.onTwentieth) dive.steer(this.#pilot.decide(dive.state, levelWith(first, dive)));
      return;
    }
    if (this.by === 'own') {
      const said = saidOn(dive, this.#hands, this.#held(), this.#said);
      if (!said) return;
      this.#said = said;
      this.#hands = said.hands;
      return dive.steer(said.controls);
    }
    const { changes } = first;
    // The first dive only grows; where it is another one, this begins anew.
    while ((changes[this.#change + 1]?.tick ?? Infinity) <= dive.tick) this.#change++;
    const { tick, controls } = changes[this.#change]!;
    if (dive.onTwentieth || tick === dive.tick) dive.steer(sameHands(first, controls, dive));
  }
}
