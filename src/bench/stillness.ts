import Matter from 'matter-js';
import { speedOf, touching } from './engine.ts';
import type { Point } from './section.ts';

const { Sleeping } = Matter;

/**
 * What lies on something and moves less than this, m/s and rad/s, for so long, seconds, lies still until something is done to
 * it: the engine would let it tremble. Chosen.
 */
const STILL_MPS = 0.01;
const STILL_RADPS = 0.2;
const STILL_S = 0.4;
/** It is moved again when the surface has moved by this, metres. Chosen. */
const STIRRED_M = 2e-4;

/** What may come to lie still. */
export interface Stirred {
  body: Matter.Body;
  hookYM: number | null;
  hand: Point | null;
  /** How long it has hardly moved, seconds, and the surface when it came to lie still. */
  stillS: number;
  stillYM: number;
}

/** Something was done to a thing: it moves again. */
export function stir(one: Stirred): void {
  Sleeping.set(one.body, false);
  one.stillS = 0;
}

/** Whether a thing lies still; a surface that has moved stirs it. */
export function liesStill({ body, stillYM }: Stirred, surface: number): boolean {
  if (body.isSleeping && Math.abs(surface - stillYM) > STIRRED_M) Sleeping.set(body, false);
  return body.isSleeping;
}

/** Puts to rest what has lain on something long enough, after a step of so many seconds. */
export function lieStill(engine: Matter.Engine, all: readonly Stirred[], surface: number, stepS: number): void {
  const lies = touching(engine);
  for (const one of all) {
    const { x, y, turn } = speedOf(one.body);
    const isStill = Math.hypot(x, y) < STILL_MPS && Math.abs(turn) < STILL_RADPS;
    const may = isStill && lies.has(one.body) && one.hand === null && one.hookYM === null;
    one.stillS = may ? one.stillS + stepS : 0;
    if (one.stillS < STILL_S || one.body.isSleeping) continue;
    Sleeping.set(one.body, true);
    one.stillYM = surface;
  }
}
