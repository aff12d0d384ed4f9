import type { Command } from './command.ts';
import { CAUTION } from './io.ts';
import type { Option } from './usage.ts';

const CALL = 'npm run --silent midwater --';

/** The help of the whole command. */
export function helpOfAll(commands: readonly Command[]): string {
  const widest = Math.max(...commands.map(({ name }) => name.length));
  return `Midwater without a screen: results as JSON, problems one a line on stderr.

  ${CALL} COMMAND …

${commands.map(({ name, does }) => `  ${name.padEnd(widest)}  ${does}`).join('\n')}

--help after a command says more. A SETUP is a file or the name of a ready setup, such as temperate-sea.
Exit: 0 done; 1 what was judged failed, or a file is bad; 2 asked wrongly.
${CAUTION}
`;
}

/** The help of one command. */
export function helpOf(command: Command): string {
  const options = Object.entries(command.options);
  const shown = options.map(([name, option]) => `--${name}${valueOf(option)}`);
  const widest = Math.max(0, ...shown.map(({ length }) => length));
  const call = options.map(([name, option]) => {
    const text = `--${name}${valueOf(option)}`;
    return option.kind !== 'flag' && option.needed ? text : `[${text}]`;
  });
  const lines = options.map(([, option], i) => `  ${shown[i].padEnd(widest)}  ${option.says}${rangeOf(option)}`);
  return `${command.name}: ${command.does}

  ${[CALL, command.name, command.things, ...call].filter(Boolean).join(' ')}

${lines.length > 0 ? `${lines.join('\n')}\n\n` : ''}${command.more}
`;
}

function valueOf(option: Option): string {
  if (option.kind === 'flag') return '';
  return option.kind === 'number' ? ' N' : ` ${option.shows.replace(/^an? /, '').toUpperCase()}`;
}

function rangeOf(option: Option): string {
  return option.kind === 'number' ? ` (${option.least} to ${option.most})` : '';
}
