import { HEAD_OUT_M, lungMol, type Rig } from '../diver/index.ts';
import { copyState, solidSums, supplyPa, type Controls, type DiveState } from '../dive/index.ts';
import { waterAt, type WaterAt } from '../water/index.ts';
import { bodyAhead, type BodyAhead } from './body-ahead.ts';
import { drifts } from './drift.ts';
import { piecesOf, type Pieces } from './drift-water.ts';
import { MEANS, releasableMask, type Means, type Way } from './means.ts';
import { attemptOf, groundM, USUAL_STEPS, tryOut, type Attempt, type StoppingAsk } from './attempt.ts';

/**
 * From which depths one means recovers one way, everything but the depth being as it is: whether it does so at the top, and
 * the depths at which that changes.
 */
export interface Switches {
  readonly worksAtTop: boolean;
  readonly atM: readonly number[];
}

/** One means one way. */
export interface Case {
  readonly means: Means;
  readonly way: Way;
}

/** All means both ways; letting lead go is none for who rises. */
export const CASES: readonly Case[] = ([1, -1] as const).flatMap((way) =>
  MEANS.filter((means) => means !== 'lead' || way > 0).map((means) => ({ means, way })),
);

/** A boundary is found to within this, metres, and one that was reckoned holds if it lies within that. */
const FOUND_M = 0.008;
export const HELD_M = 0.025;
/** Rows looked at first, metres apart, where what works above and below need not work between: in layers, and for a limit of speed. */
const ROW_M = 1;
const CONFIRMED_M = 4;
/** So far below the top no limb leaves the water any more, metres. */
const SURFACE_M = 1;
/** The first row under the top, metres: who is half out already may still turn. */
const CLOSE_M = 0.15;
/** So far below the last layer's beginning nobody who sinks was lifted into it before, metres. */
const PASSED_M = 3;
/** First stride with which a boundary that lies elsewhere is followed, metres. */
const FIRST_STRIDE_M = 0.15;
/** Cylinders that give this much over the pressure at the floor give it all the time, pascals. */
const AMPLE_PA = 15e5;

const water: WaterAt = { densityKgPerM3: NaN, pressurePa: NaN };

/** What is the same for a state much like another. */
export interface Known {
  readonly attempts: readonly Attempt[];
  readonly bodies: Bodies;
}

/** All cases made ready. */
export function attemptsOf(rig: Rig, controls: Controls, ask: StoppingAsk): Attempt[] {
  return CASES.map(({ means, way }) => attemptOf(means, way, rig, controls, ask));
}

/** Finds from which depths means recover, for one state of a rig carried to other depths: same gas, speed, breath and attitude. */
export class Recovery {
  readonly topM: number;
  readonly bottomM: number;
  /** Whether a depth was passed over when switches were looked for the last time: they may be others where nothing depends on them. */
  passedOver = false;
  readonly #rig: Rig;
  readonly #from: DiveState;
  readonly #scratch: DiveState;
  readonly #attempts: readonly Attempt[];
  readonly #bodies: Bodies | null;
  readonly #leadless: { readonly solidKg: number; readonly solidM3: number };
  readonly #supplyPa: number;

