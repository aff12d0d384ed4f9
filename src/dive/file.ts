/*
 * The second public door of this room: run files, written and read. It carries what the first load of the page does without: the
 * deflater, and the checks on what is read.
 */
export { isDeflated } from './run-bytes.ts';
export { writeRun } from './run-file.ts';
export { readRun, type RunFile } from './run-read.ts';
export type { RunSecond } from './run-second.ts';
export type { RunExtra } from './run-text.ts';
