import type { DBSchema } from 'idb';
import type { Setup } from '../diver/index.ts';
import type { ChangeColumns, Run } from '../dive/index.ts';
import type { Answer } from '../lesson/index.ts';
import type { KeptResult } from './result.ts';

/** Dives that are kept at most; the oldest go. */
export const MOST_KEPT = 20;
/** Raise it when one of the records below changes its shape; older shapes are read on, newer ones are left alone. */
export const SHAPE = 5;

/** The second diver of a dive, as far as he does not follow from the first; the app knows what its words mean. */
export interface KeptPair {
  /** What is different about him, and who flies him. */
  readonly difference: string;
  readonly by: string;
  /** His setup, where the difference does not give it. */
  readonly own: Setup | null;
  /** What he has that the first has not, where the difference does not say it. */
  readonly words: string;
}

/** What is kept of a dive beside its run. */
export interface KeptWhat {
  /** Of the setup or the lesson: no names of people. */
  readonly name: string;
  /** Id of a ready setup; empty for one of the person's own. */
  readonly setupId: string;
  readonly setup: Setup | null;
  /** Where free practice was let go, metres; null: it began afloat. */
  readonly letGoM: number | null;
  readonly lessonId: string | null;
  /** Answers of a lesson in their order; what was only read counts as one, null. */
  readonly given: readonly Answer[];
  /** Which flight of the lesson it is, as its hints and gauges have it; missing in records of the first two shapes. */
  readonly attempt?: number;
  readonly projector: boolean;
  /** Who dives beside; null: nobody. Undefined says nothing of it, and leaves what is kept; so do records of the first four shapes. */
  readonly pair?: KeptPair | null | undefined;
}

/** Numbered moments of a line. */
type KeptMarks = readonly { readonly number: number; readonly tick: number; readonly name: string }[];

/** What stands beside the line of a dive: other lines that leave it, bookmarks on it, and the ghost of another dive. */
export interface KeptBeside<D> {
  /** Name of the line that is flown; empty until it was given one. */
  readonly name: string;
  readonly marks: KeptMarks;
  readonly others: readonly {
    readonly letter: string;
    readonly name: string;
    readonly knotTick: number;
    readonly shown: boolean;
    /** Which leaving it was, counted from 1: of too many lines the one that was left longest ago goes. */
    readonly leftAs: number;
    /** Its bookmarks beyond the knot, which come back with it. */
    readonly later: KeptMarks;
    readonly dive: D;
  }[];
  readonly ghost: { readonly name: string; readonly shown: boolean; readonly dive: D } | null;
}

/** A kept dive as a list shows it. */
export interface KeptSummary {
  readonly id: number;
  /** When it was last kept, milliseconds since 1970. */
  readonly savedMs: number;
  readonly name: string;
  readonly lessonId: string | null;
  readonly ticks: number;
  /** It was being flown when it was last kept. */
  readonly inHand: boolean;
  /** Its record is not as we write it: it can be removed, and nothing else. */
  readonly damaged: boolean;
}

/** A kept dive, read and checked. */
export interface KeptDive extends Omit<KeptWhat, 'pair'> {
  readonly id: number;
  readonly turn: number;
  readonly savedMs: number;
  readonly run: Run;
  /** Hash of its last state as it was kept. */
  readonly endHash: string;
  /** Its other lines, bookmarks and ghost; null where there are none. */
  readonly beside: KeptBeside<Run> | 'damaged' | null;
  readonly pair?: KeptPair | 'damaged' | null | undefined;
}

/** The line of a dive: small, written each time. */
export interface DiveRecord extends Omit<KeptWhat, 'setup' | 'letGoM'> {
  readonly id: number;
  readonly shape: number;
  /** How often it was written: who does not know it by that number must not write on. */
  readonly turn: number;
  readonly begunMs: number;
  readonly savedMs: number;
  readonly inHand: boolean;
  readonly ticks: number;
  readonly endHash: string;
}

/** How a dive began: large, written once. */
export interface StartRecord extends Pick<Run, 'rig' | 'start' | 'locked'>, Pick<KeptWhat, 'setup' | 'letGoM'> {
  readonly id: number;
  /** First controls, in the order of their names. */
  readonly controls: readonly number[];
}

/** Changes of controls in the columns of a run file, a stretch of a dive after the other. */
export interface PieceRecord {
  readonly id: number;
  readonly piece: number;
  readonly ticks: readonly number[];
  readonly control: readonly number[];
  readonly by: readonly number[];
}

/** A dive as a whole, in the columns of a run file. */
export interface RunRecord extends Pick<Run, 'rig' | 'start' | 'locked' | 'ticks'> {
  /** First controls, in the order of their names. */
  readonly controls: readonly number[];
  readonly columns: ChangeColumns;
}

/** What stands beside a dive, written when it changes. */
export interface BesideRecord extends KeptBeside<RunRecord> {
  readonly id: number;
}

/** What is in the database. */
export interface KeptSchema extends DBSchema {
  dives: { key: number; value: DiveRecord };
  starts: { key: number; value: StartRecord };
  pieces: { key: [number, number]; value: PieceRecord };
  beside: { key: number; value: BesideRecord };
  results: { key: number; value: KeptResult };
}

/** Whether a record is a dive's line as this version writes it. */
export function isDiveRecord(found: unknown): found is DiveRecord {
  if (typeof found !== 'object' || found === null) return false;
  const { id, shape, turn, savedMs, name, lessonId, ticks, endHash, given } = found as Record<string, unknown>;
  const numbers = [id, turn, savedMs, ticks].every((one) => typeof one === 'number' && Number.isFinite(one));
  const words = typeof name === 'string' && typeof endHash === 'string';
  return (
    numbers &&
    words &&
    isKnownShape(shape) &&
    (lessonId === null || typeof lessonId === 'string') &&
    Array.isArray(given)
  );
}

function isKnownShape(shape: unknown): boolean {
  return typeof shape === 'number' && shape >= 1 && shape <= SHAPE;
}
