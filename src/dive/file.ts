/*
 * The second public door of this room: reading run files. It carries the checks that the first load of the page does without.
 */
export { isDeflated } from './run-bytes.ts';
export { readRun, type RunFile } from './run-read.ts';
