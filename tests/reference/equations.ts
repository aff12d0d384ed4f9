import { ledger, netOf, type ForcePart, type Instant, type Rig } from '../../src/diver/index.ts';
import { vesselPressurePa } from '../../src/gas/index.ts';
import { waterAt } from '../../src/water/index.ts';
import type { Controls, DiveState } from '../../src/dive/index.ts';
import type { Derivative } from './adaptive.ts';

/*
 * The model's equations written a second time, from its page of laws and the force ledger, with nothing of the step: for the
 * adaptive solver. Gas is bookkept as differential equations; the diver is under water and clear of the floor.
 */

/** From this second on, these controls. */
export interface Press {
  readonly fromS: number;
  readonly controls: Controls;
  /** Water that moves as it will, m/s and m/s², down positive; left out: as the controls say. */
  readonly water?: (s: number) => readonly [downMps: number, downMps2: number];
}

/** A dive as a system of equations. */
export interface System {
  readonly derivative: Derivative;
  readonly start: readonly number[];
  /** Seconds at which the equations have a corner: changes of controls and phases of the breath, from 0 to the end. */
  readonly edges: readonly number[];
}

/** Order of the unknowns. Bubbles are what has left for good; attitude is an angle here, a unit vector in the step. */
const Z = 0;
const V = 1;
const BUBBLES = 2;
const JACKET = 3;
const SUIT = 4;
const ANGLE = 5;
const TURN = 6;

const MOLAR_J = 8.314462618;
const LUNG_J = MOLAR_J * 310.15;
const VAPOUR_PA = 6270;
const ATM_PA = 101325;
const FEED_PA = 9.5e5;

/** The equations of a dive from a state with the breath at its beginning, over so many seconds. */
export function systemOf(
  rig: Rig,
  from: Readonly<DiveState>,
  presses: readonly Press[],
  seconds: number,
  locked = false,
): System {
  const breath = breathOf(rig, presses[0]!.controls.lungCl);
  const cylinderMol = from.cylinderMol.reduce((sum, mol) => sum + mol, 0);
  const allMol = cylinderMol + from.lungMol + from.jacketMol + from.suitMol;
  const g = rig.column.gravityMps2;
  const waterJ = MOLAR_J * rig.waterTemperatureK;
  const water = { densityKgPerM3: 0, pressurePa: 0 };

  const derivative: Derivative = (t, y) => {
    const { controls: c, water: moving } = pressAt(presses, t);
    const [waterMps, waterMps2] = moving?.(t) ?? [c.waterDownMmps / 1000, c.waterDownMmps2 / 1000];
    const [cos, sin] = [Math.cos(y[ANGLE]!), Math.sin(y[ANGLE]!)];
    waterAt(rig.column, y[Z]!, water);
    const { densityKgPerM3: rho, pressurePa: p } = water;
    const lungM3 = breath.volumeM3(t);
    const lungMol = ((p - VAPOUR_PA) * lungM3) / LUNG_J;
    const [jacketMol, suitMol] = [y[JACKET]!, y[SUIT]!];
    const leftMol = allMol - lungMol - jacketMol - suitMol - y[BUBBLES]!;
    const instant: Instant = {
      depthM: y[Z]!,
      pitchCos: cos,
      pitchSin: sin,
      lungM3,
      lungMol,
      jacketMol,
      suitMol,
      loopMol: 0,
      cylinderMol: from.cylinderMol.map((mol) => (mol / cylinderMol) * leftMol),
      releasedMask: from.releasedMask,
    };
    const parts = ledger(rig, instant);
    const massKg = parts.reduce((kg, part) => kg + part.massKg, 0);
    const buoyancyN = parts.reduce((n, part) => n + part.buoyancyN, 0);

    const upright = sin * sin;
    const area = rig.dragAreaLevelM2 + (rig.dragAreaUprightM2 - rig.dragAreaLevelM2) * upright;
    const share = rig.addedMassLevel + (rig.addedMassUpright - rig.addedMassLevel) * upright;
    const w = y[V]! - rig.currentDownMps - waterMps;
    // Accelerated water: the gradient of pressure that accelerates it acts on the diver too, and added mass on the difference.
    const displacedKg = buoyancyN / g;
    const carried = displacedKg * waterMps2 + share * displacedKg * waterMps2;
    const down = -netOf(parts) - 0.5 * rho * area * Math.abs(w) * w - c.finsN * sin - c.nudgeUpN + carried;
    const inertia = massKg + share * displacedKg;

    const lungRate = (rho * g * y[V]! * lungM3 + (p - VAPOUR_PA) * breath.rateM3ps(t)) / LUNG_J;
    const supply = vesselPressurePa(instant.cylinderMol[0]!, rig.vessels[0]!.waterM3, rig.waterTemperatureK);
    const feed = Math.min(FEED_PA + p, supply) / (FEED_PA + ATM_PA);
    const molPerM3 = p / waterJ;
    const thin = Math.sqrt(ATM_PA / p);
    const jacketIn = c.jacketAdd === 1 ? rig.jacket.inflatorMolps * feed : 0;
    const head = Math.min(0.25, jacketMol / molPerM3 / 0.04);
    const jacketOut = c.jacketVent !== 0 ? rig.jacket.ventM3ps * Math.sqrt(head / 0.25) * thin * molPerM3 : 0;
    const suitIn = rig.drysuit && c.suitAdd === 1 ? rig.drysuit.inletMolps * feed : 0;
    const suitOut = exhaustMolps(rig, suitMol / molPerM3, rho * g, sin, molPerM3 * thin);

    return [
      y[V]!,
      down / inertia,
      Math.max(0, -lungRate) + jacketOut + suitOut,
      jacketIn - jacketOut,
      suitIn - suitOut,
      locked ? 0 : y[TURN]!,
      locked ? 0 : turnRadps2(parts, cos, sin, y[TURN]!, c),
    ];
  };
  const angle = Math.atan2(from.pitchSin, from.pitchCos);
  const start = [from.depthM, from.speedMps, 0, from.jacketMol, from.suitMol, angle, from.pitchRateRadps];
  const corners = [0, seconds, ...presses.map(({ fromS }) => fromS), ...breath.edgesS(seconds)];
  const edges = [...new Set(corners)].filter((s) => s >= 0 && s <= seconds).sort((a, b) => a - b);
  return { derivative, start, edges };
}

