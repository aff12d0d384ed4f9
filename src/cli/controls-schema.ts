import * as v from 'valibot';
import { bounded, choice, group, number, yesNo } from '../diver/file.ts';
import { CONTROL_RANGES, MISHAP_RANGES } from '../dive/index.ts';

/** The latest second that a controls file may speak of: runs end there. */
export const LATEST_S = 6 * 3600;

const [leastFinsN, mostFinsN] = CONTROL_RANGES.finsN;
const [leastPitchDeg, mostPitchDeg] = CONTROL_RANGES.pitchDeg;
const [leastTorqueNm, mostTorqueNm] = CONTROL_RANGES.torqueNm;

const say = (allowed: string, suggestion: string) => `${allowed}\n${suggestion}`;
const PIECES = say('a list of pieces of lead, the first is 1', 'Write release: [1, 2]');

/**
 * One change: from this second on. Units are in the keys; what is left out stays as it was. The last four are no controls: they
 * go wrong at that second and are over by themselves.
 */
const change = group({
  tS: bounded(0, LATEST_S),
  jacketAdd: yesNo(),
  jacketVent: choice(['shut', 'shoulder', 'rear']),
  oral: yesNo(),
  suitAdd: yesNo(),
  suitVent: yesNo(),
  suitValveKPa: number(0, CONTROL_RANGES.suitValveHPa[1] / 10),
  breath: choice(['automatic', 'direct', 'held']),
  lungsL: number(0, CONTROL_RANGES.lungCl[1] / 100),
  finsN: number(leastFinsN, mostFinsN),
  pitchDeg: number(leastPitchDeg, mostPitchDeg),
  torqueNm: number(leastTorqueNm, mostTorqueNm),
  release: v.optional(v.pipe(v.array(v.pipe(v.number(PIECES), v.integer(PIECES), v.minValue(1, PIECES)), PIECES))),
  takeOff: number(1, CONTROL_RANGES.handLead[1]),
  putOn: number(1, CONTROL_RANGES.handLead[1]),
  diluent: yesNo(),
  noseVent: yesNo(),
  holdLine: yesNo(),
  ledge: yesNo(),
  nudgeNs: number(...MISHAP_RANGES.upNs),
  currentMpmin: number(MISHAP_RANGES.downMps[0] * 60, MISHAP_RANGES.downMps[1] * 60),
  currentS: number(...MISHAP_RANGES.forS),
  gasLeftBar: number(...MISHAP_RANGES.leftBar),
});

/** A controls file: a list of changes in order of time. */
export const controlsSchema = v.pipe(
  v.array(change, say('a list of changes', 'Begin each with a dash: - { tS: 5, jacketAdd: true }')),
  v.maxLength(100_000, say('at most 100000 changes', 'Write fewer')),
);

/** One change as a file gives it, checked key by key. */
export type GivenChange = v.InferOutput<typeof change>;
