import * as v from 'valibot';
import { MOST_CYLINDERS, MOST_LEAD_PIECES, type Setup } from '../diver/index.ts';
import { bounded, group, list, text } from '../diver/file.ts';
import { TICKS_PER_S } from './controls.ts';
import { CONTROLS_IN_VERSION, RUN_FORMAT, RUN_VERSION } from './run-text.ts';

/*
 * Shape and ranges of a run file. The bounds are those that the setup file's bounds lead to, with room: whatever a setup can
 * become fits, and nothing fits that no setup could become. Common practice, no source.
 */

/** The longest run: six hours. */
export const MOST_RUN_TICKS = 6 * 3600 * TICKS_PER_S;
const MOST_PARTS = 60;
const HASH_WORDS = '16 digits of 0 to 9 and a to f\nSave the run again';

const place = { headwardM: bounded(-2, 2), backwardM: bounded(-2, 2) };
const solid = { part: text(60), massKg: bounded(0, 300), volumeM3: bounded(0, 0.5), ...place };
const share = (most: number) => bounded(0, most);

const rig = group({
  name: text(80),
  column: group({
    surfacePressurePa: bounded(1e4, 1e6),
    gravityMps2: bounded(0.1, 50),
    segments: needed(
      group({
        fromM: bounded(0, 300),
        densityKgPerM3: bounded(800, 1500),
        slopeKgPerM4: bounded(-1e12, 1e12),
        pressurePa: bounded(1e4, 2e7),
      }),
      1,
      40,
    ),
  }),
  bottomM: bounded(1, 200),
  ledgeM: v.nullable(bounded(0.5, 200)),
  line: yesOrNo(),
  currentDownMps: bounded(-5, 5),
  gasJPerMol: bounded(1500, 4000),
  lungJPerMol: bounded(1500, 4000),
  waterTemperatureK: bounded(200, 400),
  kgPerMol: bounded(0.001, 0.2),
  solids: needed(group(solid), 3, MOST_PARTS),
  bareKg: bounded(1, 2000),
  bareM3: bounded(1e-3, 3),
  lead: needed(group({ ...solid, releasable: yesOrNo() }), 0, MOST_LEAD_PIECES),
  vessels: needed(
    group({ waterM3: bounded(1e-4, 0.1), fillMol: bounded(0, 5000), kgPerMol: bounded(0.001, 0.2) }),
    0,
    MOST_CYLINDERS,
  ),
  gutM3: share(0.01),
  foam: group({ solidM3: share(0.5), gasM3: share(0.5), softness: share(1) }),
  lungs: group({
    open: yesOrNo(),
    residualM3: bounded(1e-4, 0.02),
    totalM3: bounded(1e-4, 0.02),
    endExpiratoryM3: bounded(1e-4, 0.02),
    tidalM3: bounded(1e-5, 0.02),
    periodS: bounded(0.5, 60),
  }),
  jacket: group({
    capacityM3: bounded(1e-4, 0.2),
    residualM3: share(0.1),
    startM3: share(0.2),
    inflatorMolps: share(10),
    ventM3ps: share(0.1),
    oralM3ps: share(0.01),
    reliefPa: bounded(100, 5e5),
  }),
  drysuit: v.nullable(
    group({
      minimumM3: bounded(1e-5, 0.2),
      comfortM3: bounded(1e-5, 0.2),
      capacityM3: bounded(1e-4, 0.3),
      startM3: share(0.3),
      inletMolps: share(10),
      exhaustM3ps: share(0.1),
      crackPa: share(5e4),
    }),
  ),
  loop: v.nullable(
    group({
      capacityM3: bounded(1e-4, 0.1),
      minimumM3: bounded(1e-5, 0.1),
      startM3: share(0.1),
      diluentMolps: share(10),
      noseVentM3ps: share(0.1),
    }),
  ),
  dragAreaLevelM2: bounded(0.005, 20),
  dragAreaUprightM2: bounded(0.005, 20),
  addedMassLevel: share(10),
  addedMassUpright: share(10),
});

/** What is in it is checked as a setup file is, in run-second.ts. */
const setup = v.nullable(
  v.custom<Setup>(
    (found) => typeof found === 'object' && found !== null && !Array.isArray(found),
    'a setup, or null\nSave the run again',
  ),
);

const column = v.custom<unknown[]>(Array.isArray, 'a list of whole numbers\nSave the run again');

/** A run file. What joins several of its keys is in run-rules.ts. */
export const runSchema = group({
  format: v.literal(RUN_FORMAT, `"${RUN_FORMAT}"\nOpen a file that was saved as a run`),
  version: v.picklist(
    [1, 2, 3, RUN_VERSION],
    `1 to ${RUN_VERSION}\nRuns of other versions are not read: dive it again`,
  ),
  name: text(120),
  lessonId: v.optional(text(60)),
  pilot: v.optional(text(60)),
  seed: v.optional(whole(0, 2 ** 32 - 1)),
  second: v.optional(
    group({ difference: text(200), by: text(60), words: v.optional(text(200)), first: setup, own: setup }),
  ),
  ticks: whole(0, MOST_RUN_TICKS),
  locked: yesOrNo(),
  endHash: v.pipe(v.string(HASH_WORDS), v.regex(/^[0-9a-f]{16}$/, HASH_WORDS)),
  start: needed(bounded(-1e9, 1e9), 1, 60),
  rig,
  controls: needed(whole(-(2 ** 31), 2 ** 31), CONTROLS_IN_VERSION[1], CONTROLS_IN_VERSION[RUN_VERSION]),
  changes: group({ ticks: column, control: column, by: column }),
});

/** What a run file gives, checked key by key. */
export type GivenRun = v.InferOutput<typeof runSchema>;

function whole(least: number, most: number) {
  const say = `a whole number from ${least} to ${most}\nSave the run again`;
  return v.pipe(v.number(say), v.integer(say), v.minValue(least, say), v.maxValue(most, say));
}

function yesOrNo() {
  return v.boolean('true or false\nSave the run again');
}

/** A list that may not be left out. */
function needed<const T extends v.GenericSchema>(entry: T, least: number, most: number) {
  return list(entry, least, most).wrapped;
}
