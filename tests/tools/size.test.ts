import { expect, test } from 'vitest';
import { limitsKb, measure, rowsOf, type Manifest } from '../../tools/size-of-build.ts';

const manifest: Manifest = {
  'index.html': { file: 'main.js', isEntry: true, imports: ['_shared.js'], css: ['main.css'] },
  '_shared.js': { file: 'shared.js', css: ['shared.css'] },
  'src/app/fly.ts': { file: 'fly.js', imports: ['_shared.js', '_pixi.js'], css: ['fly.css'] },
  '_pixi.js': { file: 'pixi.js' },
  'src/app/plots.ts': { file: 'plots.js' },
};
const bytes: Record<string, number> = {
  'index.html': 1_000,
  'main.js': 20_000,
  'main.css': 2_000,
  'shared.js': 5_000,
  'shared.css': 500,
  'fly.js': 30_000,
  'pixi.js': 110_000,
};

test('measure() counts page, scripts and styles before the first paint', () => {
  expect(measure(manifest, (file) => bytes[file]!).shellKb).toBeCloseTo(28.5, 9);
});

test('measure() counts each script until flying once and leaves what is loaded later', () => {
  expect(measure(manifest, (file) => bytes[file]!).flyingKb).toBeCloseTo(165, 9);
});

test('measure() counts the larger of the two renderers, with what it brings', () => {
  const both = {
    ...manifest,
    'src/stage/webgl.ts': { file: 'webgl.js', imports: ['_shaders.js', '_pixi.js'] },
    'src/stage/canvas.ts': { file: 'canvas.js', imports: ['_pixi.js'] },
    '_shaders.js': { file: 'shaders.js' },
  };
  const sizes = { ...bytes, 'webgl.js': 9_000, 'shaders.js': 4_000, 'canvas.js': 7_000 };
  expect(measure(both, (file) => sizes[file as keyof typeof sizes]!).flyingKb).toBeCloseTo(178, 9);
});

test('measure() refuses a build in which flying is no chunk of its own', () => {
  const { 'src/app/fly.ts': _left, ...rest } = manifest;
  expect(() => measure(rest, () => 0)).toThrow(new RangeError('size: the manifest has no chunk for src/app/fly.ts'));
});

test('measure() refuses a build without an entry', () => {
  expect(() => measure({}, () => 0)).toThrow('size: one entry expected, found none');
});

test('rowsOf() shows each file and both sums with their limits', () => {
  const rows = rowsOf(measure(manifest, (file) => bytes[file]!));
  expect(rows).toHaveLength(1 + 6 + 1 + 2);
  expect(rows.at(-2)).toContain(`28.5 kB  shell   before the first paint, of ${limitsKb.shell} kB`);
  expect(rows.at(-1)).toContain(`165.0 kB  flying  script until flying, of ${limitsKb.flying} kB`);
});
