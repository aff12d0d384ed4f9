import type { Rig } from '../diver/index.ts';
import { Dive, TICKS_PER_S, midBreathCl, restingControls, startState, type Controls } from '../dive/index.ts';
import type { Command } from './command.ts';
import { mishapsOf, readControls, steeringOf } from './controls-file.ts';
import { LATEST_S } from './controls-schema.ts';
import { BadFile, rigAt, textOf } from './files.ts';
import { flightOf } from './flight.ts';
import { DONE, printJson, progressOf } from './io.ts';
import { EVERY, LUNGS, lungsM3 } from './options.ts';
import { SAVE, saveRun } from './save-run.ts';
import { within } from './usage.ts';

/** The shallowest start: level at the surface, floating high. */
const SHALLOWEST_M = -0.6;

/** A dive from rest, under the controls of a file or none. */
export const dive: Command = {
  name: 'dive',
  does: 'a dive from rest: where the diver is at even distances of time, and what happened',
  options: {
    from: { kind: 'number', least: SHALLOWEST_M, most: 150, says: 'metres at the start', needed: true },
    seconds: { kind: 'number', least: 0, most: LATEST_S, says: 'length of the dive', needed: true },
    every: EVERY,
    lungs: { ...LUNGS, says: 'litres held in the lungs with the airway open; left out: breathing about mid-breath' },
    level: { kind: 'flag', says: 'the diver stays level whatever the controls say' },
    controls: { kind: 'text', shows: 'a file', says: 'what the diver does and what goes wrong: see src/cli/README.md' },
    save: SAVE,
  },
  things: 'SETUP',
  least: 1,
  most: 1,
  more: `Result: { samples: [{ tS, depthM, speedMps, pitchDeg, lungsL, jacketL, suitL, cylinderBar, netN }], events: [{ tS, kind, … }],
hash }. Depth and speed are positive down, force up; cylinderBar is gauge. Level and at rest at the start, jacket and suit gas
as in the setup at that depth, cylinders as filled.`,
  run(asked, io) {
    const rig = rigAt(asked.things[0]);
    const { from, seconds, every = 10 } = asked.numbers;
    const depthM = within('--from', from!, SHALLOWEST_M, rig.bottomM, 'the bottom of this setup');
    const lungM3 = lungsM3(asked, rig);
    const first = controlsAtStart(rig, lungM3);
    const given = asked.texts['controls'] === undefined ? [] : controlsIn(asked.texts['controls'], rig);
    const changes = steeringOf(given, first);
    // Of the lungs only whole centilitres can be commanded: the dive begins with exactly those.
    const start = startState(rig, { depthM, ...(lungM3 === undefined ? {} : { lungM3: first.lungCl * 1e-5 }) });
    const dived = new Dive(rig, start, changes[0].controls, asked.flags.has('level'));
    const ticks = Math.round(seconds! * TICKS_PER_S);
    const flight = flightOf(dived, changes, ticks, every, progressOf(io, 'diving'), mishapsOf(given));
    saveRun(asked.texts['save'], dived, { name: rig.name });
    printJson(io, flight);
    return DONE;
  },
};

function controlsAtStart(rig: Rig, lungM3: number | undefined): Controls {
  if (lungM3 === undefined) return restingControls(midBreathCl(rig));
  return { ...restingControls(Math.round(lungM3 * 1e5)), breath: 1 };
}

function controlsIn(path: string, rig: Rig) {
  const read = readControls(textOf(path), rig);
  if ('problems' in read) throw new BadFile(path, read.problems);
  return read.given;
}
