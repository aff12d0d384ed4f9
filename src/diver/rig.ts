import { GAS_CONSTANT, molarMassKgPerMol, vesselMol } from '../gas/index.ts';
import {
  STANDARD_PRESSURE_PA,
  atmospherePa,
  layeredColumn,
  uniformColumn,
  waterDensityKgPerM3,
  type Column,
} from '../water/index.ts';
import {
  IMMERSED_END_EXPIRATORY_SHARE,
  IMMERSED_RESIDUAL_SHARE,
  IMMERSED_TOTAL_SHARE,
  dryLungVolumesL,
  tissueDensityKgPerM3,
} from './body.ts';
import { LEAD_PLACES, PLACES, type Place } from './places.ts';
import type { BodySetup, Setup } from './setup.ts';

/** Density of lead, kg/m³. @source CRC Handbook, recalled */
export const LEAD_KG_PER_M3 = 11340;
/** Temperature of gas in the lungs, kelvin: body temperature. @source physiology convention, recalled */
export const LUNG_K = 310.15;
/** Pressure of water vapour in the lungs, pascals: 47 mmHg at 37 °C. @source IAPWS/CRC, recalled */
export const LUNG_VAPOUR_PA = 6270;
/** Gas in the gut at one atmosphere, m³. Recalled. */
const GUT_M3 = 0.1e-3;
/** What can still be breathed out at the end of a quiet breath, at least, litres. Practice. */
const LEAST_RESERVE_L = 0.1;
/** The step's limit, so that the state stays small; twin sets and two stages fit. */
export const MOST_CYLINDERS = 4;
/** The release mask is a 31-bit whole number. */
export const MOST_LEAD_PIECES = 31;

/** A part whose mass and volume never change while it is worn. */
export interface SolidPart extends Place {
  readonly part: string;
  readonly massKg: number;
  readonly volumeM3: number;
}

/** A piece of lead: a solid part that may be let go. */
export interface LeadPart extends SolidPart {
  readonly releasable: boolean;
}

/** Foam whose gas share shrinks with pressure: V = solid + gas · pRef / (pRef + softness · (p − pRef)). */
export interface Foam {
  readonly solidM3: number;
  readonly gasM3: number;
  readonly softness: number;
}

/** A cylinder's gas side; its shell is a solid part. */
export interface Vessel {
  readonly waterM3: number;
  readonly fillMol: number;
  readonly kgPerMol: number;
}

/**
 * Setup-time constants of one diver in one column: everything that the step needs, in SI, JSON-safe. All that needs powers,
 * logarithms or exponentials is computed here, once, and stored with a run, so that a replay never computes it again.
 */
export interface Rig {
  readonly name: string;
  readonly column: Column;
  readonly bottomM: number;
  /** null where there is none. */
  readonly ledgeM: number | null;
  readonly line: boolean;
  readonly currentDownMps: number;
  /** R·T of gas at the water temperature and in the lungs, J/mol. */
  readonly gasJPerMol: number;
  readonly lungJPerMol: number;
  readonly waterTemperatureK: number;
  /** Of all gas that the diver breathes and fills with, kg/mol: the mean of the cylinders, weighted by their content. */
  readonly kgPerMol: number;

  readonly solids: readonly SolidPart[];
  /** Sums over the solids, lead left out. */
  readonly bareKg: number;
  readonly bareM3: number;
  readonly lead: readonly LeadPart[];
  readonly vessels: readonly Vessel[];
  readonly gutM3: number;
  readonly foam: Foam;

  readonly lungs: {
    /** false on the closed loop, where lungs and counterlung are one volume. */
    readonly open: boolean;
    readonly residualM3: number;
    readonly totalM3: number;
    readonly endExpiratoryM3: number;
    readonly tidalM3: number;
    readonly periodS: number;
  };
  readonly jacket: {
    readonly capacityM3: number;
    readonly residualM3: number;
    readonly startM3: number;
    /** Rated flows: moles a second at one standard atmosphere for supplies, m³/s for vents. */
    readonly inflatorMolps: number;
    readonly ventM3ps: number;
    readonly oralM3ps: number;
    readonly reliefPa: number;
  };
  /** null without a drysuit. */
  readonly drysuit: {
    readonly minimumM3: number;
    readonly comfortM3: number;
    readonly capacityM3: number;
    readonly startM3: number;
    readonly inletMolps: number;
    readonly exhaustM3ps: number;
    readonly crackPa: number;
  } | null;
  /** null on open circuit. */
  readonly loop: {
    readonly capacityM3: number;
    readonly minimumM3: number;
    readonly startM3: number;
    readonly diluentMolps: number;
    readonly noseVentM3ps: number;
  } | null;
  readonly dragAreaLevelM2: number;
  readonly dragAreaUprightM2: number;
  readonly addedMassLevel: number;
  readonly addedMassUpright: number;
}

