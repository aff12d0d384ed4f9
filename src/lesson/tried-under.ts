import type { BenchLesson } from './bench-lesson.ts';
import { hashOfText } from './text-hash.ts';

/** What a lesson at the bench is tried under, as a hash: its things and what its tries ask of them. Words and questions do not count. */
export function triedUnder({ id, bench, steps }: BenchLesson): string {
  const tries = steps.flatMap((step) => (step.kind === 'try' ? [step.each.map(({ all, forS }) => [all, forS])] : []));
  return hashOfText(JSON.stringify([id, bench, tries]));
}
