/**
 * The setup as a setup file gives it, with every default filled in. Trade units, each in the key's name: litres, bar (gauge
 * unless the key says otherwise), millimetres, degrees Celsius, kilograms.
 */
export interface Setup {
  readonly format: 1;
  readonly name: string;
  /** One or two sentences for the person who chooses among setups. */
  readonly note?: string;
  readonly water: WaterSetup;
  readonly diver: BodySetup;
  readonly suit: SuitSetup;
  readonly jacket: JacketSetup;
  readonly cylinders: readonly CylinderSetup[];
  readonly lead: readonly LeadSetup[];
  readonly other: readonly GearSetup[];
  readonly apparatus: 'open' | 'loop';
  /** Present when, and only when, apparatus is loop. */
  readonly loop?: LoopSetup;
  readonly hydrodynamics: HydrodynamicsSetup;
}

export interface WaterSetup {
  readonly salinityPsu: number;
  /** Of the water, and of all gas outside the lungs; a column of layers keeps it for the gas. */
  readonly temperatureC: number;
  /** One density for the whole column, instead of salinity and temperature. */
  readonly densityKgPerM3?: number;
  /** Layers from the surface down, instead of salinity and temperature. */
  readonly layers?: readonly LayerSetup[];
  readonly bottomM: number;
  /** Geometric; sets the surface pressure unless that is given. */
  readonly altitudeM: number;
  /** Absolute. */
  readonly surfacePressureBar?: number;
  readonly gravityMps2: number;
  readonly currentDownMps: number;
  readonly ledgeM?: number;
  readonly line: boolean;
}

export interface LayerSetup {
  readonly fromM: number;
  readonly salinityPsu: number;
  readonly temperatureC: number;
  readonly mixingM: number;
}

export interface BodySetup {
  readonly massKg: number;
  readonly bodyFatPercent: number;
  readonly heightCm: number;
  readonly residualL: number;
  readonly totalLungL: number;
  readonly endExpiratoryL: number;
  readonly tidalL: number;
  readonly breathPeriodS: number;
  /** Given together with ageYears: lung sizes come from reference equations instead of the three keys above. */
  readonly sex?: 'female' | 'male';
  readonly ageYears?: number;
}

export type SuitSetup = FoamSuitSetup | DrysuitSetup | { readonly kind: 'none' };

export interface FoamSuitSetup {
  readonly kind: 'foam';
  readonly cut: 'one-piece' | 'two-piece';
  readonly thicknessMm: number;
  readonly areaM2: number;
  readonly foamDensityKgPerM3: number;
  readonly gasFraction: number;
  /** 1 = the gas in the foam follows Boyle's law; less = the foam's walls carry a share of the pressure. */
  readonly softness: number;
}

export interface DrysuitSetup {
  readonly kind: 'drysuit';
  readonly shell: 'membrane' | 'foam' | 'compressed-foam';
  /** Of the foam shells only; 0 for a membrane. */
  readonly thicknessMm: number;
  readonly areaM2: number;
  readonly foamDensityKgPerM3: number;
  readonly gasFraction: number;
  readonly softness: number;
  /** Gas that the undergarment holds when it is not squeezed. */
  readonly undergarmentL: number;
  /** Gas volume below which the undergarment yields no further and the suit squeezes. */
  readonly minimumLoftL: number;
  /** At the start, at the starting depth. */
  readonly gasL: number;
  /** Gas volume at which the neck seal lets go. */
  readonly capacityL: number;
  readonly inletLps: number;
  readonly exhaustLps: number;
  readonly crackKPa: number;
  readonly massKg: number;
  readonly volumeL: number;
}

export interface JacketSetup {
  readonly capacityL: number;
  /** Gas that venting never removes. */
  readonly residualL: number;
  /** At the start, at the starting depth. */
  readonly gasL: number;
  readonly inflatorLps: number;
  readonly ventLps: number;
  readonly oralLps: number;
  readonly reliefBar: number;
  readonly massKg: number;
  readonly volumeL: number;
}

export interface CylinderSetup {
  readonly material: 'steel' | 'aluminium';
  readonly waterL: number;
  readonly emptyKg: number;
  readonly externalL: number;
  readonly workingBar: number;
  readonly fillBar: number;
  readonly o2Percent: number;
}

export type LeadPlace = 'belt' | 'back' | 'pocket' | 'ankle';

export interface LeadSetup {
  readonly massKg: number;
  readonly place: LeadPlace;
  readonly releasable: boolean;
}

export interface GearSetup {
  readonly name: string;
  readonly massKg: number;
  readonly volumeL: number;
  /** Where it sits, from mid-chest toward the head and toward the back. */
  readonly headwardM: number;
  readonly backwardM: number;
}

export interface LoopSetup {
  readonly capacityL: number;
  readonly minimumL: number;
  /** At the start, at the starting depth. */
  readonly gasL: number;
  readonly diluentLps: number;
  readonly noseVentLps: number;
  readonly massKg: number;
  readonly volumeL: number;
}

export interface HydrodynamicsSetup {
  readonly dragAreaLevelM2: number;
  readonly dragAreaUprightM2: number;
  readonly addedMassLevel: number;
  readonly addedMassUpright: number;
}
