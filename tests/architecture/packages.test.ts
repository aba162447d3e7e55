import { describe, expect, test } from 'vitest';
import { textOf } from './sources.ts';

const { dependencies, devDependencies, optionalDependencies, scripts } = JSON.parse(textOf('package.json')) as Record<
  'dependencies' | 'devDependencies' | 'optionalDependencies' | 'scripts',
  Record<string, string>
>;

describe('the packages', () => {
  test.each(Object.entries({ ...dependencies, ...devDependencies, ...optionalDependencies }))(
    '%s is pinned to one version: %s',
    (_name, version) => {
      expect(version).toMatch(/^\d+\.\d+\.\d+(-[\w.]+)?$/);
    },
  );

  test('come from whatever registry npm is set to: the lock file names none', () => {
    expect(textOf('package-lock.json')).not.toMatch(/"resolved":|registry\./);
  });

  test('run no scripts of their own when they are installed', () => {
    expect(textOf('.npmrc')).toMatch(/^ignore-scripts=true$/m);
    expect(Object.keys(scripts).filter((name) => /^(pre|post)|install|prepare/.test(name))).toEqual([]);
  });

  test.each(Object.entries(scripts))('the command %s runs under the pinned Node: %s', (_name, command) => {
    expect(command).toMatch(/^node src\/launch\/pinned\.mjs \S+/);
  });
});
