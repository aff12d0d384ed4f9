import { Dive } from '../dive/index.ts';
import { readRun } from '../dive/file.ts';
import type { Command } from './command.ts';
import { BadFile, bytesOf } from './files.ts';
import { flightOf } from './flight.ts';
import { DONE, FAILED, printJson, progressOf } from './io.ts';
import { EVERY } from './options.ts';

/** A stored run, dived again. */
export const replay: Command = {
  name: 'replay',
  does: 'dives a saved run again, and says whether it ends as it did',
  options: { every: EVERY },
  things: 'RUN',
  least: 1,
  most: 1,
  more: `Result: that of dive, and hashMet: whether the last state has the hash that the file names. Exit 1 where it has not.`,
  run({ things: [path], numbers: { every = 10 } }, io) {
    const read = readRun(bytesOf(path));
    if ('problems' in read) throw new BadFile(path, read.problems);
    const { run, endHash } = read.file;
    const fromStart = run.changes.map(({ tick, controls }) => ({ tick: tick - run.start.tick, controls }));
    const dived = new Dive(run.rig, run.start, run.changes[0].controls, run.locked);
    const flight = flightOf(dived, fromStart, run.ticks, every, progressOf(io, 'diving'));
    const hashMet = flight.hash === endHash;
    printJson(io, { ...flight, hashMet });
    if (!hashMet) io.err(`${path}: ends with the hash ${flight.hash}; the file names ${endHash}\n`);
    return hashMet ? DONE : FAILED;
  },
};