/**
 * The rig of a setup.
 * @throws {RangeError} when a value of the setup lies outside what the laws allow; a checked setup file never does
 */
export function rigOf(setup: Setup): Rig {
  const water = setup.water;
  const waterTemperatureK = water.temperatureC + 273.15;
  const gasJPerMol = GAS_CONSTANT * waterTemperatureK;
  const ratedMolps = (litresPerS: number) => (litresPerS * 1e-3 * STANDARD_PRESSURE_PA) / gasJPerMol;
  const vessels = setup.cylinders.map((cylinder) => ({
    waterM3: cylinder.waterL * 1e-3,
    fillMol: vesselMol(cylinder.fillBar * 1e5 + STANDARD_PRESSURE_PA, cylinder.waterL * 1e-3, waterTemperatureK),
    kgPerMol: molarMassKgPerMol(cylinder.o2Percent),
  }));
  const { jacket, suit, loop, hydrodynamics } = setup;
  const solids = solidParts(setup);
  return {
    name: setup.name,
    column: columnOf(setup),
    bottomM: water.bottomM,
    ledgeM: water.ledgeM ?? null,
    line: water.line,
    currentDownMps: water.currentDownMps,
    gasJPerMol,
    lungJPerMol: GAS_CONSTANT * LUNG_K,
    waterTemperatureK,
    kgPerMol: meanKgPerMol(vessels),
    solids,
    bareKg: solids.reduce((kg, part) => kg + part.massKg, 0),
    bareM3: solids.reduce((m3, part) => m3 + part.volumeM3, 0),
    lead: setup.lead.map((piece, i) => ({
      part: `lead-${i + 1}`,
      massKg: piece.massKg,
      volumeM3: piece.massKg / LEAD_KG_PER_M3,
      ...LEAD_PLACES[piece.place],
      releasable: piece.releasable,
    })),
    vessels,
    gutM3: GUT_M3,
    foam: foamOf(suit),
    lungs: { open: setup.apparatus === 'open', ...lungsOf(setup.diver) },
    jacket: {
      capacityM3: jacket.capacityL * 1e-3,
      residualM3: jacket.residualL * 1e-3,
      startM3: Math.max(jacket.gasL, jacket.residualL) * 1e-3,
      inflatorMolps: ratedMolps(jacket.inflatorLps),
      ventM3ps: jacket.ventLps * 1e-3,
      oralM3ps: jacket.oralLps * 1e-3,
      reliefPa: jacket.reliefBar * 1e5,
    },
    drysuit:
      suit.kind === 'drysuit'
        ? {
            minimumM3: suit.minimumLoftL * 1e-3,
            comfortM3: suit.undergarmentL * 1e-3,
            capacityM3: suit.capacityL * 1e-3,
            startM3: suit.gasL * 1e-3,
            inletMolps: ratedMolps(suit.inletLps),
            exhaustM3ps: suit.exhaustLps * 1e-3,
            crackPa: suit.crackKPa * 1e3,
          }
        : null,
    loop:
      setup.apparatus === 'loop' && loop
        ? {
            capacityM3: loop.capacityL * 1e-3,
            minimumM3: loop.minimumL * 1e-3,
            startM3: loop.gasL * 1e-3,
            diluentMolps: ratedMolps(loop.diluentLps),
            noseVentM3ps: loop.noseVentLps * 1e-3,
          }
        : null,
    dragAreaLevelM2: hydrodynamics.dragAreaLevelM2,
    dragAreaUprightM2: hydrodynamics.dragAreaUprightM2,
    addedMassLevel: hydrodynamics.addedMassLevel,
    addedMassUpright: hydrodynamics.addedMassUpright,
  };
}

/** The mid-breath volume, m³: end-expiratory plus half a tidal volume, where "neutral" is judged. */
export function midBreathM3(rig: Rig): number {
  return rig.lungs.endExpiratoryM3 + rig.lungs.tidalM3 / 2;
}

