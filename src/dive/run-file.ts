import { gzipSync, strToU8 } from 'fflate';
import { runText, type RunExtra } from './run-text.ts';
import type { Run } from './run.ts';

/**
 * A run as the bytes of a run file: its text, deflated. The same run gives the same bytes; the time is not among them.
 * Reading back is behind the room's second door, `readRun`.
 */
export function writeRun(run: Run, extra: RunExtra): Uint8Array {
  return gzipSync(strToU8(runText(run, extra)), { level: 9, mtime: 0 });
}
