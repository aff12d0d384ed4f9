import { StoreProblem } from '../store/index.ts';

/** What went wrong, as a sentence. */
export function storeWords(problem: unknown): string {
  return problem instanceof StoreProblem
    ? problem.message
    : 'What is kept in this browser could not be read or written.';
}
