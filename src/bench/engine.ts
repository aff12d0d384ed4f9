import Matter from 'matter-js';
import { areaOf, type Point } from './section.ts';
import type { Thing } from './thing.ts';

const { Bodies, Body, Composite, Engine, Vertices } = Matter;

/** The engine counts in millimetres and milliseconds: numbers it was tuned for. */
const PX_PER_M = 1000;
/** Force that gives 1 kg an acceleration of 1 m/s², in the engine's units: mm/ms². */
const FORCE = PX_PER_M * 1e-6;
/** The engine's speeds are per 1/60 s. */
const PER_S = 60;
/** Walls are so thick, metres. */
const WALL_M = 0.5;

/** How fast a body goes: m/s to the right and downward, rad/s clockwise. */
export interface Speed {
  readonly x: number;
  readonly y: number;
  readonly turn: number;
}

/** An engine with the walls of a tank and a lid some way above its lip; it pulls nothing down by itself. */
export function engineOf(widthM: number, heightM: number, airM: number): Matter.Engine {
  const engine = Engine.create({
    enableSleeping: true,
    gravity: { x: 0, y: 0, scale: 0 },
    positionIterations: 10,
    velocityIterations: 8,
  });
  const wall = (x: number, y: number, wide: number, high: number) =>
    Bodies.rectangle(x * PX_PER_M, y * PX_PER_M, wide * PX_PER_M, high * PX_PER_M, { isStatic: true, friction: 0.4 });
  const tall = heightM + airM + 2 * WALL_M;
  const middle = (heightM - airM) / 2;
  Composite.add(engine.world, [
    wall(widthM / 2, heightM + WALL_M / 2, widthM + 2 * WALL_M, WALL_M),
    wall(-WALL_M / 2, middle, WALL_M, tall),
    wall(widthM + WALL_M / 2, middle, WALL_M, tall),
    wall(widthM / 2, -airM - WALL_M / 2, widthM + 2 * WALL_M, WALL_M),
  ]);
  return engine;
}

/** A body of the engine, compound where a thing has a hollow: its own mass, its own centre, whatever the pieces weigh. */
export function bodyOf(thing: Thing, at: Point, angleRad: number): Matter.Body {
  const options = { friction: 0.3, frictionAir: 0, restitution: 0.05, slop: 0.05, sleepThreshold: Infinity };
  const parts = thing.pieces.map((piece) => {
    const { xM, yM } = areaOf(piece);
    // Pieces are convex as they are made. The engine's own way in would look again, and take a flat top that is off by a rounding for
    // a concave one.
    return Body.create({
      ...options,
      position: { x: xM * PX_PER_M, y: yM * PX_PER_M },
      vertices: Vertices.clockwiseSort(piece.map((at) => ({ x: at.xM * PX_PER_M, y: at.yM * PX_PER_M }))),
    });
  });
  const body = parts.length === 1 ? parts[0]! : Body.create({ parts, ...options });
  // The engine's centre is that of the pieces; ours is the origin of the outlines.
  Body.setCentre(body, { x: 0, y: 0 }, false);
  Body.setMass(body, thing.massKg);
  Body.setInertia(body, thing.inertiaKgM2 * PX_PER_M * PX_PER_M);
  Body.setAngle(body, angleRad);
  putAt(body, at);
  return body;
}

/** Where a body's centre of mass is. */
export function pointOf(body: Matter.Body): Point {
  return { xM: body.position.x / PX_PER_M, yM: body.position.y / PX_PER_M };
}

/** Puts a body somewhere, at rest. */
export function putAt(body: Matter.Body, { xM, yM }: Point): void {
  Body.setPosition(body, { x: xM * PX_PER_M, y: yM * PX_PER_M });
  Body.setVelocity(body, { x: 0, y: 0 });
  Body.setAngularVelocity(body, 0);
}

/** How fast a body goes. */
export function speedOf(body: Matter.Body): Speed {
  const v = Body.getVelocity(body);
  return { x: (v.x * PER_S) / PX_PER_M, y: (v.y * PER_S) / PX_PER_M, turn: Body.getAngularVelocity(body) * PER_S };
}

/** Slows a body down to a speed, m/s; what is no number any more stops. */
export function slowTo(body: Matter.Body, mostMps: number): void {
  const { x, y } = speedOf(body);
  const speed = Math.hypot(x, y);
  if (speed <= mostMps) return;
  const share = Number.isFinite(speed) ? mostMps / speed : 0;
  Body.setVelocity(body, share > 0 ? { x: body.velocity.x * share, y: body.velocity.y * share } : { x: 0, y: 0 });
}

/** Pushes a body for the next step: newtons to the right and downward, newton metres clockwise. */
export function push(body: Matter.Body, rightN: number, downN: number, turnNm: number): void {
  body.force.x += rightN * FORCE;
  body.force.y += downN * FORCE;
  body.torque += turnNm * FORCE * PX_PER_M;
}

/** All bodies that touch another, or a wall. */
export function touching(engine: Matter.Engine): Set<Matter.Body> {
  const found = new Set<Matter.Body>();
  for (const { isActive, bodyA, bodyB } of engine.pairs.list) {
    if (!isActive) continue;
    found.add(bodyA.parent);
    found.add(bodyB.parent);
  }
  return found;
}
