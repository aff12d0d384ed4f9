import ascentWithStop from '../../lessons/ascent-with-stop.yaml';
import breathReach from '../../lessons/breath-reach.yaml';
import closedLoop from '../../lessons/closed-loop.yaml';
import coarseAndFine from '../../lessons/coarse-and-fine.yaml';
import descent from '../../lessons/descent.yaml';
import drysuit from '../../lessons/drysuit.yaml';
import firstDive from '../../lessons/first-dive.yaml';
import freshLayer from '../../lessons/fresh-layer.yaml';
import gasUsed from '../../lessons/gas-used.yaml';
import hilltop from '../../lessons/hilltop.yaml';
import hover from '../../lessons/hover.yaml';
import kickTest from '../../lessons/kick-test.yaml';
import lastFiveMetres from '../../lessons/last-five-metres.yaml';
import losingLead from '../../lessons/losing-lead.yaml';
import mountainLake from '../../lessons/mountain-lake.yaml';
import oneBreath from '../../lessons/one-breath.yaml';
import positiveNegativeNeutral from '../../lessons/positive-negative-neutral.yaml';
import posture from '../../lessons/posture.yaml';
import retrace from '../../lessons/retrace.yaml';
import runawayDescent from '../../lessons/runaway-descent.yaml';
import seaToLake from '../../lessons/sea-to-lake.yaml';
import stayingUp from '../../lessons/staying-up.yaml';
import stuckInflator from '../../lessons/stuck-inflator.yaml';
import surfaceCheck from '../../lessons/surface-check.yaml';
import twoAndSixKilograms from '../../lessons/two-and-six-kilograms.yaml';
import type { Lesson } from './lesson.ts';

/** Our own lessons in the order of the menu. Their files are complete and held against the reader by a test. */
export const LESSONS = [
  firstDive,
  positiveNegativeNeutral,
  hilltop,
  oneBreath,
  breathReach,
  posture,
  stayingUp,
  surfaceCheck,
  seaToLake,
  gasUsed,
  twoAndSixKilograms,
  descent,
  coarseAndFine,
  hover,
  ascentWithStop,
  lastFiveMetres,
  kickTest,
  runawayDescent,
  stuckInflator,
  losingLead,
  drysuit,
  closedLoop,
  mountainLake,
  freshLayer,
  retrace,
] as readonly Lesson[];
