import { TICKS_PER_ROW, TICKS_PER_S, momentAt, replay } from '../dive/index.ts';
import type { Foreseen, Prompt } from '../lesson/index.ts';
import type { Rig, Setup } from '../diver/index.ts';
import type { BeginStep, Demonstration, ShowStep } from './demonstration.ts';
import { Flight } from './flight.ts';
import { placeOf, trailOf, type ClassSaid, type Entered, type Memory, type ShowPlace } from './show-place.ts';
import { besideOf, comparedTo, type ShownBeside } from './show-beside.ts';
import { foreseenRun } from './show-foreseen.ts';
import { gasM3, neutralGasM3, shownRig, shownStart } from './show-start.ts';
import { meanSpeedMps, truthOfRun } from './show-truth.ts';

const LETTERS = 'ABCD';

/** A look ahead from a question, kept as long as the same is asked for. */
interface Looked {
  readonly flight: Flight;
  readonly at: number;
  readonly tick: number;
  readonly foreseen: Foreseen | null;
}

/** One demonstration on its way: which step, whose dive, what was kept of it. It knows no page. */
export class Showing {
  readonly demonstration: Demonstration;
  readonly #rigs: ReadonlyMap<BeginStep, Rig>;
  readonly #besideRigs: ReadonlyMap<BeginStep, Rig>;
  readonly #trail: Entered[] = [];
  #beside: ShownBeside | null = null;
  #foreseen: Looked | null = null;
  #memory: Memory = { words: new Map(), asked: null, said: null };

  private constructor(
    demonstration: Demonstration,
    rigs: ReadonlyMap<BeginStep, Rig>,
    besideRigs: ReadonlyMap<BeginStep, Rig>,
    left: ShowPlace | null,
  ) {
    this.demonstration = demonstration;
    this.#rigs = rigs;
    this.#besideRigs = besideRigs;
    if (!left) this.#enter(0);
    else {
      const { trail, memory } = trailOf(demonstration, rigs, left);
      this.#trail.push(...trail);
      this.#memory = memory;
    }
  }

  /**
   * The demonstration at its first step, or where it was left, its divers fetched.
   * @throws {RangeError} when it does not begin with a diver, or cannot have been left there
   */
  static async begin(
    demonstration: Demonstration,
    fetch: (id: string) => Promise<Setup>,
    left: ShowPlace | null = null,
  ): Promise<Showing> {
    const begins = demonstration.steps.filter((step) => step.kind === 'begin');
    if (demonstration.steps[0]?.kind !== 'begin') throw new RangeError(`${demonstration.id} begins with no diver`);
    const rigs = new Map<BeginStep, Rig>();
    const besideRigs = new Map<BeginStep, Rig>();
    for (const step of begins) {
      const { setup, moreLeadKg, beside } = step;
      const ready = await fetch(setup);
      rigs.set(step, shownRig(ready, moreLeadKg));
      if (beside) besideRigs.set(step, shownRig(ready, moreLeadKg + beside.moreLeadKg));
    }
    return new Showing(demonstration, rigs, besideRigs, left);
  }

