import { createRequire } from 'node:module';

/** y′ at (x, y). */
export type Derivative = (x: number, y: number[]) => number[];

/** What is used here of the adaptive extrapolation solver (Hairer & Wanner's ODEX). */
interface Odex {
  absoluteTolerance: number;
  relativeTolerance: number;
  initialStepSize: number;
  denseOutput: boolean;
  maxSteps: number;
  solve(
    derivative: Derivative,
    from: number,
    y: number[],
    to: number,
    seen?: (n: number, xOld: number, x: number, y: number[], dense: (component: number, x: number) => number) => void,
  ): { readonly y: number[]; readonly outcome: number };
}

// Required by name: the package ships its source beside what it runs, and the compiler would check that source by our rules.
const require = createRequire(import.meta.url);
const { Solver } = require('odex') as { Solver: new (size: number) => Odex };

/** A solver for so many equations to a tolerance, absolute and relative. */
export function solver(size: number, tolerance: number): Odex {
  const made = new Solver(size);
  made.absoluteTolerance = tolerance;
  made.relativeTolerance = tolerance;
  made.maxSteps = 100_000;
  return made;
}

/**
 * The solution at `to`, restarted at every edge between, where the equations have a corner.
 * @throws {Error} when the solver gives up
 */
export function integrate(derivative: Derivative, start: readonly number[], edges: readonly number[]): number[] {
  let y = [...start];
  for (let i = 1; i < edges.length; i++) {
    // Each piece sees its own side of the edge: times are moved a hair inside.
    const from = edges[i - 1]!;
    const to = edges[i]!;
    const inside = (x: number) => Math.min(Math.max(x, from + 1e-12), to - 1e-12);
    const odex = solver(y.length, 1e-12);
    odex.initialStepSize = Math.min(0.01, (to - from) / 4);
    const done = odex.solve((x, at) => derivative(inside(x), at), from, y, to);
    if (done.outcome !== 0) throw new Error(`integrate: no convergence between ${from} and ${to}`);
    y = done.y;
  }
  return y;
}
