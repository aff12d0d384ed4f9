import { readYaml, readSetup, type Problem } from '../diver/file.ts';
import { isDeflated, readRun } from '../dive/file.ts';
import { isBenchLesson, readBenchLesson, readLesson } from '../lesson/file.ts';
import type { Command } from './command.ts';
import { readControls } from './controls-file.ts';
import { bytesOf } from './files.ts';
import { DONE, FAILED, printJson } from './io.ts';
import { printProblems } from './problem-lines.ts';

/** Files that people wrote or saved, judged. */
export const check: Command = {
  name: 'check',
  does: 'what is wrong in setup, lesson, run and controls files; what a file is, is told from its content',
  options: {},
  things: 'FILE…',
  least: 1,
  most: 10_000,
  more: `Result: { problems: [{ file, line, path, found, allowed, suggestion }] }. Exit 1 where there are any. A controls file is
checked for itself; whether the kit has what it works is known once it is dived.`,
  run({ things }, io) {
    const problems = things.flatMap((file) => problemsOf(bytesOf(file)).map((problem) => ({ file, ...problem })));
    printJson(io, { problems });
    for (const { file, ...problem } of problems) printProblems(io, file, [problem]);
    return problems.length === 0 ? DONE : FAILED;
  },
};

/** What is wrong in a file, whatever kind it is. A run is JSON or deflated; a list is one of controls. */
function problemsOf(bytes: Uint8Array): readonly Problem[] {
  const text = new TextDecoder().decode(bytes);
  // A run is JSON whose format is a name; the format of setups and lessons is a number.
  const isRun = isDeflated(bytes) || (/^\s*\{/.test(text) && /"format"\s*:\s*"/.test(text));
  const read = isRun ? readRun(bytes) : readWritten(text);
  return 'problems' in read ? read.problems : [];
}

function readWritten(text: string) {
  const yaml = readYaml(text);
  if (!('value' in yaml)) return yaml;
  if (Array.isArray(yaml.value)) return readControls(text);
  if (isBenchLesson(yaml.value)) return readBenchLesson(text);
  return isLesson(yaml.value) ? readLesson(text) : readSetup(text);
}

/** Whether more of the outermost keys are those of a lesson than of a setup. */
function isLesson(value: unknown): boolean {
  if (typeof value !== 'object' || value === null) return false;
  const keys = Object.keys(value);
  const count = (known: ReadonlySet<string>) => keys.filter((key) => known.has(key)).length;
  return count(LESSON_KEYS) > count(SETUP_KEYS);
}

const LESSON_KEYS = new Set(
  'id title minutes phase paths opens beliefs objective caution values setup start gauges steps marks markLimits rightAtLeast proof waterAdds'.split(
    ' ',
  ),
);
const SETUP_KEYS = new Set(
  'name note water diver suit jacket cylinders lead other apparatus loop hydrodynamics'.split(' '),
);
