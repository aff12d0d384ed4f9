import { ledger, netOf, type Instant, type Rig } from '../../src/diver/index.ts';
import { waterAt } from '../../src/water/index.ts';
import type { DiveState } from '../../src/dive/index.ts';
import { breathOf } from './equations.ts';

const LUNG_J = 8.314462618 * 310.15;
const VAPOUR_PA = 6270;

/**
 * Depth after a time of automatic breathing, level, no valve worked, by fourth-order Runge-Kutta on a ledger rebuilt at each
 * stage, with steps of any length: the step's own method and its gas in whole amounts per step, without its flat numbers.
 */
export function depthByLedgerM(
  rig: Rig,
  from: Readonly<DiveState>,
  lungCl: number,
  seconds: number,
  h: number,
): number {
  const breath = breathOf(rig, lungCl);
  let { depthM: z, speedMps: v, lungMol, cylinderMol } = from;
  const lungMolAt = (depthM: number, lungM3: number) =>
    ((waterAt(rig.column, depthM, { densityKgPerM3: 0, pressurePa: 0 }).pressurePa - VAPOUR_PA) * lungM3) / LUNG_J;
  const drawn = (mol: number) => cylinderMol.map((held) => held - mol / cylinderMol.length);

  const fall = (depthM: number, speed: number, lungM3: number): number => {
    const mol = lungMolAt(depthM, lungM3);
    const instant: Instant = { ...from, depthM, lungM3, lungMol: mol, cylinderMol: drawn(Math.max(0, mol - lungMol)) };
    const parts = ledger(rig, instant);
    const massKg = parts.reduce((kg, part) => kg + part.massKg, 0);
    const displacedKg = parts.reduce((n, part) => n + part.buoyancyN, 0) / rig.column.gravityMps2;
    const rho = waterAt(rig.column, depthM, { densityKgPerM3: 0, pressurePa: 0 }).densityKgPerM3;
    const dragN = 0.5 * rho * rig.dragAreaLevelM2 * Math.abs(speed) * speed;
    return (-netOf(parts) - dragN) / (massKg + rig.addedMassLevel * displacedKg);
  };

  const steps = Math.round(seconds / h);
  for (let n = 0; n < steps; n++) {
    // Times in whole steps: a phase of the breath that ends on a step must not begin a hair early.
    const [start, middle, end] = [n * h, (n + 0.5) * h, (n + 1) * h].map((t) => breath.volumeM3(t)) as [
      number,
      number,
      number,
    ];
    const a1 = fall(z, v, start);
    const v2 = v + (h / 2) * a1;
    const a2 = fall(z + (h / 2) * v, v2, middle);
    const v3 = v + (h / 2) * a2;
    const a3 = fall(z + (h / 2) * v2, v3, middle);
    const v4 = v + h * a3;
    const a4 = fall(z + h * v3, v4, end);
    z += (h / 6) * (v + 2 * v2 + 2 * v3 + v4);
    v += (h / 6) * (a1 + 2 * a2 + 2 * a3 + a4);
    const mol = lungMolAt(z, end);
    cylinderMol = drawn(Math.max(0, mol - lungMol));
    lungMol = mol;
  }
  return z;
}
