import type { Rig, Setup } from '../diver/index.ts';
import { floatingDepthM, type Start } from '../dive/index.ts';
import { chanceOf, type Chance } from '../pilot/index.ts';
import { neutralJacketM3 } from './carrying.ts';
import type { Lesson } from './lesson.ts';
import type { LessonStart, StartUnder } from './start.ts';

/** A ready setup with what the lesson changes in it. More lead goes on the last piece, which is never let go in our setups. */
export function lessonSetup(lesson: Lesson, ready: Setup): Setup {
  const { moreLeadKg, leadPieceKg, fillBar, suitThicknessMm, salinityPsu, temperatureC, bottomM } =
    lesson.setup.changes;
  const water = {
    ...ready.water,
    ...(salinityPsu === undefined ? {} : { salinityPsu }),
    ...(temperatureC === undefined ? {} : { temperatureC }),
    ...(bottomM === undefined ? {} : { bottomM }),
  };
  const suit =
    suitThicknessMm === undefined || ready.suit.kind === 'none'
      ? ready.suit
      : { ...ready.suit, thicknessMm: suitThicknessMm };
  const lead = ready.lead.map((piece, i) =>
    i === ready.lead.length - 1 ? { ...piece, massKg: Math.max(0.05, piece.massKg + (moreLeadKg ?? 0)) } : piece,
  );
  const cylinders = ready.cylinders.map((cylinder) => (fillBar === undefined ? cylinder : { ...cylinder, fillBar }));
  return { ...ready, water, suit, lead: leadPieceKg === undefined ? lead : inPieces(lead, leadPieceKg), cylinders };
}

/** No belt has more pieces: a run keeps a bit for each. */
const MOST_PIECES = 24;

function inPieces(lead: Setup['lead'], pieceKg: number): Setup['lead'] {
  const sumKg = lead.reduce((kg, { massKg }) => kg + massKg, 0);
  const count = Math.min(MOST_PIECES, Math.floor(sumKg / pieceKg + 1e-9));
  const restKg = sumKg - count * pieceKg;
  const piece = { massKg: pieceKg, place: 'belt', releasable: true } as const;
  const rest = { massKg: restKg, place: 'back', releasable: false } as const;
  return [...Array.from({ length: count }, () => piece), ...(restKg > 1e-9 ? [rest] : [])];
}

/**
 * Where a dive of a lesson begins: afloat and upright, or under water.
 * @param seed of what is left to chance in it
 * @param start another place than the lesson's own
 */
export function lessonStart(lesson: Lesson, rig: Rig, seed = 1, start: LessonStart = lesson.start): Start {
  if (start.place === 'afloat') {
    const jacketM3 = start.jacketL * 1e-3;
    return { depthM: floatingDepthM(rig, jacketM3), jacketM3, pitchDeg: 90 };
  }
  const { depthM, pitchDeg, speedMpmin } = start;
  return { depthM, jacketM3: startJacketM3(rig, start, seed), pitchDeg, speedMps: speedMpmin / 60 };
}

/** Gas in the jacket at a start under water, m³, brought between what never leaves it and its capacity. */
function startJacketM3(rig: Rig, { gas, depthM }: StartUnder, seed: number): number {
  if ('jacketL' in gas) return gas.jacketL * 1e-3;
  const chance = chanceOf(seed);
  const offL = 'offNeutralL' in gas ? gas.offNeutralL : wrongL(gas.wrongByL, chance);
  const { residualM3, capacityM3 } = rig.jacket;
  return Math.min(Math.max(neutralJacketM3(rig, depthM) + offL * 1e-3, residualM3), capacityM3);
}

function wrongL([least, most]: readonly [number, number], chance: Chance): number {
  const sign = chance.uniform() < 0.5 ? -1 : 1;
  return sign * (least + (most - least) * chance.uniform());
}
