import { expect, test } from 'vitest';
import { againIn, closingLine, testsIn } from '../../tools/count.ts';

test('testsIn() counts a test that did not run as failed', () => {
  const report = { numTotalTests: 10, numPassedTests: 7, numFailedTests: 1, numPendingTests: 2 };
  expect(testsIn(JSON.stringify(report))).toEqual({ passed: 7, failed: 3 });
});

test('testsIn() refuses a report without numbers', () => {
  expect(() => testsIn('{}')).toThrow(TypeError);
});

test('againIn() names what passed at the second try only', () => {
  const test = (fullName: string, status: string, ...failureMessages: string[]) => ({
    fullName,
    status,
    failureMessages,
  });
  const assertionResults = [
    test('at once', 'passed'),
    test('late', 'passed', 'no answer'),
    test('never', 'failed', 'no'),
  ];
  expect(againIn(JSON.stringify({ testResults: [{ assertionResults }] }))).toEqual(['late']);
});

test('closingLine() sums up all checks', () => {
  const line = closingLine([
    { passed: 7, failed: 1 },
    { passed: 1, failed: 0 },
  ]);
  expect(line).toBe('8 passed, 1 failed');
});
