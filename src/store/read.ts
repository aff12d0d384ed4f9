import { changesOf, firstControls, type Run } from '../dive/index.ts';
import { besideOf } from './beside.ts';
import type { Database, Together } from './database.ts';
import {
  isDiveRecord,
  type DiveRecord,
  type KeptDive,
  type KeptSummary,
  type PieceRecord,
  type StartRecord,
} from './kept.ts';
import { pairOf } from './pair.ts';
import { StoreProblem } from './trouble.ts';

/** All pieces of a dive, in order. */
export const piecesOf = (id: number): IDBKeyRange => IDBKeyRange.bound([id, 0], [id, Infinity]);

/** What is kept, the newest first; what is damaged stands last. */
export function listDives(database: Database): Promise<KeptSummary[]> {
  return database.together(async (all) => {
    const ids = await all.objectStore('dives').getAllKeys();
    const found = await Promise.all(ids.map((id) => all.objectStore('dives').get(id)));
    return found.map((record, i) => summaryOf(record, ids[i]!)).sort((a, b) => b.savedMs - a.savedMs || b.id - a.id);
  });
}

function summaryOf(record: unknown, id: number): KeptSummary {
  if (!isDiveRecord(record))
    return { id, savedMs: 0, name: '', lessonId: null, ticks: 0, inHand: false, damaged: true };
  const { savedMs, name, lessonId, ticks, inHand } = record;
  return { id, savedMs, name, lessonId, ticks, inHand, damaged: false };
}

/**
 * A kept dive, checked as a run file is.
 * @throws {StoreProblem} when it is gone or damaged
 */
export async function readDive(database: Database, id: number): Promise<KeptDive> {
  const { line, start, pieces, beside } = await database.together(async (all) => recordsOf(all, id));
  if (line === undefined) throw new StoreProblem('gone');
  if (!isDiveRecord(line) || start === undefined) throw new StoreProblem('damaged');
  try {
    // A dive is worth having without what stands beside it.
    const others = beside ? await besideOf(beside).catch(() => 'damaged' as const) : null;
    return { ...(await keptDive(line, start, pieces)), beside: others, pair: await pairOf(line.pair) };
  } catch (problem) {
    throw new StoreProblem('damaged', problem);
  }
}

async function recordsOf(all: Together, id: number) {
  const [line, start, pieces, beside] = await Promise.all([
    all.objectStore('dives').get(id),
    all.objectStore('starts').get(id),
    all.objectStore('pieces').getAll(piecesOf(id)),
    all.objectStore('beside').get(id),
  ]);
  return { line, start, pieces, beside };
}

async function keptDive(
  line: DiveRecord,
  start: StartRecord,
  pieces: readonly PieceRecord[],
): Promise<Omit<KeptDive, 'beside' | 'pair'>> {
  // Writing it as a run file and reading that holds every number to what a run may have.
  const { readRun, writeRun } = await import('../dive/file.ts');
  const { id, turn, savedMs, name, setupId, lessonId, given, projector, endHash } = line;
  const attempt = Number.isInteger(line.attempt) && line.attempt! > 0 ? line.attempt : 1;
  const { setup, letGoM } = start;
  const read = readRun(writeRun(runOf(line, start, pieces), { name: name || '-', endHash }));
  if ('problems' in read) throw new RangeError(read.problems[0]?.found);
  const { run } = read.file;
  return { id, turn, savedMs, name, setupId, lessonId, given, attempt, projector, setup, letGoM, run, endHash };
}

function runOf(line: DiveRecord, start: StartRecord, pieces: readonly PieceRecord[]): Run {
  if (pieces.some(({ piece }, i) => piece !== i)) throw new RangeError('a piece is missing');
  const columns = {
    ticks: pieces.flatMap(({ ticks }) => ticks),
    control: pieces.flatMap(({ control }) => control),
    by: pieces.flatMap(({ by }) => by),
  };
  const unpacked = changesOf(columns, firstControls(start.controls), start.start.tick, line.ticks);
  if ('fault' in unpacked) throw new RangeError(unpacked.fault.found);
  return { rig: start.rig, start: start.start, changes: unpacked.changes, ticks: line.ticks, locked: start.locked };
}
