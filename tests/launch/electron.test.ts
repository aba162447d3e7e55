import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { fetchElectron, findElectron } from '../../src/launch/electron.ts';

/** A folder with an electron package whose installer is a script of ours; the real one would download. */
let root: string;
let folder: string;

beforeEach(() => {
  root = mkdtempSync(join(tmpdir(), 'exuviary-electron-'));
  folder = join(root, 'node_modules/electron');
  mkdirSync(join(folder, 'dist'), { recursive: true });
});

afterEach(() => rmSync(root, { recursive: true }));

function putInstaller(script: string): void {
  writeFileSync(join(folder, 'install.js'), script);
}

const INSTALLS = `
  require('node:fs').writeFileSync(__dirname + '/dist/electron', '');
  require('node:fs').writeFileSync(__dirname + '/path.txt', 'electron');
`;

describe("the search for Electron's program", () => {
  test('finds it by the file that the package points to', () => {
    putInstaller('');
    writeFileSync(join(folder, 'path.txt'), 'electron\n');
    writeFileSync(join(folder, 'dist/electron'), '');
    expect(findElectron(root)).toEqual({ state: 'present', executable: join(folder, 'dist/electron') });
  });

  test('does not take a pointer to nothing for a program', () => {
    putInstaller('');
    writeFileSync(join(folder, 'path.txt'), 'electron');
    expect(findElectron(root)).toEqual({ state: 'absent' });
  });

  test('says when there is no package to install it with', () => {
    expect(findElectron(root)).toEqual({ state: 'unavailable', reason: 'the electron package is not installed' });
  });
});

describe("the fetching of Electron's program", () => {
  const never = new AbortController().signal;

  test("leaves it to the package's own installer", async () => {
    putInstaller(INSTALLS);
    expect(await fetchElectron(root, never)).toEqual({ state: 'present', executable: join(folder, 'dist/electron') });
  });

  test.each([
    ['an installer that fails', 'process.exit(1)'],
    ['an installer that says it is done and is not', ''],
  ])('gives up after %s', async (_name, script) => {
    putInstaller(script);
    expect(await fetchElectron(root, never)).toEqual({
      state: 'unavailable',
      reason: 'Electron is not installed and could not be fetched',
    });
  });

  test('does not wait for ever', async () => {
    putInstaller('setInterval(() => 0, 1000)');
    expect(await fetchElectron(root, never, 300)).toEqual({
      state: 'unavailable',
      reason: expect.stringContaining('Electron did not arrive within 0.3 seconds'),
    });
  });

  test('stops with the launcher', async () => {
    putInstaller('setInterval(() => 0, 1000)');
    const stop = new AbortController();
    const fetched = fetchElectron(root, stop.signal);
    stop.abort();
    expect(await fetched).toMatchObject({ state: 'unavailable' });
  });
});
