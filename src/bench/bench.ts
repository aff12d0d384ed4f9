import Matter from 'matter-js';
import { bodyOf, engineOf, pointOf, push, putAt, slowTo, speedOf, touching } from './engine.ts';
import { ADDED, actingOn, pullOfBalanceN, type BenchWater } from './forces.ts';
import { areaOf, below, placed, type Point } from './section.ts';
import { soakedM2, waterIn } from './soaked.ts';
import { runOver, surfaceYM, type Tank } from './tank.ts';
import { LENGTH_M, thingOf, type Thing, type ThingSpec } from './thing.ts';

const { Body, Composite, Engine, Sleeping } = Matter;

/** Steps a second: at 60 the engine would be 8 cm off after a second of free fall, at 240 two. */
export const STEPS_PER_S = 240;
const STEP_S = 1 / STEPS_PER_S;
const STEP_MS = 1000 * STEP_S;
/** Faster than this nothing goes, m/s: a thrown thing must not pass a wall between two steps. */
const FASTEST_MPS = 4;
/**
 * What lies on something and moves less than this, m/s and rad/s, for so long, seconds, lies still until something is done to
 * it: the engine would let it tremble. Chosen.
 */
const STILL_MPS = 0.01;
const STILL_RADPS = 0.2;
const STILL_S = 0.4;
/** It is moved again when the surface has moved by this, metres. Chosen. */
const STIRRED_M = 2e-4;
/** Room above the lip that belongs to the bench, and the least way from a wall to a centre of mass, metres. */
export const AIR_M = 0.45;
const EDGE_M = 0.005;

/** A thing in the tank as it is now. */
export interface Placed {
  readonly id: number;
  readonly thing: Thing;
  readonly at: Point;
  readonly angleRad: number;
  readonly speedMps: number;
  /** Its outline where it is, the displaced water, and the water in its hollow; empty where there is none. */
  readonly solid: readonly Point[];
  readonly displaced: readonly Point[];
  readonly soaked: readonly Point[];
  /** Weight of the thing and of the water in it, down; buoyant force, up; pull of the balance, up: newtons. */
  readonly weightN: number;
  /** Of the weight that of the water in it. */
  readonly soakedN: number;
  readonly buoyantN: number;
  readonly balanceN: number;
  /** Centre of the displaced water; where the thing is dry, its own. */
  readonly buoyancyAt: Point;
  readonly submergedM3: number;
  /** How far its lowest point lies below the surface, and its lower rim, or its top, above it, metres. */
  readonly draughtM: number;
  readonly freeboardM: number;
}

interface Held {
  body: Matter.Body;
  readonly id: number;
  thing: Thing;
  /** Its hull where it is. */
  hull: readonly Point[];
  /** Section of the water in its hollow, and mass of what it displaced a step ago. */
  waterM2: number;
  displacedKg: number;
  hookYM: number | null;
  hand: Point | null;
  /** How long it has hardly moved, seconds, and the surface when it came to lie still. */
  stillS: number;
  stillYM: number;
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
      this.#lieStill(surface);
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
    return this.#held.map((one) => this.#placed(one, surface));
  }

  /** Mechanical energy of things and water, joules, against everything at the lip: hands and the balance apart it only falls. */
  energyJ(): number {
    const { densityKgPerM3: rho, gravityMps2: g } = this.#water;
    const { widthM, heightM } = this.#tank;
    const surface = this.surfaceYM;
    let joules = -rho * g * LENGTH_M * (heightM - surface) * widthM * ((heightM + surface) / 2);
    for (const { body, thing, hull, waterM2 } of this.#held) {
      const displaced = areaOf(below(hull, surface));
      joules += rho * g * LENGTH_M * displaced.areaM2 * displaced.yM - thing.massKg * g * pointOf(body).yM;
      if (waterM2 > 0) {
        const soaked = waterIn(this.#where(body, thing.hollow), waterM2);
        joules -= rho * g * LENGTH_M * soaked.areaM2 * soaked.yM;
      }
      const { x, y, turn } = speedOf(body);
      const movedKg = thing.massKg + (waterM2 + ADDED * displaced.areaM2) * rho * LENGTH_M;
      joules += 0.5 * movedKg * (x * x + y * y + (thing.inertiaKgM2 / thing.massKg) * turn * turn);
    }
    return joules;
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
    for (const one of this.#held) if (!one.body.isSleeping) one.hull = this.#where(one.body, one.thing.hull);
  }

  #where(body: Matter.Body, outline: readonly Point[]): Point[] {
    return placed(outline, body.angle, pointOf(body));
  }

  #act(one: Held, surface: number): void {
    const { body, thing, hull, hookYM, hand } = one;
    if (body.isSleeping && Math.abs(surface - one.stillYM) > STIRRED_M) Sleeping.set(body, false);
    if (body.isSleeping) return;
    const { gravityMps2 } = this.#water;
    const at = pointOf(body);
    const hollow = this.#where(body, thing.hollow);
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
    for (const one of this.#held) {
      Sleeping.set(one.body, false);
      one.stillS = 0;
    }
    this.#putHulls();
  }

  #lieStill(surface: number): void {
    const lies = touching(this.#engine);
    for (const one of this.#held) {
      const { x, y, turn } = speedOf(one.body);
      const isStill = Math.hypot(x, y) < STILL_MPS && Math.abs(turn) < STILL_RADPS;
      const may = isStill && lies.has(one.body) && one.hand === null && one.hookYM === null;
      one.stillS = may ? one.stillS + STEP_S : 0;
      if (one.stillS < STILL_S || one.body.isSleeping) continue;
      Sleeping.set(one.body, true);
      one.stillYM = surface;
    }
  }

  #inside({ xM, yM }: Point): Point {
    const { widthM, heightM } = this.#tank;
    const clamp = (value: number, least: number, most: number) => (value >= least ? Math.min(value, most) : least);
    return { xM: clamp(xM, EDGE_M, widthM - EDGE_M), yM: clamp(yM, EDGE_M - AIR_M, heightM - EDGE_M) };
  }

  #placed({ id, body, thing, hull, waterM2, hookYM }: Held, surface: number): Placed {
    const { densityKgPerM3: rho, gravityMps2: g } = this.#water;
    const at = pointOf(body);
    const displaced = below(hull, surface);
    const wet = areaOf(displaced);
    const hollow = this.#where(body, thing.hollow);
    const rimYM = hollow.length > 0 ? Math.max(hollow[0]!.yM, hollow.at(-1)!.yM) : Math.min(...hull.map((p) => p.yM));
    const { x, y } = speedOf(body);
    return {
      id,
      thing,
      at,
      angleRad: body.angle,
      speedMps: body.isSleeping ? 0 : Math.hypot(x, y),
      solid: this.#where(body, thing.solid),
      displaced,
      soaked: waterM2 > 0 ? below(hollow, waterIn(hollow, waterM2).surfaceYM) : [],
      weightN: (thing.massKg + rho * waterM2 * LENGTH_M) * g,
      soakedN: rho * waterM2 * LENGTH_M * g,
      buoyantN: rho * wet.areaM2 * LENGTH_M * g,
      balanceN: hookYM === null ? 0 : pullOfBalanceN(thing, at, hookYM, g),
      buoyancyAt: displaced.length > 0 ? { xM: wet.xM, yM: wet.yM } : at,
      submergedM3: wet.areaM2 * LENGTH_M,
      draughtM: Math.max(0, Math.max(...hull.map((p) => p.yM)) - surface),
      freeboardM: surface - rimYM,
    };
  }
}