function pressAt(presses: readonly Press[], t: number): Press {
  let current = presses[0]!;
  for (const press of presses) if (press.fromS <= t) current = press;
  return current;
}

/** Automatic breath about a level: in 40 %, out 60 % of the period, each a 3u² − 2u³ ramp; phases on whole ticks. */
export function breathOf(rig: Rig, lungCl: number) {
  const inS = Math.round(rig.lungs.periodS * 0.4 * 120) / 120;
  const outS = Math.round(rig.lungs.periodS * 0.6 * 120) / 120;
  const low = lungCl * 1e-5 - rig.lungs.tidalM3 / 2;
  const phase = (t: number) => {
    const into = t - Math.floor(t / (inS + outS)) * (inS + outS);
    return into < inS ? ([into / inS, inS, 1] as const) : ([(into - inS) / outS, outS, -1] as const);
  };
  return {
    volumeM3(t: number): number {
      const [u, , sign] = phase(t);
      const ramp = u * u * (3 - 2 * u);
      return low + rig.lungs.tidalM3 * (sign > 0 ? ramp : 1 - ramp);
    },
    rateM3ps(t: number): number {
      const [u, length, sign] = phase(t);
      return (sign * rig.lungs.tidalM3 * 6 * u * (1 - u)) / length;
    },
    edgesS(seconds: number): number[] {
      const edges: number[] = [];
      for (let t = 0; t <= seconds; t += inS + outS) edges.push(t, t + inS);
      return edges;
    },
  };
}

/** Drysuit exhaust: rated·√((Δp − crack)/1 kPa) while Δp > crack; where the valve sits is the model's own practice. */
function exhaustMolps(rig: Rig, volumeM3: number, rhoG: number, sin: number, thinMolPerM3: number): number {
  const suit = rig.drysuit;
  if (!suit || sin < 0 || volumeM3 <= suit.minimumM3) return 0;
  const heightM = (volumeM3 * Math.max(sin, 0.1)) / 0.05 - (0.12 - 0.07 * sin);
  const overPa = rhoG * heightM - suit.crackPa;
  return overPa > 0 ? suit.exhaustM3ps * Math.sqrt(overPa / 1000) * thinMolPerM3 : 0;
}

/** Angular acceleration about the centre of mass: each buoyant force on its lever, the diver's torque, damping. */
function turnRadps2(parts: readonly ForcePart[], cos: number, sin: number, q: number, c: Controls): number {
  const lever = (part: ForcePart) => part.headwardM * cos - part.backwardM * sin;
  const massKg = parts.reduce((kg, part) => kg + part.massKg, 0);
  const centre = parts.reduce((sum, part) => sum + part.massKg * lever(part), 0) / massKg;
  const moment = parts.reduce((sum, part) => sum + part.buoyancyN * (lever(part) - centre), 0);
  const own = c.attitude === 1 ? c.torqueNm : holdingNm(moment, cos, sin, q, c);
  return (moment + Math.min(Math.max(own, -60), 60) - 40 * q - 60 * Math.abs(q) * q) / 50;
}

/** How the model's diver holds an attitude (its own practice): 120 N m per sine of the angle off, 115 N m s. */
function holdingNm(moment: number, cos: number, sin: number, q: number, c: Controls): number {
  const wanted = (c.pitchDeg * Math.PI) / 180;
  const offSin = Math.sin(wanted) * cos - Math.cos(wanted) * sin;
  const offCos = Math.cos(wanted) * cos + Math.sin(wanted) * sin;
  return 120 * (offCos >= 0 ? offSin : Math.sign(offSin) || 1) - 115 * q - moment;
}
