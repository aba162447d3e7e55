import { describe, expect, test } from 'vitest';
import { countPlaywright, countVitest, sentenceOf, sumOf } from './counts.ts';

const passing = { status: 'passed', assertionResults: [{ status: 'passed' }] };
const vitest = { numPassedTests: 12, numFailedTests: 0, testResults: [passing] };
const playwright = { stats: { expected: 5, unexpected: 0, flaky: 0, skipped: 0 }, errors: [] };

describe('the counting of vitest', () => {
  test('takes over what passed and failed', () => {
    expect(countVitest(vitest, 0)).toEqual({ passed: 12, failed: 0 });
    const failing = { status: 'failed', assertionResults: [{ status: 'passed' }, { status: 'failed' }] };
    expect(countVitest({ ...vitest, numFailedTests: 2, testResults: [passing, failing] }, 1)).toEqual({ passed: 12, failed: 2 });
  });

  test('counts a file that could not be loaded', () => {
    const unloaded = { status: 'failed', assertionResults: [] };
    expect(countVitest({ ...vitest, testResults: [passing, unloaded] }, 1)).toEqual({ passed: 12, failed: 1 });
  });

  test('counts a run that ended badly although every test passed', () => {
    expect(countVitest(vitest, 1)).toEqual({ passed: 12, failed: 1 });
    expect(countVitest(vitest, null)).toEqual({ passed: 12, failed: 1 });
  });

  test.each([null, {}, 'text', { ...vitest, numPassedTests: 'many' }])('counts a report that is none: %j', (report) => {
    expect(countVitest(report, 0)).toEqual({ passed: 0, failed: 1 });
  });

  test('counts a run that ran nothing', () => {
    expect(countVitest({ numPassedTests: 0, numFailedTests: 0, testResults: [] }, 0)).toEqual({ passed: 0, failed: 1 });
  });
});

describe('the counting of Playwright', () => {
  test('takes over what passed and failed', () => {
    expect(countPlaywright(playwright, 0)).toEqual({ passed: 5, failed: 0 });
    expect(countPlaywright({ ...playwright, stats: { expected: 3, unexpected: 2, flaky: 0 } }, 1)).toEqual({ passed: 3, failed: 2 });
  });

  test('counts a story that passed only at another try as failed', () => {
    expect(countPlaywright({ ...playwright, stats: { expected: 4, unexpected: 0, flaky: 1 } }, 0)).toEqual({ passed: 4, failed: 1 });
  });

  test('counts errors outside of stories, and runs that ended badly or ran nothing', () => {
    expect(countPlaywright({ ...playwright, errors: [{ message: 'x' }] }, 1)).toEqual({ passed: 5, failed: 1 });
    expect(countPlaywright(playwright, 1)).toEqual({ passed: 5, failed: 1 });
    expect(countPlaywright({ stats: { expected: 0, unexpected: 0, flaky: 0 }, errors: [] }, 0)).toEqual({ passed: 0, failed: 1 });
    expect(countPlaywright(null, 0)).toEqual({ passed: 0, failed: 1 });
  });
});

test('the last line says the sum', () => {
  expect(
    sentenceOf(
      sumOf([
        { passed: 12, failed: 1 },
        { passed: 5, failed: 0 },
      ]),
    ),
  ).toBe('17 passed, 1 failed');
});
