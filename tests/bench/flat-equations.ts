import type { Rig } from '../../src/diver/index.ts';
import type { DiveState } from '../../src/dive/index.ts';
import { solver } from '../reference/adaptive.ts';

/**
 * Tolerance of the adaptive solver: the loosest from which on every tighter one ends a minute of breathing within 0.1 mm.
 * Looser ones hit or miss by chance (0.03 mm at 1e-5, 0.32 mm at 1e-6): gas that leaves puts a corner in the equations.
 */
export const ODEX_TOLERANCE = 5e-7;

const LUNG_J = 8.314462618 * 310.15;

/**
 * A minute of automatic breathing by the adaptive solver on the model's equations with all parts on flat numbers: depth,
 * speed and gas breathed out, restarted at every phase of the breath, depth and speed written ten times a second.
 * @param rows depth and speed in turn, 601 pairs
 * @returns the depth at the end, metres
 */
export function minuteByOdex(rig: Rig, start: Readonly<DiveState>, rows: Float64Array): number {
  const { surfacePressurePa, gravityMps2: g } = rig.column;
  const rho = rig.column.segments[0]!.densityKgPerM3;
  const rhoG = rho * g;
  const tidal = rig.lungs.tidalM3;
  const low = rig.lungs.endExpiratoryM3;
  const drag = 0.5 * rho * rig.dragAreaLevelM2;
  const share = rig.addedMassLevel;
  const kgPerMol = rig.kgPerMol;
  let allMol = start.lungMol + start.jacketMol + start.suitMol + start.loopMol;
  for (const mol of start.cylinderMol) allMol += mol;
  const wholeKg = start.solidKg + allMol * kgPerMol;
  const fixedM3 = start.solidM3 + rig.foam.solidM3;
  const boyle = (rig.gutM3 + rig.foam.gasM3) * 101325 + start.jacketMol * rig.gasJPerMol;

  let fromS = 0;
  let lengthS = 1;
  let sign = 1;
  const derivative = (t: number, y: number[]): number[] => {
    const p = surfacePressurePa + rhoG * y[0]!;
    const u = (t - fromS) / lengthS;
    const ramp = u * u * (3 - 2 * u);
    const lungM3 = low + tidal * (sign > 0 ? ramp : 1 - ramp);
    const slope = (sign * tidal * 6 * u * (1 - u)) / lengthS;
    const v = y[1]!;
    const massKg = wholeKg - y[2]! * kgPerMol;
    const displaced = rho * (fixedM3 + lungM3 + boyle / p);
    const fall = ((massKg - displaced) * g - drag * Math.abs(v) * v) / (massKg + share * displaced);
    return [v, fall, Math.max(0, -(rhoG * v * lungM3 + (p - 6270) * slope) / LUNG_J)];
  };

  const odex = solver(3, ODEX_TOLERANCE);
  odex.denseOutput = true;
  let y = [start.depthM, start.speedMps, 0];
  let row = 0;
  const seen = (_: number, tOld: number, t: number, at: number[], dense: (component: number, t: number) => number) => {
    while (row * 0.1 <= t + 1e-9 && row <= 600) {
      const when = row * 0.1;
      const now = when <= tOld || when >= t;
      rows[2 * row] = now ? at[0]! : dense(0, when);
      rows[2 * row + 1] = now ? at[1]! : dense(1, when);
      row++;
    }
  };
  for (let phase = 0; fromS < 60 - 1e-9; phase++) {
    sign = phase % 2 === 0 ? 1 : -1;
    lengthS = Math.round(rig.lungs.periodS * (sign > 0 ? 0.4 : 0.6) * 120) / 120;
    odex.initialStepSize = lengthS / 4;
    y = odex.solve(derivative, fromS, y, Math.min(60, fromS + lengthS), seen).y;
    fromS += lengthS;
  }
  return y[0]!;
}
