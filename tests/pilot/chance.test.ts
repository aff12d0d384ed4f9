import { readFileSync, readdirSync } from 'node:fs';
import { expect, test } from 'vitest';
import { chanceOf } from '../../src/pilot/index.ts';

test('chanceOf() repeats itself for a seed and differs between seeds', () => {
  const draw = (seed: number) => Array.from({ length: 5 }, chanceOf(seed).uniform);
  expect(draw(42)).toEqual(draw(42));
  expect(draw(42)).not.toEqual(draw(43));
});

test('uniform() fills every tenth from 0 to 1 evenly, and nothing else', () => {
  const { uniform } = chanceOf(1);
  const tenths = new Array<number>(10).fill(0);
  for (let i = 0; i < 100_000; i++) tenths[Math.floor(uniform() * 10)]!++;
  expect(tenths).toHaveLength(10);
  // Nine degrees of freedom: chi-square above 27.9 has a chance of 0.001.
  expect(tenths.reduce((sum, n) => sum + (n - 10_000) ** 2 / 10_000, 0)).toBeLessThan(27.9);
});

test('normal() has mean 0, deviation 1, and 68 % within one deviation', () => {
  const { normal } = chanceOf(7);
  const all = Array.from({ length: 50_000 }, normal);
  const mean = all.reduce((sum, x) => sum + x, 0) / all.length;
  const variance = all.reduce((sum, x) => sum + (x - mean) ** 2, 0) / all.length;
  expect(Math.abs(mean)).toBeLessThan(0.02);
  expect(Math.abs(variance - 1)).toBeLessThan(0.03);
  expect(all.filter((x) => Math.abs(x) < 1).length / all.length).toBeCloseTo(0.6827, 1);
});

test('pilots use exactly rounded arithmetic only', () => {
  const folder = new URL('../../src/pilot/', import.meta.url);
  const files = readdirSync(folder).filter((name) => name.endsWith('.ts'));
  expect(files.length).toBeGreaterThan(8);
  for (const name of files) {
    const used = readFileSync(new URL(name, folder), 'utf8').match(/Math\.\w+|\w \*\*=? \w/g) ?? [];
    const inexact = used.filter((word) => !/^Math\.(sqrt|abs|min|max|floor|imul)$/.test(word));
    expect(inexact, name).toEqual([]);
  }
});
