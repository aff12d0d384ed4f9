import { foamM3, type Rig } from '../diver/index.ts';
import { STANDARD_PRESSURE_PA, waterAt } from '../water/index.ts';
import { USUAL_WEIGHING, emptied, submergedN } from './weigh.ts';

/** What changes a diver's buoyancy over a dive, and what the jacket has to make of it. */
export interface SwingBudget {
  /** Weight of the gas between full and reserve, newtons: so much lighter the diver comes back. */
  readonly cylinderLossN: number;
  readonly depths: readonly SwingAt[];
}

/** The budget at one depth. */
export interface SwingAt {
  readonly depthM: number;
  /** Lift that the foam of the suit has lost since the surface, in the water of that depth, newtons. */
  readonly suitLossN: number;
  /** Gas in the jacket that makes the diver neutral at mid-breath, at that depth's pressure, within what the jacket holds. */
  readonly jacketM3: number;
  /** The same at 101 325 Pa. */
  readonly jacketSurfaceM3: number;
  /** Net force that no jacket can take off, newtons, up positive: above 0 too light with it empty; 0 where it can. */
  readonly leftN: number;
  /** Gas that leaves jacket, drysuit and loop together on the way up, per metre, at that depth's pressure. */
  readonly ventPerMetreM3: number;
  /** The same at 101 325 Pa. */
  readonly ventPerMetreSurfaceM3: number;
}

/** Depths of the budget where none are given, as far as the bottom allows. */
const USUAL_DEPTHS_M = [0, 5, 10, 15, 20, 25, 30, 35, 40];

/** Half the stretch over which gas to vent is taken, metres: errors of the slope stay below one in a hundred million. */
const HALF_STRETCH_M = 1e-3;

/** What the budget is reckoned with. */
export interface SwingWith {
  /** Gauge, of every cylinder, for what the jacket takes; left out: as filled. */
  readonly cylinderBar?: number;
  /** Gauge, for what the cylinder loses. */
  readonly reserveBar?: number;
}

/**
 * The swing budget of a rig: what the suit loses with depth, what the cylinder loses from full to reserve, the gas with which
 * the jacket makes the diver neutral at mid-breath, and how much of it a metre of ascent has to let out. The jacket's gas is
 * V = −F₀/(g(ρ − ρ_gas)), F₀ the net force without it; vented gas is d(pV)/dz over the pressure. Wholly submerged, also at
 * the surface; a drysuit is kept at its least loft, a loop at its least volume.
 * @throws {RangeError} when a depth is negative or not finite, or a pressure is impossible
 */
export function swingBudget(
  rig: Rig,
  depthsM: readonly number[] = depthsOf(rig),
  reckoned: SwingWith = {},
): SwingBudget {
  const { reserveBar = USUAL_WEIGHING.reserveBar, cylinderBar } = reckoned;
  const filling = cylinderBar === undefined ? {} : { cylinderBar };
  const gasKg = (bar: { cylinderBar?: number }) =>
    emptied(rig, 0, bar).cylinderMol.reduce((mol, one) => mol + one, 0) * rig.kgPerMol;
  return {
    cylinderLossN: (gasKg({}) - gasKg({ cylinderBar: reserveBar })) * rig.column.gravityMps2,
    depths: depthsM.map((depthM) => swingAt(rig, depthM, filling)),
  };
}

function depthsOf({ bottomM }: Rig): readonly number[] {
  const depths = USUAL_DEPTHS_M.filter((depthM) => depthM <= bottomM);
  const isBetween = bottomM < USUAL_DEPTHS_M.at(-1)! && !depths.includes(bottomM);
  return isBetween ? [...depths, bottomM] : depths;
}

function swingAt(rig: Rig, depthM: number, filling: { cylinderBar?: number }): SwingAt {
  const { jacketM3, leftN, pressurePa, densityKgPerM3 } = neutralJacket(rig, depthM, filling);
  const [aboveM, belowM] = [Math.max(depthM - HALF_STRETCH_M, 0), depthM + HALF_STRETCH_M];
  const gasPaM3 = (atM: number) => {
    const { jacketM3: jacket, pressurePa: pressure } = neutralJacket(rig, atM, filling);
    return (jacket + (rig.drysuit?.minimumM3 ?? 0) + (rig.loop?.minimumM3 ?? 0)) * pressure;
  };
  const ventPaM3 = (gasPaM3(belowM) - gasPaM3(aboveM)) / (belowM - aboveM);
  const surface = waterAt(rig.column, 0, { densityKgPerM3: 0, pressurePa: 0 });
  const lostM3 = foamM3(rig.foam, surface.pressurePa) - foamM3(rig.foam, pressurePa);
  return {
    depthM,
    suitLossN: lostM3 * densityKgPerM3 * rig.column.gravityMps2,
    jacketM3,
    jacketSurfaceM3: (jacketM3 * pressurePa) / STANDARD_PRESSURE_PA,
    leftN,
    ventPerMetreM3: ventPaM3 / pressurePa,
    ventPerMetreSurfaceM3: ventPaM3 / STANDARD_PRESSURE_PA,
  };
}

function neutralJacket(rig: Rig, depthM: number, filling: { cylinderBar?: number }) {
  const { densityKgPerM3, pressurePa } = waterAt(rig.column, depthM, { densityKgPerM3: 0, pressurePa: 0 });
  const withoutN = submergedN(rig, { ...emptied(rig, depthM, filling), jacketMol: 0 });
  const gasKgPerM3 = (pressurePa * rig.kgPerMol) / rig.gasJPerMol;
  const liftNPerM3 = (densityKgPerM3 - gasKgPerM3) * rig.column.gravityMps2;
  const wantedM3 = -withoutN / liftNPerM3;
  const { residualM3, capacityM3 } = rig.jacket;
  const jacketM3 = Math.min(Math.max(wantedM3, residualM3), capacityM3);
  return { jacketM3, leftN: jacketM3 === wantedM3 ? 0 : withoutN + jacketM3 * liftNPerM3, pressurePa, densityKgPerM3 };
}
