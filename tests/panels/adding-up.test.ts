import fc from 'fast-check';
import { expect, test } from 'vitest';
import { addUpWith, writtenAddingUp } from '../../src/panels/adding-up.ts';

const amounts = fc.array(fc.double({ min: -20, max: 20, noNaN: true }), { minLength: 1, maxLength: 12 });

test('writtenAddingUp(): written amounts add up to their sum as it is rounded, and each is off by less than one in the last digit', () => {
  fc.assert(
    fc.property(amounts, fc.integer({ min: 0, max: 2 }), (parts, digits) => {
      const written = writtenAddingUp(parts, digits);
      const scale = 10 ** digits;
      const sum = parts.reduce((total, one) => total + one, 0);
      expect(written.reduce((total, one) => total + one, 0)).toBeCloseTo(Math.round(sum * scale) / scale, 9);
      for (const [i, one] of written.entries()) {
        expect(Math.abs(one - parts[i]!) * scale).toBeLessThan(1 + 1e-9);
        expect(one * scale).toBeCloseTo(Math.round(one * scale), 9);
      }
    }),
  );
});

test('writtenAddingUp(): of parts that add up when each is rounded, each is', () => {
  expect(writtenAddingUp([6.04, 2.74, 2.41])).toEqual([6, 2.8, 2.4]);
  expect(writtenAddingUp([6.02, 2.71, 2.44])).toEqual([6, 2.7, 2.5]);
  expect(writtenAddingUp([6.01, 2.72, 2.39])).toEqual([6, 2.7, 2.4]);
});

test('addUpWith() takes parts as they are written', () => {
  expect([1, 2].map((digits) => addUpWith(digits, [3.43, -1.96, -1.47]))).toEqual([false, true]);
});
