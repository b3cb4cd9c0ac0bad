import { describe, expect, test } from 'vitest';
import { add, closingLine, oneStep, tallyOfTests } from './tally.ts';

const report = (facts: object) =>
  JSON.stringify({
    numPassedTests: 3,
    numFailedTests: 0,
    numPendingTests: 0,
    numTodoTests: 0,
    testResults: [{ status: 'passed', assertionResults: [{ status: 'passed' }] }],
    ...facts,
  });

describe('the tally of a run', () => {
  test('all passed', () => {
    expect(closingLine(tallyOfTests(report({}), 0))).toBe('3 passed, 0 failed');
  });
  test('no report at all is a failure', () => {
    expect(tallyOfTests(null, 0).failedCount).toBe(1);
  });
  test('a runner that ended badly with every test passed is a failure', () => {
    expect(closingLine(tallyOfTests(report({}), 1))).toBe('3 passed, 1 failed');
  });
  test('a run without a single test is a failure', () => {
    const none = report({ numPassedTests: 0, numPendingTests: 2, testResults: [] });
    expect(closingLine(tallyOfTests(none, 0))).toBe('0 passed, 1 failed, 2 skipped');
  });
  test('a file that could not be imported counts once', () => {
    const broken = report({ testResults: [{ status: 'failed', assertionResults: [] }] });
    expect(tallyOfTests(broken, 1).failedCount).toBe(1);
  });
  test('a file with a failed test is not counted twice', () => {
    const failed = report({
      numFailedTests: 1,
      testResults: [{ status: 'failed', assertionResults: [{ status: 'failed' }] }],
    });
    expect(tallyOfTests(failed, 1).failedCount).toBe(1);
  });
  test('steps that are not tests add up', () => {
    expect(add(oneStep(true), oneStep(false))).toEqual({
      passedCount: 1,
      failedCount: 1,
      skippedCount: 0,
    });
  });
});
