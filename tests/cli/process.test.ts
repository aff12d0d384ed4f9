import { spawn } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { ran, useFolder, type Ran } from './fixture.ts';

const home = fileURLToPath(new URL('../..', import.meta.url));
const file = useFolder();

/** The command as people run it: a process of its own, through npm. */
function spawned(...words: string[]): Promise<Ran> {
  return new Promise((done, failed) => {
    const child = spawn('npm', ['run', '--silent', 'midwater', '--', ...words], {
      cwd: home,
      shell: process.platform === 'win32',
    });
    let out = '';
    let err = '';
    child.stdout.on('data', (piece: Buffer) => (out += piece.toString('utf8')));
    child.stderr.on('data', (piece: Buffer) => (err += piece.toString('utf8')));
    child.on('error', failed);
    child.on('close', (code) => done({ code: code ?? -1, out, err }));
  });
}

describe('npm run --silent midwater', () => {
  const run = file('process.run');
  test.each<[what: string, words: string[], code: number]>([
    ['its help', ['--help'], 0],
    ['a result', ['water', '--salinity', '35', '--temperature', '15', '--depth', '20'], 0],
    ['a number below zero', ['water', '--salinity', '35', '--temperature', '-1', '--depth', '0'], 0],
    ['a ready setup', ['weigh', 'temperate-sea'], 0],
    ['a dive, saved', ['dive', 'drysuit-membrane', '--from', '3', '--seconds', '20', '--level', '--save', run], 0],
    ['that dive, replayed', ['replay', run], 0],
    ['a lesson, flown', ['lesson', 'first-dive', '--pilot', 'steady', '--seed', '2'], 0],
    ['a bad file', ['check', file('bad.yaml', 'water: 3\n')], 1],
    ['wrong usage', ['forces', 'temperate-sea', '--depth', 'ten'], 2],
    ['no words', [], 2],
  ])('gives %s, the same as in this process', { timeout: 60_000 }, async (_, words, code) => {
    const there = await spawned(...words);
    expect(there.code).toBe(code);
    expect(there).toEqual(ran(...words));
    if (code === 0 && words[0] !== '--help') expect(() => JSON.parse(there.out) as unknown).not.toThrow();
  });
});