  /** @param known makes it many times faster, for a map; left out, each depth is tried out like a stopping forecast */
  constructor(rig: Rig, state: Readonly<DiveState>, controls: Controls, ask: StoppingAsk, known?: Known) {
    this.#rig = rig;
    this.#from = copyState(state);
    // The rig may be one with more lead, or less, than the state was of.
    Object.assign(this.#from, solidSums(rig, state.releasedMask));
    this.#from.resting = 0;
    this.#from.calmUntil = 0;
    this.#scratch = copyState(state);
    this.#attempts = known?.attempts ?? attemptsOf(rig, controls, ask);
    this.topM = HEAD_OUT_M;
    this.bottomM = groundM(rig, state, controls, ask);
    this.#supplyPa = supplyPa(rig, state.cylinderMol);
    this.#leadless = solidSums(rig, state.releasedMask | releasableMask(rig));
    const floorPa = waterAt(rig.column, this.bottomM, water).pressurePa;
    const isOrdinary = controls.breath !== 2 && this.#supplyPa > floorPa + AMPLE_PA;
    this.#bodies = known && isOrdinary ? known.bodies : null;
  }

  /** Whether a case recovers from a depth. */
  works(which: number, depthM: number): boolean {
    const s = this.#from;
    s.depthM = depthM;
    if (this.#rig.lungs.open)
      s.lungMol = lungMol(this.#rig, s.lungM3, waterAt(this.#rig.column, depthM, water).pressurePa);
    const attempt = this.#attempts[which]!;
    if (this.#bodies)
      return drifts(
        this.#rig,
        s,
        attempt,
        this.#bodies.of(attempt),
        this.#bodies.pieces,
        this.#leadless,
        this.#supplyPa,
      );
    return tryOut(this.#rig, s, attempt, this.#scratch, USUAL_STEPS).stops;
  }

  /** Whether a case can change only once from under the surface to the ground: deeper never lifts, and nothing else counts. */
  isMonotone(which: number): boolean {
    return this.#rig.column.segments.length === 1 && this.#attempts[which]!.floor.kind !== 'rate';
  }

  /**
   * All switches of a case, looked for from nothing.
   * @param needless at which depths nothing depends on it: there it may come out otherwise
   * @param guess where switches are reckoned to be
   */
  find(which: number, needless: Needless = never, guess: Switches | null = null): Switches {
    this.passedOver = false;
    const worksAtTop = this.works(which, this.topM);
    const atM: number[] = [];
    let works = worksAtTop;
    let aboveM = this.topM;
    const scannedM = this.#scannedM(which);
    for (const depthM of this.#rows(which, ROW_M)) {
      if (depthM < scannedM && this.#passes(needless, depthM, ROW_M)) continue;
      if (this.works(which, depthM) !== works) {
        const nears = guess?.atM.filter((nearM) => nearM > aboveM && nearM < depthM);
        const near = nears?.length === 1 ? this.#near(which, nears[0]!, works, aboveM, depthM) : null;
        atM.push(near ?? this.#between(which, aboveM, depthM, works));
        works = !works;
      }
      aboveM = depthM;
    }
    return { worksAtTop, atM };
  }

  /** Depths under the top to be looked at: the ground, and one below where the surface counts; all the way in steps where needed. */
  #rows(which: number, everyM: number): number[] {
    const deepM = this.bottomM - this.topM;
    if (this.isMonotone(which)) return deepM > SURFACE_M ? [this.topM + SURFACE_M, this.bottomM] : [this.bottomM];
    const scannedM = this.#scannedM(which);
    const count = Math.max(1, Math.ceil((scannedM - this.topM) / everyM));
    const rows = Array.from({ length: count }, (_, i) => this.topM + ((scannedM - this.topM) * (i + 1)) / count);
    if (scannedM < this.bottomM) rows.push(this.bottomM);
    return deepM > SURFACE_M ? [this.topM + CLOSE_M, ...rows] : rows;
  }

  /** Depth from which on a case can change only once: who sinks there sinks in water of one density. */
  #scannedM(which: number): number {
    if (this.isMonotone(which)) return this.topM;
    const { way, floor } = this.#attempts[which]!;
    const lastM = this.#rig.column.segments.at(-1)!.fromM + PASSED_M;
    return way > 0 && floor.kind !== 'rate' ? Math.min(Math.max(lastM, this.topM), this.bottomM) : this.bottomM;
  }

  /**
   * The switches of a case near where they are reckoned to be, the reckoned ones themselves where they hold; null where there
   * are others, so that they must be looked for from nothing.
   * @param needless at which depths nothing depends on it: a guess without switches is not looked at there
   */
  confirm(which: number, guess: Switches, needless: Needless = never): Switches | null {
    this.passedOver = false;
    let works = guess.worksAtTop;
    const atM: number[] = [];
    for (const near of guess.atM) {
      const found = this.#near(which, near, works);
      if (found === null) return null;
      atM.push(found);
      works = !works;
    }
    if (atM.length > 0) return { worksAtTop: guess.worksAtTop, atM };
    if (this.works(which, this.topM) !== works) return null;
    const scannedM = this.#scannedM(which);
    for (const depthM of this.#rows(which, CONFIRMED_M))
      if (!(depthM < scannedM && this.#passes(needless, depthM, CONFIRMED_M)) && this.works(which, depthM) !== works)
        return null;
    return guess;
  }

  /** Whether nothing depends on a case around a depth. */
  #passes(needless: Needless, depthM: number, withinM: number): boolean {
    const passes = needless(depthM) && needless(depthM - withinM) && needless(depthM + withinM);
    if (passes) this.passedOver = true;
    return passes;
  }

  #near(which: number, depthM: number, worksAbove: boolean, topM = this.topM, bottomM = this.bottomM): number | null {
    if (!(depthM > topM && depthM < bottomM)) return null;
    let above = Math.max(depthM - HELD_M, topM);
    let below = Math.min(depthM + HELD_M, bottomM);
    const holdsAbove = this.works(which, above) === worksAbove;
    const holdsBelow = this.works(which, below) !== worksAbove;
    if (holdsAbove && holdsBelow) return depthM;
    if (!holdsAbove && !holdsBelow) return null;
    for (let step = FIRST_STRIDE_M; ; step *= 3) {
      if (!holdsAbove) {
        if (above <= topM) return null;
        below = above;
        above = Math.max(above - step, topM);
        if (this.works(which, above) === worksAbove) break;
      } else {
        if (below >= bottomM) return null;
        above = below;
        below = Math.min(below + step, bottomM);
        if (this.works(which, below) !== worksAbove) break;
      }
    }
    return this.#between(which, above, below, worksAbove);
  }

  #between(which: number, fromM: number, toM: number, worksAbove: boolean): number {
    let above = fromM;
    let below = toM;
    while (below - above > 2 * FOUND_M) {
      const middle = (above + below) / 2;
      if (this.works(which, middle) === worksAbove) above = middle;
      else below = middle;
    }
    return (above + below) / 2;
  }
}

/** What bodies do from one state, one recording for all cases that do the same. */
export class Bodies {
  /** The water that they are in. */
  readonly pieces: Pieces;
  readonly #rig: Rig;
  readonly #state: Readonly<DiveState>;
  readonly #scratch: DiveState;
  readonly #known = new Map<string, BodyAhead>();
  readonly #of = new Map<Attempt, BodyAhead>();

  constructor(rig: Rig, state: Readonly<DiveState>) {
    this.#rig = rig;
    this.#state = copyState(state);
    this.#scratch = copyState(state);
    this.pieces = piecesOf(rig.column);
  }

  of(attempt: Attempt): BodyAhead {
    let body = this.#of.get(attempt);
    if (!body) this.#of.set(attempt, (body = this.#recorded(attempt)));
    return body;
  }

  #recorded(attempt: Attempt): BodyAhead {
    const { breath, fins } = attempt.uses;
    const { pitchDeg } = attempt.action(this.#state);
    const key = `${breath ? attempt.way : 0} ${fins ? attempt.way : 0} ${pitchDeg}`;
    let body = this.#known.get(key);
    if (!body) this.#known.set(key, (body = bodyAhead(this.#rig, this.#state, attempt, this.#scratch)));
    return body;
  }
}

/** Whether nothing depends on a case at a depth. */
export type Needless = (depthM: number) => boolean;

const never: Needless = () => false;

/** Whether a case recovers from a depth, by its switches. */
export function worksAt({ worksAtTop, atM }: Switches, depthM: number): boolean {
  let works = worksAtTop;
  for (let i = 0; i < atM.length; i++) if (atM[i]! < depthM) works = !works;
  return works;
}
