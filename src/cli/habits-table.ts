import { habitsTable } from '../lesson/index.ts';
import type { Command } from './command.ts';
import { DONE, printJson } from './io.ts';
import { TRIAL_FILES, TRIAL_OPTIONS, trialResults } from './trials.ts';

/** How often each habit is found in who has it, and in who has not. */
export const habitsTableCommand: Command = {
  name: 'habits-table',
  does: 'how often each habit is found in who has it, and in who has not',
  options: TRIAL_OPTIONS,
  things: '[RESULT …]',
  least: 0,
  most: 100,
  more: `${TRIAL_FILES}
Result: { cells, rows: [{ habit, name, pilot, tasks, flights, hitsPercent, hitsByTask, falsePercent, falseWorst,
learnerPercent, states }] }. states: 95 % of hits and 5 % of false alarms; otherwise the program only asks. It tries
detectors on simulated divers; it says nothing about people.`,
  run(asked, io) {
    const results = trialResults(asked, io);
    printJson(io, {
      cells: results.map(({ cell, seeds, fromSeed }) => ({ cell, seeds, fromSeed })),
      rows: habitsTable(results),
    });
    return DONE;
  },
};
