import type { Recording } from '../dive/index.ts';
import { leadChangesOf } from './quantity.ts';
import type { FlyStep } from './lesson.ts';
import type { FlownPhase } from './run.ts';
import { plain } from './words.ts';

/** Whether lead comes off and on in a step. */
export function byHand({ keep }: FlyStep): boolean {
  return keep.some((one) => one.do === 'lead-changes' && one.most > 0);
}

/** What is worn, and how often it was changed: "4.25 kg, 3 of 6 changes". */
export function handWords(step: FlyStep, phase: FlownPhase, recording: Recording, row: number): string {
  const most = step.keep.find((one) => one.do === 'lead-changes')?.most ?? 0;
  const kg = plain(Math.round(recording.at(row, 'leadKg') * 100) / 100);
  return `${kg} kg, ${leadChangesOf(recording, phase.fromRow, row).length} of ${most} changes`;
}
