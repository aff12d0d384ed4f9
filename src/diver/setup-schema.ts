import * as v from 'valibot';
import { MOST_CYLINDERS, MOST_LEAD_PIECES } from './rig.ts';
import { bounded, choice, group, list, number, text, words, yesNo } from './fields.ts';
import { suggestChoice } from './suggest.ts';

/*
 * The keys of a setup file and what each may hold. Bounds are common practice, no source, and wide on purpose: from a child
 * to a giant, from a pool to another world. Those of salinity, temperature and pressure are the ranges of the laws used.
 */

const water = group({
  salinityPsu: number(0, 42),
  densityKgPerM3: number(900, 1300),
  temperatureC: number(-2, 40),
  layers: list(
    group({
      fromM: bounded(0, 150),
      salinityPsu: number(0, 42),
      temperatureC: number(-2, 40),
      mixingM: number(0, 50),
    }),
    1,
    20,
  ),
  bottomM: number(1.5, 150),
  altitudeM: number(-430, 6000),
  surfacePressureBar: number(0.2, 5),
  gravityMps2: number(0.5, 30),
  currentDownMps: number(-2, 2),
  ledgeM: number(1, 150),
  line: yesNo(),
});

const diver = group({
  massKg: number(25, 250),
  bodyFatPercent: number(3, 70),
  heightCm: number(100, 230),
  residualL: number(0.3, 4),
  totalLungL: number(1.5, 10),
  endExpiratoryL: number(0.5, 7),
  tidalL: number(0.2, 5),
  breathPeriodS: number(2, 30),
  sex: choice(['female', 'male']),
  ageYears: number(18, 80),
});

const foam = {
  thicknessMm: number(0, 12),
  areaM2: number(0.2, 5),
  foamDensityKgPerM3: number(50, 1200),
  gasFraction: number(0, 0.95),
  softness: number(0, 1),
};

const SUIT_KINDS = ['foam', 'drysuit', 'none'] as const;
/** The suit by its kind; foam when the kind is left out. */
const suit = v.variant(
  'kind',
  [
    group({ kind: v.optional(v.literal('foam')), cut: choice(['one-piece', 'two-piece']), ...foam }),
    group({
      kind: v.literal('drysuit'),
      shell: choice(['membrane', 'foam', 'compressed-foam']),
      ...foam,
      undergarmentL: number(0.1, 30),
      minimumLoftL: number(0.1, 25),
      gasL: number(0, 80),
      capacityL: number(1, 100),
      inletLps: number(0, 10),
      exhaustLps: number(0, 10),
      crackKPa: number(0, 5),
      massKg: number(0.2, 20),
      volumeL: number(0.2, 20),
    }),
    group({ kind: v.literal('none') }),
  ],
  (issue) =>
    issue.expected === 'Object'
      ? 'a group of keys\nWrite kind: foam, drysuit or none below it'
      : words(`one of ${SUIT_KINDS.join(', ')}`, (found) => suggestChoice(found, SUIT_KINDS))(issue),
);

const jacket = group({
  capacityL: number(1, 60),
  residualL: number(0, 10),
  gasL: number(0, 60),
  inflatorLps: number(0, 10),
  ventLps: number(0, 20),
  oralLps: number(0, 3),
  reliefBar: number(0.01, 1),
  massKg: number(0, 20),
  volumeL: number(0, 20),
});

const cylinder = group({
  material: choice(['steel', 'aluminium']),
  waterL: number(0.4, 30),
  emptyKg: number(0.3, 60),
  externalL: number(0.5, 70),
  workingBar: number(50, 300),
  fillBar: number(0, 328),
  o2Percent: number(15, 100),
});

const leadPiece = group({
  massKg: bounded(0.05, 20),
  place: choice(['belt', 'back', 'pocket', 'ankle']),
  releasable: yesNo(),
});

const gear = group({
  name: text(60),
  massKg: bounded(0, 50),
  volumeL: bounded(0, 60),
  headwardM: number(-1.5, 1.5),
  backwardM: number(-1, 1),
});

const loop = group({
  capacityL: number(1, 20),
  minimumL: number(0.1, 15),
  gasL: number(0, 20),
  diluentLps: number(0, 10),
  noseVentLps: number(0, 10),
  massKg: number(1, 40),
  volumeL: number(1, 50),
});

const hydrodynamics = group({
  dragAreaLevelM2: number(0.02, 5),
  dragAreaUprightM2: number(0.02, 5),
  addedMassLevel: number(0, 3),
  addedMassUpright: number(0, 3),
});

/** Shape and ranges of a setup file, before left-out keys are filled in. */
export const setupSchema = group({
  format: v.optional(
    v.literal(
      1,
      words('1', () => 'Write format: 1; files of other formats are not read'),
    ),
  ),
  name: v.optional(text(80)),
  note: v.optional(text(400)),
  water: v.optional(water),
  diver: v.optional(diver),
  suit: v.optional(suit),
  jacket: v.optional(jacket),
  cylinders: list(cylinder, 1, MOST_CYLINDERS),
  lead: list(leadPiece, 0, MOST_LEAD_PIECES),
  other: list(gear, 0, 40),
  apparatus: choice(['open', 'loop']),
  loop: v.optional(loop),
  hydrodynamics: v.optional(hydrodynamics),
});

/** What a file gives, checked key by key; whatever it leaves out is absent. */
export type GivenSetup = v.InferOutput<typeof setupSchema>;
