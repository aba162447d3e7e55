import { execFileSync } from 'node:child_process';
import { resolve } from 'node:path';
import { expect, test } from 'vitest';

const ROOT = resolve(import.meta.dirname, '../..');

const KEPT = [
  ...['package.json', 'tsconfig.json', 'electron.vite.config.ts', 'src', 'resources', 'tests', 'e2e'],
  ...['README.md', 'DEVELOPERS.md', 'LICENSE'],
  // Only what tools force.
  ...['package-lock.json', 'biome.json', '.npmrc', '.gitignore', '.ci'],
];

test('the top level holds what belongs there, and no archive that somebody opened here', () => {
  const files = execFileSync('git', ['ls-files', '-z'], { cwd: ROOT, encoding: 'utf8' }).split('\0').filter(Boolean);
  const entries = new Set(files.map((file) => file.split('/')[0] ?? ''));
  expect([...entries].toSorted()).toEqual(KEPT.toSorted());
});
