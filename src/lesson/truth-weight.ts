import { instantOf, ledger, midBreathM3, netOf, type Rig } from '../diver/index.ts';
import { neutralLeadKg, swingBudget } from '../insight/index.ts';
import { STANDARD_GRAVITY_MPS2, uniformColumn, waterAt, waterDensityKgPerM3 } from '../water/index.ts';

/* How much lead, by the weighings of the insight room. */

/** Lead that is more than neutral at 5 m with 50 bar left, kilograms. */
export function leadTooMuchKg(rig: Rig): number {
  return rig.lead.reduce((kg, { massKg }) => kg + massKg, 0) - neutralLeadKg(rig);
}

/** How much lighter the diver is once the cylinder is at 50 bar, kilograms. */
export function lighterKg(rig: Rig): number {
  return swingBudget(rig, [5]).cylinderLossN / rig.column.gravityMps2;
}

/** More lead in water of another salinity, of the same temperature and without layers, kilograms. */
export function leadInWaterKg(rig: Rig, salinityPsu: number): number {
  const { pressurePa } = waterAt(rig.column, 0, { densityKgPerM3: 0, pressurePa: 0 });
  const density = waterDensityKgPerM3(salinityPsu, rig.waterTemperatureK - 273.15);
  const column = uniformColumn(density, pressurePa, rig.column.gravityMps2);
  return neutralLeadKg({ ...rig, column }) - neutralLeadKg(rig);
}

/** More lead in a foam suit of another thickness, kilograms: its mass and its volume are in proportion. */
export function leadInSuitKg(rig: Rig, share: number): number {
  const { solidM3, gasM3, softness } = rig.foam;
  const suitKg = rig.solids.find(({ part }) => part === 'suit')?.massKg ?? 0;
  const solids = rig.solids.map((part) => (part.part === 'suit' ? { ...part, massKg: suitKg * share } : part));
  const foam = { solidM3: solidM3 * share, gasM3: gasM3 * share, softness };
  const other = { ...rig, solids, foam, bareKg: rig.bareKg + suitKg * (share - 1) };
  return neutralLeadKg(other) - neutralLeadKg(rig);
}

/** Net pull at mid-breath, jacket empty, at several cylinder pressures, kilograms, up positive. */
export function swingCurve(rig: Rig, depthM: number, bars: readonly number[]): readonly number[] {
  const lungs = rig.lungs.open ? { lungM3: midBreathM3(rig) } : {};
  return bars.map((cylinderBar) => {
    const at = instantOf(rig, { depthM, jacketM3: rig.jacket.residualM3, cylinderBar, ...lungs });
    return netOf(ledger(rig, at)) / STANDARD_GRAVITY_MPS2;
  });
}
