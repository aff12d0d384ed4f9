import { nearest } from '../diver/file.ts';
import { accept } from './accept.ts';
import { check } from './check.ts';
import type { Command } from './command.ts';
import { dive } from './dive.ts';
import { BadFile } from './files.ts';
import { forces } from './forces.ts';
import { habitsTableCommand } from './habits-table.ts';
import { helpOf, helpOfAll } from './help.ts';
import { DONE, FAILED, WRONG_USAGE, type ExitCode, type Io } from './io.ts';
import { insight } from './insight.ts';
import { lesson } from './lesson.ts';
import { map } from './map.ts';
import { printProblems } from './problem-lines.ts';
import { replay } from './replay.ts';
import { UsageError, asked } from './usage.ts';
import { water } from './water.ts';
import { weigh } from './weigh.ts';

/** Every command, in the order of the help. */
export const COMMANDS: readonly Command[] = [
  water,
  forces,
  weigh,
  insight,
  map,
  dive,
  replay,
  lesson,
  accept,
  habitsTableCommand,
  check,
];

/**
 * Runs the command that the words ask for: results go to `io.out`, problems one a line to `io.err`.
 * @returns the exit code; never throws for what a person wrote
 */
export function runCommand(words: readonly string[], io: Io): ExitCode {
  const [name, ...rest] = words;
  if (name === '--help' || name === '-h' || name === 'help') {
    io.out(helpOfAll(COMMANDS));
    return DONE;
  }
  const command = COMMANDS.find((one) => one.name === name);
  if (!command) {
    io.err(`${unknownCommand(name)}\n`);
    return WRONG_USAGE;
  }
  if (rest.includes('--help') || rest.includes('-h')) {
    io.out(helpOf(command));
    return DONE;
  }
  try {
    return command.run(asked(rest, command), io);
  } catch (problem) {
    if (problem instanceof UsageError) {
      io.err(`${command.name}: ${problem.message}\n`);
      return WRONG_USAGE;
    }
    if (!(problem instanceof BadFile)) throw problem;
    printProblems(io, problem.file, problem.problems);
    return FAILED;
  }
}

function unknownCommand(name: string | undefined): string {
  const names = COMMANDS.map((command) => command.name);
  if (name === undefined) return `a command is missing; allowed: ${names.join(', ')}; --help says more`;
  const near = nearest(name, names);
  return `found no command ${JSON.stringify(name)}${near ? `: write ${near}` : ''}; allowed: ${names.join(', ')}`;
}
