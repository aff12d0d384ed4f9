import Matter from 'matter-js';
import { bodyOf, engineOf, pointOf, push, putAt, slowTo, speedOf } from './engine.ts';
import { actingOn, pullOfBalanceN, type BenchWater } from './forces.ts';
import { energyOf, placedOf, whereIs, type InTank, type Placed } from './placed.ts';
import { areaOf, below, type Point } from './section.ts';
import { soakedM2 } from './soaked.ts';
import { lieStill, liesStill, stir, type Stirred } from './stillness.ts';
import { runOver, surfaceYM, type Tank } from './tank.ts';
import { thingOf, type ThingSpec } from './thing.ts';

const { Body, Composite, Engine } = Matter;

/** Steps a second: at 60 the engine would be 8 cm off after a second of free fall, at 240 two. */
export const STEPS_PER_S = 240;
const STEP_S = 1 / STEPS_PER_S;
const STEP_MS = 1000 * STEP_S;
/** Faster than this nothing goes, m/s: a thrown thing must not pass a wall between two steps. */
const FASTEST_MPS = 4;
/** Room above the lip that belongs to the bench, and the least way from a wall to a centre of mass, metres. */
export const AIR_M = 0.45;
const EDGE_M = 0.005;

/** A thing in the tank, with what hands and water do to it. */
interface Held extends InTank, Stirred {
  /** Mass of what it displaced a step ago. */
  displacedKg: number;
}

/**
 * Things in a tank of water, moved by matter-js under true forces. For the eye and for rest: draughts of floating things and
 * readings of the balance are held to closed forms.
 */
export class Bench {
  readonly #engine: Matter.Engine;
  readonly #held: Held[] = [];
  #tank: Tank;
  #water: BenchWater;
  #nextId = 1;

  constructor(tank: Tank, water: BenchWater) {
    this.#tank = tank;
    this.#water = water;
    this.#engine = engineOf(tank.widthM, tank.heightM, AIR_M);
  }

  get tank(): Tank {
    return this.#tank;
  }

  get water(): BenchWater {
    return this.#water;
  }

  set water(water: BenchWater) {
    this.#water = water;
    this.#wakeAll();
  }

