import { HEAD_OUT_M, type Rig } from '../diver/index.ts';
import { midBreathCl, ventFor, type Controls, type Dive } from '../dive/index.ts';
import { divePosture, type Task } from '../pilot/index.ts';

/** Shallower than the first, deeper than the second, metres, a diver's posture at rest is beyond doubt. */
const UPRIGHT_M = 0.9;
const LEVEL_M = 1.1;

/** What both did in the last row that both have. */
function lastRow(first: Dive, second: Dive, of: 'depthM' | 'pitchSin'): readonly [first: number, second: number] {
  const row = Math.min(first.recording.rows, second.recording.rows) - 1;
  return [first.recording.at(row, of), second.recording.at(row, of)];
}

/**
 * What the hands that gave the first diver these controls do for the second one at his tick: every act goes to both. The breath
 * keeps as far off the middle; who vents takes the vent under which his own gas lies; who rests hangs upright near the surface
 * and lies level below, wherever the other one is. Of two divers who are the same, both get the same to the bit.
 */
export function sameHands(first: Dive, wanted: Controls, second: Dive): Controls {
  const { rig } = second;
  const [pitch, ownPitch] = lastRow(first, second, 'pitchSin');
  const offCl = midBreathCl(rig) - midBreathCl(first.rig);
  const usualVent = wanted.jacketVent === ventFor(pitch);
  return {
    ...wanted,
    lungCl: offCl === 0 ? wanted.lungCl : within(rig, wanted.lungCl + offCl),
    jacketVent: usualVent ? ventFor(ownPitch) : wanted.jacketVent,
    pitchDeg: postureOf(first, wanted, second),
    suitAdd: rig.drysuit ? wanted.suitAdd : 0,
    suitVent: rig.drysuit ? wanted.suitVent : 0,
    diluent: rig.loop ? wanted.diluent : 0,
    noseVent: rig.loop ? wanted.noseVent : 0,
    holdLine: rig.line ? wanted.holdLine : 0,
    releaseMask: wanted.releaseMask & releasable(rig),
  };
}

/** The attitude that is asked for, or that of rest where the two lie on either side of a metre. */
function postureOf(first: Dive, { attitude, pitchDeg }: Controls, second: Dive): number {
  const [depthM, ownM] = lastRow(first, second, 'depthM');
  const sure = depthM < UPRIGHT_M || depthM > LEVEL_M;
  const apart = divePosture(depthM, 0) !== divePosture(ownM, second.controls.pitchDeg);
  const rests = attitude === 0 && pitchDeg === divePosture(depthM, pitchDeg);
  return sure && apart && rests ? divePosture(ownM, second.controls.pitchDeg) : pitchDeg;
}

function within({ lungs }: Rig, lungCl: number): number {
  return Math.min(Math.max(lungCl, Math.ceil(lungs.residualM3 * 1e5)), Math.floor(lungs.totalM3 * 1e5));
}

/** One bit for each piece of lead that can be let go. */
function releasable({ lead }: Rig): number {
  return lead.reduce((mask, piece, i) => (piece.releasable ? mask | (1 << i) : mask), 0);
}

/** What a pilot is to do who keeps to the first diver's depth. */
export function levelWith(first: Dive, second: Dive): Task {
  const [depthM, ownM] = lastRow(first, second, 'depthM');
  if (depthM >= LEVEL_M) return { kind: 'travel', depthM };
  return ownM > HEAD_OUT_M ? { kind: 'surface' } : { kind: 'float' };
}
