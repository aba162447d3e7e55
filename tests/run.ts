/**
 * `npm test`: types, Biome, unit and contract tests, then the stories in a real Chromium. `--fast` leaves out what needs a
 * build and a browser. Everything is run even if something fails before; the last line says how many passed and failed.
 */
import { mkdirSync, readFileSync, rmSync } from 'node:fs';
import { resolve } from 'node:path';
import process from 'node:process';
import { ensureChromium } from './runner/chromium.ts';
import { type Counts, countPlaywright, countVitest, ONE_FAILED, ONE_PASSED, sentenceOf, sumOf } from './runner/counts.ts';
import { ROOT, runTool } from './runner/programs.ts';

const RESULTS = resolve(ROOT, 'test-results');
const UNIT_REPORT = resolve(RESULTS, 'unit.json');
const STORIES_REPORT = resolve(RESULTS, 'e2e.json');

async function checkTypes(): Promise<Counts> {
  return (await runTool('typescript/bin/tsc', '-b')) === 0 ? ONE_PASSED : ONE_FAILED;
}

async function checkStyle(): Promise<Counts> {
  return (await runTool('@biomejs/biome/bin/biome', 'ci')) === 0 ? ONE_PASSED : ONE_FAILED;
}

async function runUnitTests(): Promise<Counts> {
  const reporters = ['--reporter=default', '--reporter=json', `--outputFile.json=${UNIT_REPORT}`];
  const exitCode = await runTool('vitest/vitest.mjs', 'run', '--config', 'tests/vitest.config.ts', ...reporters);
  return countVitest(reportIn(UNIT_REPORT), exitCode);
}

async function runStories(): Promise<Counts> {
  if ((await runTool('electron-vite/bin/electron-vite.js', 'build', '--logLevel', 'error')) !== 0) return ONE_FAILED;
  if (!(await ensureChromium())) return ONE_FAILED;
  const exitCode = await runTool('@playwright/test/cli.js', 'test', '--config', 'e2e/playwright.config.ts');
  return countPlaywright(reportIn(STORIES_REPORT), exitCode);
}

/** What a runner wrote, or null if it wrote nothing that can be read. */
function reportIn(file: string): unknown {
  try {
    return JSON.parse(readFileSync(file, 'utf8'));
  } catch (error) {
    console.error(`No report in ${file}:`, error);
    return null;
  }
}

const QUICK: readonly (readonly [title: string, step: () => Promise<Counts>])[] = [
  ['Types', checkTypes],
  ['Biome', checkStyle],
  ['Unit and contract tests', runUnitTests],
];
const SLOW: typeof QUICK = [['Stories in Chromium', runStories]];

rmSync(RESULTS, { recursive: true, force: true });
mkdirSync(RESULTS);
const results: Counts[] = [];
for (const [title, step] of process.argv.includes('--fast') ? QUICK : [...QUICK, ...SLOW]) {
  console.log(`\n${title}`);
  const counts = await step();
  results.push(counts);
  console.log(`${title}: ${sentenceOf(counts)}`);
}
const sum = sumOf(results);
console.log(`\n${sentenceOf(sum)}`);
process.exitCode = sum.failed === 0 ? 0 : 1;