  /** Depth of the surface below the lip, metres. */
  get surfaceYM(): number {
    return surfaceYM(this.#outside(), this.#hulls());
  }

  /** Fills the tank up to a depth below its lip. */
  fillTo(yM: number): void {
    const { widthM, heightM } = this.#tank;
    const displacedM2 = this.#held.reduce((sum, { hull }) => sum + areaOf(below(hull, yM)).areaM2, 0);
    const soaked = this.#held.reduce((sum, { waterM2 }) => sum + waterM2, 0);
    this.#tank = { ...this.#tank, waterM2: Math.max(0, widthM * (heightM - yM) - displacedM2) + soaked };
    this.#wakeAll();
  }

  /** Opens the spout at a depth below the lip, or shuts it; the glass is emptied. */
  spout(yM: number | null): void {
    this.#tank = { ...this.#tank, spoutYM: yM, glassM2: 0 };
  }

  /** Puts a thing in, its centre of mass at a point. @returns its number @throws {RangeError} as `thingOf` does */
  add(spec: ThingSpec, at: Point): number {
    const thing = thingOf(spec);
    const id = this.#nextId++;
    const body = bodyOf(thing, this.#inside(at), 0);
    const still = { stillS: 0, stillYM: 0 };
    this.#held.push({ body, id, thing, hull: [], waterM2: 0, displacedKg: 0, hookYM: null, hand: null, ...still });
    Composite.add(this.#engine.world, body);
    this.#wakeAll();
    return id;
  }

  /** Makes another thing of one that is there; it stays where it is and stops. @throws {RangeError} as `thingOf` does, and for no such thing */
  change(id: number, spec: ThingSpec): void {
    const one = this.#one(id);
    const thing = thingOf(spec);
    const body = bodyOf(thing, pointOf(one.body), one.body.angle);
    Composite.remove(this.#engine.world, one.body);
    Composite.add(this.#engine.world, body);
    const mostM2 = thing.hollow.length > 0 ? areaOf(thing.hollow).areaM2 : 0;
    Object.assign(one, { body, thing, waterM2: Math.min(one.waterM2, mostM2) });
    this.#wakeAll();
  }

  /** @throws {RangeError} where there is no such thing */
  remove(id: number): void {
    const one = this.#one(id);
    Composite.remove(this.#engine.world, one.body);
    this.#held.splice(this.#held.indexOf(one), 1);
    this.#wakeAll();
  }

  /** A hand pulls a thing towards a point, or lets it go. @throws {RangeError} where there is no such thing */
  pull(id: number, towards: Point | null): void {
    this.#one(id).hand = towards && this.#inside(towards);
    this.#wakeAll();
  }

  /** Puts a thing somewhere at rest, its hollow dry. @throws {RangeError} where there is no such thing */
  place(id: number, at: Point, angleRad = 0): void {
    const one = this.#one(id);
    Body.setAngle(one.body, angleRad);
    putAt(one.body, this.#inside(at));
    Object.assign(one, { waterM2: 0, displacedKg: 0 });
    this.#wakeAll();
  }

  /** Hangs a thing on the spring balance, whose hook without load is at a depth; null takes it off. */
  hang(id: number, hookYM: number | null): void {
    this.#one(id).hookYM = hookYM;
    this.#wakeAll();
  }

  /** Moves everything on by so many steps of 1/240 s. */
  step(steps = 1): void {
    for (let i = 0; i < steps; i++) {
      this.#runOver();
      const surface = this.surfaceYM;
      for (const one of this.#held) this.#act(one, surface);
      Engine.update(this.#engine, STEP_MS);
      lieStill(this.#engine, this.#held, surface, STEP_S);
      for (const { body } of this.#held) {
        slowTo(body, FASTEST_MPS);
        const at = pointOf(body);
        const inside = this.#inside(at);
        // Whoever was squeezed through a wall comes back.
        if (inside.xM !== at.xM || inside.yM !== at.yM) putAt(body, inside);
      }
      this.#putHulls();
    }
  }

  /** Everything as it is now. */
  view(): Placed[] {
    const surface = this.surfaceYM;
    return this.#held.map((one) => placedOf(one, surface, this.#water));
  }

  /** Mechanical energy of things and water, joules, against everything at the lip: hands and the balance apart it only falls. */
  energyJ(): number {
    return energyOf(this.#held, this.#tank, this.#water, this.surfaceYM);
  }

  #one(id: number): Held {
    const one = this.#held.find((held) => held.id === id);
    if (!one) throw new RangeError(`Bench: there is no thing ${id}`);
    return one;
  }

  /** The tank without the water that stands in hollows. */
  #outside(): Tank {
    const soaked = this.#held.reduce((sum, { waterM2 }) => sum + waterM2, 0);
    return { ...this.#tank, waterM2: this.#tank.waterM2 - soaked };
  }

  #runOver(): void {
    const outside = this.#outside();
    const after = runOver(outside, this.#hulls(), STEP_S);
    if (after !== outside) this.#tank = { ...after, waterM2: this.#tank.waterM2 + after.waterM2 - outside.waterM2 };
  }

  #hulls(): (readonly Point[])[] {
    return this.#held.map(({ hull }) => hull);
  }

  #putHulls(): void {
    for (const one of this.#held) if (!one.body.isSleeping) one.hull = whereIs(one.body, one.thing.hull);
  }

  #act(one: Held, surface: number): void {
    const { body, thing, hull, hookYM, hand } = one;
    if (liesStill(one, surface)) return;
    const { gravityMps2 } = this.#water;
    const at = pointOf(body);
    const hollow = whereIs(body, thing.hollow);
    if (hollow.length > 0) one.waterM2 = soakedM2(hollow, one.waterM2, surface, gravityMps2, STEP_S);
    const balanceN = hookYM === null ? null : pullOfBalanceN(thing, at, hookYM, gravityMps2);
    const { waterM2, displacedKg } = one;
    const moving = { thing, at, speed: speedOf(body), hull, hollow, waterM2, displacedKg, balanceN, hand };
    const acting = actingOn(moving, this.#water, surface, STEP_S);
    one.displacedKg = acting.displacedKg;
    // The engine divides by the body's own mass; what moves along with it must be moved too.
    const yields = thing.massKg / acting.movedKg;
    push(body, acting.rightN * yields, acting.downN * yields, acting.turnNm * yields);
  }

  #wakeAll(): void {
    for (const one of this.#held) stir(one);
    this.#putHulls();
  }

  #inside({ xM, yM }: Point): Point {
    const { widthM, heightM } = this.#tank;
    const clamp = (value: number, least: number, most: number) => (value >= least ? Math.min(value, most) : least);
    return { xM: clamp(xM, EDGE_M, widthM - EDGE_M), yM: clamp(yM, EDGE_M - AIR_M, heightM - EDGE_M) };
  }
}
