import type { Rig } from '../diver/index.ts';
import {
  Dive,
  STEP_S,
  TICKS_PER_CHANGE,
  TICKS_PER_S,
  floatingDepthM,
  diveAt,
  replay,
  restingControls,
  startState,
  type Controls,
  type DiveState,
  type Run,
  type Start,
} from '../dive/index.ts';
import { Forecast } from '../insight/index.ts';
import type { Act } from '../panels/index.ts';
import { handsOf, restingHands, type Hands } from './hands.ts';
import { saidOn, type Said } from './on-press.ts';

/** Gas in the jacket of a diver who waits at the surface, m³; less where the jacket is smaller. Practice. */
const AFLOAT_M3 = 8e-3;

/** Where free practice begins: afloat and upright, at rest. */
export function afloatStart(rig: Rig): Start {
  const jacketM3 = Math.min(AFLOAT_M3, rig.jacket.capacityM3);
  return { depthM: floatingDepthM(rig, jacketM3), jacketM3, pitchDeg: 90 };
}

/** A dive that is being flown: the dive, the hands on it, and what comes if they do nothing. */
export class Flight {
  readonly rig: Rig;
  dive: Dive;
  hands: Hands;
  /** What becomes of what the hands want, as when a valve sticks. */
  meddle = (wanted: Controls, _state: Readonly<DiveState>): Controls => wanted;
  #said: Said | null = null;
  #before: number;
  #forecast: Forecast;
  #forecastM: readonly number[] = [];
  #forecastTick = -1;

  constructor(rig: Rig, start: Start) {
    this.rig = rig;
    this.hands = restingHands(rig, start.pitchDeg ?? 0);
    const controls = { ...restingControls(this.hands.levelCl), pitchDeg: this.hands.pitchDeg };
    this.dive = new Dive(rig, startState(rig, start), controls);
    this.#before = this.dive.state.depthM;
    this.#forecast = new Forecast(rig);
  }

  /**
   * Runs ticks with what is held down now: a press counts from the next tick on, what goes on by itself changes twenty times a second
   * of the dive, whatever the screen does.
   * @param goOn asked twenty times a second; false stops there
   * @returns ticks that were run
   */
  run(ticks: number, held: () => ReadonlySet<Act>, goOn: () => boolean): number {
    for (let ran = 1; ran <= ticks; ran++) {
      this.#steer(held());
      this.#before = this.dive.state.depthM;
      this.dive.advance(1);
      if (this.dive.onTwentieth && !goOn()) return ran;
    }
    return ticks;
  }

  #steer(held: ReadonlySet<Act>): void {
    const { dive } = this;
    const said = saidOn(dive, this.hands, held, this.#said);
    if (!said) return;
    this.#said = said;
    this.hands = said.hands;
    // What goes wrong keeps to twentieths: a press makes no bump longer.
    const into = (dive.tick - dive.recording.startTick) % TICKS_PER_CHANGE;
    dive.steer(this.meddle(said.controls, into === 0 ? dive.state : { ...dive.state, tick: dive.tick - into }));
  }

  /** Depth and moment between the last two ticks, for the picture. */
  between(share: number): { readonly depthM: number; readonly nowS: number } {
    const { depthM } = this.dive.state;
    const nowS = this.dive.tick / TICKS_PER_S;
    if (this.dive.tick === 0) return { depthM, nowS };
    return { depthM: this.#before + (depthM - this.#before) * share, nowS: nowS - STEP_S * (1 - share) };
  }

  /** Depths ahead if nothing is done, reckoned ten times a second. */
  forecastM(): readonly number[] {
    const { tick } = this.dive;
    if (this.#forecastTick < 0 || Math.abs(tick - this.#forecastTick) >= TICKS_PER_S / 10) {
      this.#forecastM = this.#forecast.depthsM(this.dive.state, this.dive.controls);
      this.#forecastTick = tick;
    }
    return this.#forecastM;
  }

  /** Goes back: the same dive up to then, to be flown on from there. */
  back(seconds: number): void {
    this.take(diveAt(this.dive, this.dive.tick - seconds * TICKS_PER_S));
  }

  /** Takes over a dive of the same rig; the hands go on as its controls say. */
  take(dive: Dive): void {
    this.dive = dive;
    this.hands = handsOf(dive.controls, this.hands);
    this.#said = null;
    this.#before = dive.state.depthM;
    this.#forecastTick = -1;
  }

  /** A flight that takes over a stored run at its end. */
  static ofRun(run: Run): Flight {
    return Flight.ofDive(replay(run));
  }

  /** A flight that goes on with a dive. */
  static ofDive(dive: Dive): Flight {
    const flight = new Flight(dive.rig, { depthM: 0 });
    flight.take(dive);
    return flight;
  }
}
