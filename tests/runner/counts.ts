import { z } from 'zod';

export interface Counts {
  readonly passed: number;
  readonly failed: number;
}

export const ONE_PASSED: Counts = { passed: 1, failed: 0 };
export const ONE_FAILED: Counts = { passed: 0, failed: 1 };

export function sumOf(counts: readonly Counts[]): Counts {
  return counts.reduce((sum, each) => ({ passed: sum.passed + each.passed, failed: sum.failed + each.failed }), { passed: 0, failed: 0 });
}

/** The last line of `npm test`. */
export function sentenceOf({ passed, failed }: Counts): string {
  return `${passed} passed, ${failed} failed`;
}

const VitestReport = z.object({
  numPassedTests: z.int(),
  numFailedTests: z.int(),
  testResults: z.array(z.object({ status: z.string(), assertionResults: z.array(z.object({ status: z.string() })) })),
});

const PlaywrightReport = z.object({
  stats: z.object({ expected: z.int(), unexpected: z.int(), flaky: z.int() }),
  errors: z.array(z.unknown()),
});

/** What a run of vitest counted. A file that could not be loaded has no tests to fail, so it counts as one. */
export function countVitest(report: unknown, exitCode: number | null): Counts {
  const parsed = VitestReport.safeParse(report);
  if (!parsed.success) return ONE_FAILED;
  const { numPassedTests, numFailedTests, testResults } = parsed.data;
  const unloaded = testResults.filter(
    (file) => file.status === 'failed' && !file.assertionResults.some((test) => test.status === 'failed'),
  );
  return honest({ passed: numPassedTests, failed: numFailedTests + unloaded.length }, exitCode);
}

/** What a run of Playwright counted. A test that passed only when it was tried again has failed once. */
export function countPlaywright(report: unknown, exitCode: number | null): Counts {
  const parsed = PlaywrightReport.safeParse(report);
  if (!parsed.success) return ONE_FAILED;
  const { stats, errors } = parsed.data;
  return honest({ passed: stats.expected, failed: stats.unexpected + stats.flaky + errors.length }, exitCode);
}

/** A runner that ended badly, or ran nothing, did not pass, whatever its report says. */
function honest(counts: Counts, exitCode: number | null): Counts {
  const sawNothing = counts.passed + counts.failed === 0;
  return counts.failed === 0 && (exitCode !== 0 || sawNothing) ? { ...counts, failed: 1 } : counts;
}
