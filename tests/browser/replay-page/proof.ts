import { readRun } from '../../../src/dive/file.ts';
import { writeRun } from '../../../src/dive/file.ts';
import { RECORDED, replay, type Dive } from '../../../src/dive/index.ts';
import { scriptedDive, type ScriptName } from './scripts.ts';

/** What two engines must agree on: the run file, the end state, every bit of the recording, and what happened. JSON-safe. */
export interface Proof {
  readonly bytes: number[];
  readonly hash: string;
  readonly recording: string;
  readonly rows: number;
  readonly events: string;
}

/** A script, dived as a person would dive it: controls set tick by tick, then the run written. */
export async function recorded(script: ScriptName): Promise<Proof> {
  const dive = scriptedDive(script);
  const bytes = writeRun(dive.run(), { name: script, endHash: dive.hash() });
  return { bytes: [...bytes], ...(await proofOf(dive)) };
}

/** A run file, dived again. */
export async function replayed(bytes: Uint8Array): Promise<Proof> {
  const read = readRun(bytes);
  if ('problems' in read) throw new Error(JSON.stringify(read.problems));
  return { bytes: [...bytes], ...(await proofOf(replay(read.file.run))) };
}

async function proofOf(dive: Dive): Promise<Omit<Proof, 'bytes'>> {
  const { recording } = dive;
  const all = new Float64Array(RECORDED.length * recording.rows);
  RECORDED.forEach((name, i) => all.set(recording.column(name), i * recording.rows));
  const digest = new Uint8Array(await crypto.subtle.digest('SHA-256', all.buffer));
  return {
    hash: dive.hash(),
    recording: Array.from(digest, (byte) => byte.toString(16).padStart(2, '0')).join(''),
    rows: recording.rows,
    events: JSON.stringify(dive.events),
  };
}
