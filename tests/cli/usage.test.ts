import { describe, expect, test } from 'vitest';
import { COMMANDS } from '../../src/cli/run-command.ts';
import { ran, useFolder } from './fixture.ts';

const file = useFolder();
const WATER = ['water', '--salinity', '35', '--temperature', '15', '--depth'];

describe('wrong usage exits 2 with one line that says what was found and what is allowed', () => {
  test.each<[what: string, words: string[], says: RegExp]>([
    ['no command', [], /command is missing.*water, forces/],
    ['a command that there is none of', ['watter'], /"watter": write water/],
    ['a number that is text', [...WATER, 'deep'], /--depth: found "deep"; allowed: a number from 0 to 150/],
    ['a number with a comma', [...WATER, '1,5'], /found "1,5"/],
    ['a number with its unit', [...WATER, '5m'], /found "5m"/],
    ['a hexadecimal number', [...WATER, '0x10'], /found "0x10"/],
    ['an empty number', [...WATER, ''], /--depth: found ""/],
    ['endless', [...WATER, 'Infinity'], /found "Infinity"/],
    ['a number too large to hold', [...WATER, '1e999'], /found "1e999"/],
    ['a number out of range', [...WATER, '-0.1'], /found "-0.1"; allowed: a number from 0 to 150/],
    ['salinity out of range', ['water', '--salinity', '43', '--temperature', '5', '--depth', '1'], /from 0 to 42/],
    ['an option without its value', [...WATER], /--depth: found nothing/],
    ['an option that is missing', ['water', '--salinity', '35', '--depth', '5'], /--temperature is missing/],
    ['an option that there is none of', [...WATER, '5', '--altitud', '3'], /--altitud: write --altitude/],
    ['a thing too many', [...WATER, '5', 'pool'], /found "pool"; allowed: options only/],
    ['a thing too few', ['weigh'], /SETUP is missing/],
    ['two setups', ['weigh', 'pool', 'twin'], /found "twin"/],
    ['a setup that there is none of', ['weigh', 'temperate-see'], /"temperate-see": write temperate-sea/],
    ['a setup far from all', ['weigh', 'qqq'], /one of first-dive, pool/],
    ['a file that there is none of', ['weigh', 'no/such/file.yaml'], /found no setup "no\/such\/file.yaml"/],
    ['a folder', ['weigh', 'src'], /a folder/],
    [
      'more lungs than the chest holds',
      ['forces', 'pool', '--depth', '1', '--lungs', '7'],
      /"7"; allowed: from 1.5 to 6.3/,
    ],
    ['fewer lungs than stay', ['weigh', 'pool', '--lungs', '1'], /"1"; allowed: from 1.5 to 6.3/],
    ['more gas than the jacket holds', ['forces', 'pool', '--depth', '1', '--jacket', '30'], /what the jacket holds/],
    ['suit gas without a drysuit', ['forces', 'pool', '--depth', '1', '--suit-gas', '3'], /has no drysuit/],
    ['more gas than the suit holds', ['forces', 'drysuit-foam', '--depth', '1', '--suit-gas', '90'], /the suit holds/],
    ['lungs on a closed loop', ['forces', 'closed-loop', '--depth', '1', '--lungs', '3'], /closed loop/],
    [
      'lungs of a dive on a closed loop',
      ['dive', 'closed-loop', '--from', '1', '--seconds', '1', '--lungs', '3'],
      /loop/,
    ],
    ['a cylinder past the law of gas', ['forces', 'pool', '--depth', '1', '--cylinder', '400'], /from 0 to 328/],
    ['a start below the bottom', ['dive', 'pool', '--from', '5', '--seconds', '1'], /"5"; allowed: from -0.6 to 4/],
    ['a dive without end', ['dive', 'pool', '--from', '1', '--seconds', '1e6'], /from 0 to 21600/],
    ['samples without end', ['dive', 'pool', '--from', '1', '--seconds', '1', '--every', '0'], /from 0.1/],
    [
      'a value for what takes none',
      ['dive', 'pool', '--from', '1', '--seconds', '1', '--level=yes'],
      /--level: found "yes"/,
    ],
    [
      'controls without a file',
      ['dive', 'pool', '--from', '1', '--seconds', '1', '--controls'],
      /--controls: found nothing/,
    ],
    [
      'controls of no file',
      ['dive', 'pool', '--from', '1', '--seconds', '1', '--controls', 'none.yaml'],
      /"none.yaml"/,
    ],
    [
      'a place that cannot be written',
      ['dive', 'pool', '--from', '1', '--seconds', '1', '--save', 'no/such/a'],
      /written/,
    ],
    ['a run that there is none of', ['replay', 'none.run'], /found no file "none.run"/],
    ['nothing to check', ['check'], /FILE… is missing/],
    ['an inherited name as an option', [...WATER, '5', '--constructor'], /unknown option --constructor/],
    ['an inherited name as a command', ['toString'], /found no command "toString"/],
  ])('%s', (_, words, says) => {
    const { code, out, err } = ran(...words);
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toMatch(says);
    expect(err.match(/\n/g)).toHaveLength(1);
  });
});

describe('--help', () => {
  test('of the whole names every command, the exit codes and what the model is not for', () => {
    const { code, out, err } = ran('--help');
    expect([code, err]).toEqual([0, '']);
    for (const { name } of COMMANDS) expect(out).toContain(`  ${name}`);
    expect(out).toMatch(/Exit: 0 .* 1 .* 2 /);
    expect(out).toContain('Not for planning dives, choosing lead or handling emergencies');
    expect(ran('-h').out).toBe(out);
  });

  test.each(COMMANDS.map(({ name }) => name))(
    'of %s shows how to call it and every option, and does nothing',
    (name) => {
      const { code, out, err } = ran(name, 'no-such-thing', '--help');
      expect([code, err]).toEqual([0, '']);
      expect(out).toContain(`midwater -- ${name}`);
      for (const option of Object.keys(COMMANDS.find((one) => one.name === name)!.options))
        expect(out).toMatch(new RegExp(`\\n {2}--${option} .*\\w`));
    },
  );
});

test('a setup file that is bad is told problem by problem, exit 1', () => {
  const { code, out, err } = ran(
    'weigh',
    file('bad.yaml', 'format: 1\ndiver:\n  masKg: 80\nlead:\n  - { massKg: -2 }\n'),
  );
  expect([code, out]).toEqual([1, '']);
  const lines = err.trim().split('\n');
  expect(lines).toHaveLength(2);
  expect(lines[0]).toMatch(/bad\.yaml: line 3: diver\.masKg: found .*; allowed: .*Write massKg/);
  expect(lines[1]).toMatch(/line 5: lead\[0\]\.massKg: found -2; allowed: a number from 0\.05 to 20/);
});
