import { instantOf, jacketM3, type Rig } from '../diver/index.ts';
import { waterAt } from '../water/index.ts';
import { neutralJacketM3 } from './carrying.ts';

/* How much gas, from the closed laws of the water and the ledger. */

/** Jacket gas that is worth a press, m³. Practice. */
const NOTICED_M3 = 0.1e-3;

function at(rig: Rig, depthM: number) {
  return waterAt(rig.column, depthM, { densityKgPerM3: 0, pressurePa: 0 });
}

/** Gas that lifts so many kilograms, litres: its own weight was carried already. */
export function litresFor(rig: Rig, depthM: number, kg: number): number {
  return (kg / at(rig, depthM).densityKgPerM3) * 1e3;
}

/** What the jacket has too much at another depth, m³ at that depth, of the gas that is right at the first. */
function surplusM3(rig: Rig, atM: number, toM: number): number {
  const { jacketMol } = instantOf(rig, { depthM: atM, jacketM3: neutralJacketM3(rig, atM) });
  return jacketM3(rig, jacketMol, at(rig, toM).pressurePa) - neutralJacketM3(rig, toM);
}

/** What jacket gas that is right at one depth needs on the way to a shallower one. */
export function gasOnTheWay(rig: Rig, atM: number, toM: number): string {
  const surplus = surplusM3(rig, atM, toM);
  return surplus > NOTICED_M3 ? 'let-out' : surplus < -NOTICED_M3 ? 'add' : 'leave';
}

/** Gas to let in or out between two neutral hovers, litres at the depth arrived at. */
export function gasToMoveL(rig: Rig, atM: number, toM: number): number {
  return Math.abs(surplusM3(rig, atM, toM)) * 1e3;
}

/** A litre at the surface, litres at each of the depths. */
export function gasCurve(rig: Rig, depthsM: readonly number[]): readonly number[] {
  return depthsM.map((depthM) => at(rig, 0).pressurePa / at(rig, depthM).pressurePa);
}

/** Item ids such as m10, the depth at which gas grows fastest for each metre up first: share = ρ g / p. */
export function growthOrder(rig: Rig, ids: readonly string[]): readonly string[] {
  const shareOf = (id: string) => {
    const { densityKgPerM3, pressurePa } = at(rig, Number(id.slice(1)));
    return densityKgPerM3 / pressurePa;
  };
  return [...ids].sort((a, b) => shareOf(b) - shareOf(a));
}

/** Gas to let into a drysuit so that it keeps its volume on the way down, litres at the depth arrived at; 0 without one. */
export function suitGasL(rig: Rig, atM: number, toM: number): number {
  const kept = rig.drysuit?.startM3 ?? 0;
  return kept * (1 - at(rig, atM).pressurePa / at(rig, toM).pressurePa) * 1e3;
}
