import { expect, test } from 'vitest';
import { readSetup } from '../../src/diver/file.ts';

test('readSetup() refuses a group or a list where one word of a list belongs, on its line', () => {
  for (const value of ['{ x: 1 }', '[one-piece]', '[]', '{}']) {
    const read = readSetup(`suit:\n  kind: foam\n  cut: ${value}\n`);
    expect('problems' in read && read.problems).toEqual([
      expect.objectContaining({ line: 3, path: 'suit.cut', allowed: 'one of one-piece, two-piece' }),
    ]);
  }
});
