/**
 * Counts what ran. A step that is not made of tests (types, lint) counts as one.
 *
 * Always true: a run in which no test ran has failed, and so has one whose runner ended badly.
 */
export interface Tally {
  readonly passedCount: number;
  readonly failedCount: number;
  readonly skippedCount: number;
}

/** The figures of vitest's json report that matter here. */
interface Report {
  readonly numPassedTests: number;
  readonly numFailedTests: number;
  readonly numPendingTests: number;
  readonly numTodoTests: number;
  readonly testResults: readonly {
    readonly status: string;
    readonly assertionResults: readonly { readonly status: string }[];
  }[];
}

export const oneStep = (passed: boolean): Tally => ({
  passedCount: passed ? 1 : 0,
  failedCount: passed ? 0 : 1,
  skippedCount: 0,
});

export const add = (a: Tally, b: Tally): Tally => ({
  passedCount: a.passedCount + b.passedCount,
  failedCount: a.failedCount + b.failedCount,
  skippedCount: a.skippedCount + b.skippedCount,
});

/** `reportText` is vitest's json report, null where it wrote none. */
export function tallyOfTests(reportText: string | null, exitCode: number | null): Tally {
  if (reportText === null) return oneStep(false);
  const report = JSON.parse(reportText) as Report;
  // A file that fails outside its tests (an import, a hook) shows no failed test of its own.
  const brokenFileCount = report.testResults.filter(
    (file) =>
      file.status === 'failed' && !file.assertionResults.some((test) => test.status === 'failed'),
  ).length;
  const failedCount = report.numFailedTests + brokenFileCount;
  const endedBadly = exitCode !== 0 && failedCount === 0;
  const ranNothing = report.numPassedTests + failedCount === 0;
  return {
    passedCount: report.numPassedTests,
    failedCount: failedCount + (endedBadly || ranNothing ? 1 : 0),
    skippedCount: report.numPendingTests + report.numTodoTests,
  };
}

/** The closing line, alone on its line. */
export const closingLine = (tally: Tally): string =>
  `${tally.passedCount} passed, ${tally.failedCount} failed` +
  (tally.skippedCount > 0 ? `, ${tally.skippedCount} skipped` : '');