function columnOf({ water }: Setup): Column {
  const surfacePa =
    water.surfacePressureBar !== undefined ? water.surfacePressureBar * 1e5 : atmospherePa(water.altitudeM);
  if (water.layers) return layeredColumn(water.layers, surfacePa, water.gravityMps2);
  const density = water.densityKgPerM3 ?? waterDensityKgPerM3(water.salinityPsu, water.temperatureC);
  return uniformColumn(density, surfacePa, water.gravityMps2);
}

function meanKgPerMol(vessels: readonly Vessel[]): number {
  let mol = 0;
  let kg = 0;
  for (const vessel of vessels) {
    mol += vessel.fillMol;
    kg += vessel.fillMol * vessel.kgPerMol;
  }
  return mol > 0 ? kg / mol : molarMassKgPerMol(21);
}

function lungsOf(diver: BodySetup): Omit<Rig['lungs'], 'open'> {
  const breath = { tidalM3: diver.tidalL * 1e-3, periodS: diver.breathPeriodS };
  if (diver.sex === undefined || diver.ageYears === undefined)
    return {
      residualM3: diver.residualL * 1e-3,
      totalM3: diver.totalLungL * 1e-3,
      endExpiratoryM3: diver.endExpiratoryL * 1e-3,
      ...breath,
    };
  const dry = dryLungVolumesL(diver.sex, diver.ageYears, diver.heightCm);
  return {
    residualM3: dry.residualL * IMMERSED_RESIDUAL_SHARE * 1e-3,
    totalM3: dry.totalL * IMMERSED_TOTAL_SHARE * 1e-3,
    // The shares come from different studies: in old or short people the two would cross.
    endExpiratoryM3:
      Math.max(
        dry.functionalResidualL * IMMERSED_END_EXPIRATORY_SHARE,
        dry.residualL * IMMERSED_RESIDUAL_SHARE + LEAST_RESERVE_L,
      ) * 1e-3,
    ...breath,
  };
}

function foamOf(suit: Setup['suit']): Foam {
  if (suit.kind === 'none') return { solidM3: 0, gasM3: 0, softness: 1 };
  const foamM3 = suit.areaM2 * suit.thicknessMm * 1e-3;
  const solidM3 = foamM3 * (1 - suit.gasFraction) + (suit.kind === 'drysuit' ? suit.volumeL * 1e-3 : 0);
  return { solidM3, gasM3: foamM3 * suit.gasFraction, softness: suit.softness };
}

function suitMassKg(suit: Setup['suit']): number {
  if (suit.kind === 'none') return 0;
  const foamKg = suit.areaM2 * suit.thicknessMm * 1e-3 * suit.foamDensityKgPerM3;
  return foamKg + (suit.kind === 'drysuit' ? suit.massKg : 0);
}

/** Every solid part but lead, in ledger order. The suit's volume changes with pressure and is therefore 0 here. */
function solidParts(setup: Setup): SolidPart[] {
  const { diver, jacket, loop } = setup;
  const parts: SolidPart[] = [
    {
      part: 'tissue',
      massKg: diver.massKg,
      volumeM3: diver.massKg / tissueDensityKgPerM3(diver.bodyFatPercent),
      ...PLACES.tissue,
    },
    { part: 'suit', massKg: suitMassKg(setup.suit), volumeM3: 0, ...PLACES.suit },
    { part: 'jacket', massKg: jacket.massKg, volumeM3: jacket.volumeL * 1e-3, ...PLACES.jacket },
  ];
  setup.cylinders.forEach((cylinder, i) =>
    parts.push({
      part: `cylinder-${i + 1}`,
      massKg: cylinder.emptyKg,
      volumeM3: cylinder.externalL * 1e-3,
      ...PLACES.cylinder,
    }),
  );
  if (setup.apparatus === 'loop' && loop)
    parts.push({ part: 'loop', massKg: loop.massKg, volumeM3: loop.volumeL * 1e-3, ...PLACES.loop });
  for (const gear of setup.other)
    parts.push({
      part: gear.name,
      massKg: gear.massKg,
      volumeM3: gear.volumeL * 1e-3,
      headwardM: gear.headwardM,
      backwardM: gear.backwardM,
    });
  return parts;
}
