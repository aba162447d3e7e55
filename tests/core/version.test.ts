import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { VERSION } from '../../src/core/version.ts';

it('says the version of the package', () => {
  const { version } = JSON.parse(readFileSync('package.json', 'utf8')) as { version: string };
  expect(VERSION).toBe(version);
});
