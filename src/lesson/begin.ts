import type { Rig, Setup } from '../diver/index.ts';
import { floatingDepthM, type Start } from '../dive/index.ts';
import type { Lesson } from './lesson.ts';

/** A ready setup with what the lesson changes in it. More lead goes on the last piece, which is never let go in our setups. */
export function lessonSetup(lesson: Lesson, ready: Setup): Setup {
  const { moreLeadKg, fillBar, suitThicknessMm, salinityPsu, temperatureC, bottomM } = lesson.setup.changes;
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
  return { ...ready, water, suit, lead, cylinders };
}

/** Where the dive of a lesson begins: afloat and upright, or level and at rest at its depth. */
export function lessonStart(lesson: Lesson, rig: Rig): Start {
  const { start } = lesson;
  const jacketM3 = start.jacketL * 1e-3;
  if (start.place === 'under') return { depthM: start.depthM, jacketM3, pitchDeg: 0 };
  return { depthM: floatingDepthM(rig, jacketM3), jacketM3, pitchDeg: 90 };
}
