/*
 * The command: `npm run --silent midwater -- …`. All it does is in run-command.ts; here it meets the process.
 */
import { runCommand } from './run-command.ts';

process.exitCode = runCommand(process.argv.slice(2), {
  out: (text) => process.stdout.write(text),
  err: (text) => process.stderr.write(text),
  isWatched: process.stderr.isTTY === true,
});
