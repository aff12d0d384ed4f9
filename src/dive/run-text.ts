import { hashOf } from './hash.ts';
import { CONTROL_NAMES } from './controls.ts';
import { columnsOf } from './run-columns.ts';
import type { RunSecond } from './run-second.ts';
import { replay, type Run } from './run.ts';
import { stateNumbers } from './state.ts';

/** What marks a text as a run file, and the version of its shape. Raise it when controls or state numbers change. */
export const RUN_FORMAT = 'midwater run';
export const RUN_VERSION = 4;
/** How many controls there were in each version: those that a run of an older one does not have are at rest in it. */
export const CONTROLS_IN_VERSION = { 1: 17, 2: 21, 3: 21, 4: 22 } as const;
/** On every how many ticks controls changed in each version: a press waited for the next twentieth of a second, and does no more. */
export const TICKS_IN_VERSION = { 1: 6, 2: 6, 3: 1, 4: 1 } as const;

/** What a run file says beside the run itself. */
export interface RunExtra {
  /** For the person who looks for it later: no names of people. */
  readonly name: string;
  readonly lessonId?: string;
  /** The simulated diver that dived it, and the seed of its chance. */
  readonly pilot?: string;
  readonly seed?: number;
  /** Who dives beside. A key that may be left out: what is dived alone is read by whoever reads this version. */
  readonly second?: RunSecond | undefined;
  /** Hash of the state at the end as the dive had it; left out, the run is dived again for it. */
  readonly endHash?: string;
}

/**
 * The text of a run file: JSON with each key of the outermost group on a line of its own. Every number is written with as many
 * digits as bring back the same bits, −0 included.
 */
export function runText(run: Run, extra: RunExtra): string {
  const first = run.changes[0]!.controls;
  const { endHash, name, lessonId, pilot, seed, second } = extra;
  const whole = {
    format: RUN_FORMAT,
    version: RUN_VERSION,
    name,
    lessonId,
    pilot,
    seed,
    second,
    ticks: run.ticks,
    locked: run.locked,
    endHash: endHash ?? hashOf(replay(run).state),
    start: stateNumbers(run.start),
    rig: run.rig,
    controls: CONTROL_NAMES.map((control) => first[control]),
    changes: columnsOf(run),
  };
  const lines = Object.entries(whole)
    .filter(([, value]) => value !== undefined)
    .map(([key, value]) => `${JSON.stringify(key)}: ${jsonOf(value)}`);
  return `{\n${lines.join(',\n')}\n}\n`;
}

/** JSON of plain data, with −0 kept. */
function jsonOf(value: unknown): string {
  if (Object.is(value, -0)) return '-0';
  if (Array.isArray(value)) return `[${value.map(jsonOf).join(',')}]`;
  if (typeof value !== 'object' || value === null) return JSON.stringify(value);
  const entries = Object.entries(value).filter(([, inner]) => inner !== undefined);
  return `{${entries.map(([key, inner]) => `${JSON.stringify(key)}:${jsonOf(inner)}`).join(',')}}`;
}
