import { acceptance, markRanges } from '../lesson/index.ts';
import type { Command } from './command.ts';
import { DONE, FAILED, printJson } from './io.ts';
import { TRIAL_FILES, TRIAL_OPTIONS, trialResults } from './trials.ts';

/** What is demanded of marks, tried with every pilot in many kits. */
export const accept: Command = {
  name: 'accept',
  does: 'whether marks tell skill from habit, luck and tricks: every pilot in many kits',
  options: TRIAL_OPTIONS,
  things: '[RESULT …]',
  least: 0,
  most: 100,
  more: `Tasks: hover, ascent, descent, the first dive. Kits "tuning" are those on which pilots, marks and limits were settled; "unseen" ones were flown last.
${TRIAL_FILES}
Result: { met, demands: [{ demand, task, mark, value, cell, limit, met }],
marks: [{ task, mark, pilot, flights, lowestMean, highestMean, least, most }],
results: [{ cell, use, seeds, fromSeed, rows, above }] };
value is the worst over the kits, in points of 100 or as a chance. Exit 0 where every demand is met. It tries the logic of
marks on simulated divers; it says nothing about people.`,
  run(asked, io) {
    const results = trialResults(asked, io);
    const demands = acceptance(results);
    const met = demands.every((one) => one.met);
    printJson(io, { met, demands, marks: markRanges(results), results });
    return met ? DONE : FAILED;
  },
};
