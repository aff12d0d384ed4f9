/** How many passed and failed. */
export interface Count {
  readonly passed: number;
  readonly failed: number;
}

/**
 * The tests in a Vitest JSON report. One that did not run counts as failed: every committed test is meant to run.
 * @throws {TypeError} when the report does not carry the numbers
 */
export function testsIn(report: string): Count {
  const { numTotalTests: total, numPassedTests: passed } = JSON.parse(report) as Record<string, unknown>;
  if (typeof total !== 'number' || typeof passed !== 'number') {
    throw new TypeError(`testsIn: a report with numTotalTests and numPassedTests expected, got ${report.slice(0, 80)}`);
  }
  return { passed, failed: total - passed };
}

/** Names of the tests in a Vitest JSON report that failed at first and passed when they were run again. */
export function againIn(report: string): string[] {
  const { testResults } = JSON.parse(report) as {
    testResults: { assertionResults: { fullName: string; status: string; failureMessages: string[] }[] }[];
  };
  return testResults
    .flatMap(({ assertionResults }) => assertionResults)
    .filter(({ status, failureMessages }) => status === 'passed' && failureMessages.length > 0)
    .map(({ fullName }) => fullName);
}

/** The line that sums up a run, for people and for machines: `12 passed, 0 failed`. */
export function closingLine(counts: readonly Count[]): string {
  const sum = (pick: (count: Count) => number) => counts.reduce((all, count) => all + pick(count), 0);
  return `${sum((count) => count.passed)} passed, ${sum((count) => count.failed)} failed`;
}
