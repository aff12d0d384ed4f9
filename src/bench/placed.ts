import type Matter from 'matter-js';
import { pointOf, speedOf } from './engine.ts';
import { ADDED, pullOfBalanceN, type BenchWater } from './forces.ts';
import { areaOf, below, placed, type Point } from './section.ts';
import { waterIn } from './soaked.ts';
import type { Tank } from './tank.ts';
import { LENGTH_M, type Thing } from './thing.ts';

/** A thing that is in the tank, and its body of the engine. */
export interface InTank {
  body: Matter.Body;
  readonly id: number;
  thing: Thing;
  /** Its hull where it is. */
  hull: readonly Point[];
  /** Section of the water in its hollow. */
  waterM2: number;
  hookYM: number | null;
}

/** A thing in the tank as it is now. */
export interface Placed {
  readonly id: number;
  readonly thing: Thing;
  readonly at: Point;
  readonly angleRad: number;
  readonly speedMps: number;
  /** The part of it that goes down, m/s. */
  readonly downMps: number;
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

/** An outline of a thing where its body is. */
export function whereIs(body: Matter.Body, outline: readonly Point[]): Point[] {
  return placed(outline, body.angle, pointOf(body));
}

/** Everything about a thing in the tank that is shown or read. */
export function placedOf(
  { id, body, thing, hull, waterM2, hookYM }: InTank,
  surface: number,
  water: BenchWater,
): Placed {
  const { densityKgPerM3: rho, gravityMps2: g } = water;
  const at = pointOf(body);
  const displaced = below(hull, surface);
  const wet = areaOf(displaced);
  const hollow = whereIs(body, thing.hollow);
  const rimYM = hollow.length > 0 ? Math.max(hollow[0]!.yM, hollow.at(-1)!.yM) : Math.min(...hull.map((p) => p.yM));
  const { x, y } = body.isSleeping ? { x: 0, y: 0 } : speedOf(body);
  return {
    id,
    thing,
    at,
    angleRad: body.angle,
    speedMps: Math.hypot(x, y),
    downMps: y,
    solid: whereIs(body, thing.solid),
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

/** Mechanical energy of things and of the water of a tank, joules, against everything at its lip. */
export function energyOf(all: readonly InTank[], tank: Tank, water: BenchWater, surface: number): number {
  const { densityKgPerM3: rho, gravityMps2: g } = water;
  const { widthM, heightM } = tank;
  let joules = -rho * g * LENGTH_M * (heightM - surface) * widthM * ((heightM + surface) / 2);
  for (const { body, thing, hull, waterM2 } of all) {
    const displaced = areaOf(below(hull, surface));
    joules += rho * g * LENGTH_M * displaced.areaM2 * displaced.yM - thing.massKg * g * pointOf(body).yM;
    if (waterM2 > 0) {
      const soaked = waterIn(whereIs(body, thing.hollow), waterM2);
      joules -= rho * g * LENGTH_M * soaked.areaM2 * soaked.yM;
    }
    const { x, y, turn } = speedOf(body);
    const movedKg = thing.massKg + (waterM2 + ADDED * displaced.areaM2) * rho * LENGTH_M;
    joules += 0.5 * movedKg * (x * x + y * y + (thing.inertiaKgM2 / thing.massKg) * turn * turn);
  }
  return joules;
}