  /** Where it is, as plain data: `begin` goes on from there. */
  get place(): ShowPlace {
    return placeOf(this.demonstration, this.#trail, this.#memory);
  }

  /** How many steps led here. */
  get entered(): number {
    return this.#trail.length;
  }

  get step(): ShowStep {
    return this.demonstration.steps[this.#now.step]!;
  }

  get flight(): Flight {
    return this.#now.flight;
  }

  /** The second diver beside the one in hand; null where one is shown alone. */
  get beside(): ShownBeside | null {
    const { flight, begun } = this.#now;
    const rig = this.#besideRigs.get(begun);
    if (!rig || !begun.beside) return null;
    if (this.#beside?.first !== flight) this.#beside = besideOf(flight, rig, begun, begun.beside);
    return this.#beside;
  }

  get isLast(): boolean {
    return this.#now.step + 1 >= this.demonstration.steps.length;
  }

  /** What comes after this step; null at the last. */
  get comes(): ShowStep | null {
    return this.demonstration.steps[this.#now.step + 1] ?? null;
  }

  get canGoBack(): boolean {
    return this.#trail.length > 1;
  }

  get runs(): boolean {
    return this.step.kind === 'run';
  }

  /** What is asked now; in a class the page letters its options. */
  get prompt(): Prompt | null {
    const { step } = this;
    if (step.kind !== 'ask') return null;
    const id = `${this.demonstration.id}-${this.#now.step}`;
    return { kind: 'choice', id, question: step.question, options: step.options };
  }

  /** What is asked now as it is drawn in the water; null where it cannot be. */
  get foreseen(): Foreseen | null {
    return this.#foreseenAt(this.#now.step, this.#now.tick);
  }

  /** What was said before, with the lines that it was chosen from; null where nothing was, or nothing was drawn. */
  get said(): (ClassSaid & { readonly foreseen: Foreseen }) | null {
    const { said } = this.#memory;
    const foreseen = said && this.#foreseenAt(said.step, said.tick);
    return said && foreseen ? { ...said, foreseen } : null;
  }

  /** Locks what a class says to the question. @param hands that were counted for it */
  lock(id: string, hands: number): void {
    if (this.step.kind !== 'ask') return;
    this.#memory = { ...this.#memory, said: { step: this.#now.step, tick: this.#now.tick, id, hands } };
  }

  /** The one sentence on the stage. */
  get words(): string {
    const { step } = this;
    if (step.kind === 'ask') return this.demonstration.title;
    return step.words.replace(/\{(\w+)\}/g, (_, name: string) => this.#memory.words.get(name) ?? '…');
  }

  /** Asked after each change of the hands. @returns whether time goes on */
  goOn(): boolean {
    const { step } = this;
    // Whoever lets time go on where nothing runs wants the next step.
    if (step.kind !== 'run') return this.next() ? this.runs : true;
    if (!this.#arrived(step) && this.#seconds() < step.atMostS) return true;
    this.#over(step);
    this.next();
    return false;
  }

  /** The next step. @returns false after the last one */
  next(): boolean {
    const { step } = this;
    if (step.kind === 'run') this.#over(step);
    if (this.isLast) return false;
    this.#enter(this.#now.step + 1);
    return true;
  }

  /** A step back, the dive with it: a run is taken back whole. @returns false at the first one */
  previous(): boolean {
    if (this.#trail.length < 2) return false;
    this.#leave();
    while (this.runs && this.#trail.length > 1) this.#leave();
    const { flight, tick, memory } = this.#now;
    const since = tick - flight.dive.recording.startTick;
    flight.take(replay(flight.dive.run(), Math.max(0, since)));
    this.#memory = memory;
    return true;
  }

  /** The step that is left; who had gone back in the dive by it has it whole again. */
  #leave(): void {
    const { flight, left } = this.#trail.pop()!;
    if (left) flight.take(left);
  }

  get #now(): Entered {
    return this.#trail[this.#trail.length - 1]!;
  }

  /** Looked ahead once for each question: the dive may be far past it. */
  #foreseenAt(at: number, tick: number): Foreseen | null {
    const step = this.demonstration.steps[at];
    const run = this.demonstration.steps[at + 1];
    if (step?.kind !== 'ask' || run?.kind !== 'run') return null;
    const { flight, begun } = this.#now;
    const known = this.#foreseen;
    if (known?.flight === flight && known.at === at && known.tick === tick) return known.foreseen;
    const foreseen = foreseenRun(momentAt(flight.dive, tick), step, run, begun.neutralAtM);
    this.#foreseen = { flight, at, tick, foreseen };
    return foreseen;
  }

  #enter(at: number): void {
    const step = this.demonstration.steps[at]!;
    const { flight, begun } = step.kind === 'begin' ? this.#put(step) : this.#now;
    const left = step.kind === 'rewind' ? flight.dive : null;
    if (step.kind === 'rewind') flight.take(replay(flight.dive.run(), step.toS * TICKS_PER_S));
    if (step.kind === 'ask' || step.kind === 'begin') this.#memory = { ...this.#memory, said: null };
    if (step.kind === 'ask') {
      const row = flight.dive.recording.rows - 1;
      this.#memory = { ...this.#memory, asked: { step, row } };
      this.#keep('asked', speedWords(meanSpeedMps(flight.dive.recording, row)));
    }
    this.#trail.push({ step: at, flight, tick: flight.dive.tick, begun, memory: this.#memory, left });
  }

  #put(step: BeginStep): { readonly flight: Flight; readonly begun: BeginStep } {
    const rig = this.#rigs.get(step)!;
    const flight = new Flight(rig, shownStart(rig, step));
    const keepGas = (name: string | undefined, of: Rig | undefined) => {
      if (name && of && step.neutralAtM !== null)
        this.#keep(name, `${(neutralGasM3(of, step.neutralAtM) * 1e3).toFixed(1)} L`);
    };
    keepGas(step.keepGas, rig);
    keepGas(step.beside?.keepGas, this.#besideRigs.get(step));
    return { flight, begun: step };
  }

  #seconds(): number {
    return (this.flight.dive.tick - this.#now.tick) / TICKS_PER_S;
  }

  #arrived({ untilM }: Extract<ShowStep, { kind: 'run' }>): boolean {
    if (untilM === null) return false;
    const { recording, state } = this.flight.dive;
    const fromM = recording.at(Math.min(this.#entryRow(), recording.rows - 1), 'depthM');
    return (state.depthM - untilM) * (fromM - untilM) <= 0;
  }

  #entryRow(): number {
    const { flight, tick } = this.#now;
    return Math.floor((tick - flight.dive.recording.startTick) / TICKS_PER_ROW);
  }

  /** Takes from a run what is said of it. */
  #over(step: Extract<ShowStep, { kind: 'run' }>): void {
    const { rig, dive } = this.flight;
    const { recording, state } = dive;
    const { neutralAtM } = this.#now.begun;
    const tookS = this.#seconds();
    this.#keep('took', tookS.toFixed(0));
    this.#keep('depth', `${state.depthM.toFixed(1)} m`);
    this.#keep('off', `${Math.abs(state.depthM - (neutralAtM ?? this.#now.begun.atM)).toFixed(1)} m`);
    this.#keep('speed', speedWords(meanSpeedMps(recording, recording.rows - 1)));
    this.#keep('gas', `${(gasM3(rig, state.depthM, state.jacketMol) * 1e3).toFixed(1)} L`);
    const { beside } = this;
    const both = beside && step.untilM !== null ? comparedTo(beside, this.#entryRow(), step.untilM, tookS) : null;
    if (both) {
      this.#keep('first', both.firstS?.toFixed(0) ?? '–');
      this.#keep('second', both.secondS?.toFixed(0) ?? '–');
      this.#keep('apart', `${both.apartM.toFixed(1)} m`);
    }
    if (!this.#memory.asked) return;
    const { step: asked, row: askedRow } = this.#memory.asked;
    const over = { recording, askedRow, neutralAtM, firstS: both?.firstS ?? null, secondS: both?.secondS ?? null };
    const id = truthOfRun(asked.truth, over);
    const at = asked.options.findIndex((option) => option.id === id);
    this.#keep('right', at < 0 ? 'None of these' : LETTERS[at]!);
    this.#memory = { ...this.#memory, asked: null };
  }

  #keep(name: string, words: string): void {
    this.#memory = { ...this.#memory, words: new Map(this.#memory.words).set(name, words) };
  }
}

function speedWords(speedMps: number): string {
  return `${Math.abs(speedMps * 60).toFixed(0)} m/min`;
}
