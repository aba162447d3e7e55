import { resolve } from 'node:path';
import { defineConfig } from '@playwright/test';
import { electronBinary } from './support/electronBinary.ts';
import type { HostOptions } from './support/hosts.ts';

const root = resolve(import.meta.dirname, '..');
const desktop = electronBinary(root);

export default defineConfig<HostOptions>({
  testDir: resolve(import.meta.dirname, 'stories'),
  outputDir: resolve(root, 'test-results/e2e'),
  // One Chromium decoding photographs keeps two cores busy.
  workers: 1,
  timeout: 180_000,
  expect: { timeout: 15_000 },
  forbidOnly: true,
  reporter: [['list'], ['json', { outputFile: resolve(root, 'test-results/e2e.json') }]],
  projects: [
    { name: 'loopback', use: { host: 'loopback' }, grepInvert: /@desktop/ },
    ...(desktop === null ? [] : [{ name: 'desktop', use: { host: 'desktop' as const }, grepInvert: /@loopback/ }]),
  ],
});
