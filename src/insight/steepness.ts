import { addedShare } from '../dive/index.ts';
import { LUNG_VAPOUR_PA, netForceN, type Foam, type Instant, type Rig } from '../diver/index.ts';
import { STANDARD_PRESSURE_PA, waterAt, type WaterAt } from '../water/index.ts';
import { emergedPerM, segmentAt } from './corners.ts';
import { massKg } from './force-line.ts';

/** What each part adds to the steepness, N/m; together they are all of it. */
export interface Shares {
  readonly suit: number;
  readonly jacket: number;
  readonly drysuit: number;
  readonly loop: number;
  /** Of a held breath only: an open airway keeps its volume. */
  readonly lungs: number;
  readonly gut: number;
  /** Of a density that changes with depth: negative where denser water lies below, and holds. */
  readonly water: number;
  /** Of what comes out of the water: negative, it holds. */
  readonly surface: number;
}

/** How fast the net force runs away from a depth, and what an offset does when nothing else acts: drag is left out. */
export interface Steepness {
  /** −dF/dz, F up: above 0 an offset grows, below 0 it comes back. */
  readonly kNPerM: number;
  readonly shares: Shares;
  /** Mass and added mass. */
  readonly inertiaKg: number;
  /** λ = √(k/inertia), its time 1/λ, and the time ln 2/λ in which an offset doubles; null where it does not grow. */
  readonly growthPerS: number | null;
  readonly eFoldingS: number | null;
  readonly doublingS: number | null;
  /** 2π √(inertia/−k); null where an offset does not come back. */
  readonly periodS: number | null;
}

/** Less than this is nothing, m³: rounding puts it on either side. */
const ROUNDING_M3 = 1e-12;

const water: WaterAt = { densityKgPerM3: NaN, pressurePa: NaN };

/** Mass that a force must move, kg: the diver's and the water's, a share of what is displaced, from level to upright by sin² of pitch. */
export function inertiaKg(rig: Rig, pitchSin: number, massKg: number, displacedKg: number): number {
  return massKg + addedShare(rig, pitchSin) * displacedKg;
}

/**
 * Steepness of the net force at the diver's depth: k = −dF/dz with its shares. A gas that follows pressure has (ρg)²·V/p; one at
 * the limit of its bag has none. At a corner it is that of the deeper side.
 * @param heldBreath the airway is closed: lung gas follows pressure while its volume is between residual and total
 */
export function steepnessAt(rig: Rig, at: Instant, heldBreath = false): Steepness {
  const { depthM, pitchSin } = at;
  const { densityKgPerM3: rho, pressurePa: p } = waterAt(rig.column, depthM, water);
  const g = rig.column.gravityMps2;
  const mass = massKg(rig, at);
  const displacedM3 = (netForceN(rig, at) / g + mass) / rho;
  // In the air nothing is squeezed by being lower; who is all out of the water displaces nothing that could change.
  const wet = displacedM3 > ROUNDING_M3;
  const perSoft = wet && depthM >= 0 ? (rho * g) ** 2 : 0;
  const slope = wet && depthM >= 0 ? segmentAt(rig.column, depthM).slopeKgPerM4 : 0;
  const { jacket, drysuit, loop, gasJPerMol } = rig;
  const bag = (mol: number, leastM3: number, mostM3: number) => perSoft * bagSoft(mol * gasJPerMol, p, leastM3, mostM3);
  const shares: Shares = {
    suit: perSoft * foamSoft(rig.foam, p),
    jacket: bag(at.jacketMol, 0, jacket.capacityM3),
    drysuit: drysuit ? bag(at.suitMol, drysuit.minimumM3, drysuit.capacityM3) : 0,
    loop: loop ? bag(at.loopMol, 0, loop.capacityM3) : 0,
    lungs: heldBreath && rig.lungs.open ? perSoft * heldSoft(rig, at.lungMol, p) : 0,
    gut: (perSoft * rig.gutM3 * STANDARD_PRESSURE_PA) / (p * p),
    water: slope === 0 ? 0 : -g * slope * displacedM3,
    surface: wet ? rho * g * emergedPerM(depthM, pitchSin) : 0,
  };
  const { suit, lungs, gut, surface } = shares;
  const kNPerM = suit + shares.jacket + shares.drysuit + shares.loop + lungs + gut + shares.water + surface;
  const inertia = inertiaKg(rig, pitchSin, mass, rho * displacedM3);
  const growthPerS = kNPerM > 0 ? Math.sqrt(kNPerM / inertia) : null;
  return {
    kNPerM,
    shares,
    inertiaKg: inertia,
    growthPerS,
    eFoldingS: growthPerS === null ? null : 1 / growthPerS,
    doublingS: growthPerS === null ? null : Math.LN2 / growthPerS,
    periodS: kNPerM < 0 ? 2 * Math.PI * Math.sqrt(inertia / -kNPerM) : null,
  };
}

/** −dV/dp of gas in a bag, m³/Pa: V/p between the bag's limits, 0 at them. */
function bagSoft(paM3: number, p: number, leastM3: number, mostM3: number): number {
  const volumeM3 = paM3 / p;
  return volumeM3 > leastM3 && volumeM3 <= mostM3 ? volumeM3 / p : 0;
}

/** −dV/dp of foam, m³/Pa. */
function foamSoft({ gasM3, softness }: Foam, p: number): number {
  const wallsPa = STANDARD_PRESSURE_PA + softness * (p - STANDARD_PRESSURE_PA);
  return (gasM3 * STANDARD_PRESSURE_PA * softness) / (wallsPa * wallsPa);
}

/** −dV/dp of a held breath, m³/Pa: its vapour keeps its pressure, the dry rest follows Boyle. */
function heldSoft(rig: Rig, lungMol: number, p: number): number {
  return bagSoft(lungMol * rig.lungJPerMol, p - LUNG_VAPOUR_PA, rig.lungs.residualM3, rig.lungs.totalM3 + ROUNDING_M3);
}
