import { problemText, type Problem } from '../diver/file.ts';
import type { Io } from './io.ts';

/** Writes the problems of a file, one a line. */
export function printProblems(io: Io, file: string, problems: readonly Problem[]): void {
  for (const problem of problems) io.err(`${file}: ${problemText(problem)}\n`);
}
