import { chmodSync, existsSync, mkdtempSync, readFileSync, rmSync, watch, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import process from 'node:process';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import type { Situation } from '../../src/launch/choose.ts';
import { type Ground, launch } from '../../src/launch/launch.ts';

const STAND_INS = resolve(import.meta.dirname, 'standIns');

/** One try-out in a folder of its own: stand-ins for the programs, and what they and the launcher said. */
interface TryOut {
  readonly folder: string;
  readonly lines: string[];
  readonly stop: AbortController;
  readonly ground: Ground;
  notes(): string;
}

let tryOut: TryOut;

beforeEach(() => {
  const folder = mkdtempSync(join(tmpdir(), 'exuviary-launch-'));
  const notes = join(folder, 'notes');
  writeFileSync(notes, '');
  // The launcher starts programs, not scripts, so the stand-in for a window gets a program around it.
  const program = join(folder, 'window');
  writeFileSync(program, `#!/bin/sh\nexec "${process.execPath}" "${join(STAND_INS, 'window.ts')}" "${notes}" "$@"\n`);
  chmodSync(program, 0o755);
  const lines: string[] = [];
  const stop = new AbortController();
  tryOut = {
    folder,
    lines,
    stop,
    ground: {
      root: '/app/root',
      host: { executable: process.execPath, arguments: [join(STAND_INS, 'host.ts'), notes] },
      passedOn: ['--archive', '/skins'],
      fetchElectron: async () => ({ state: 'unavailable', reason: 'Electron could not be fetched' }),
      print: (line) => lines.push(line),
      stopping: stop.signal,
    },
    notes: () => readFileSync(notes, 'utf8'),
  };
});

afterEach(() => rmSync(tryOut.folder, { recursive: true }));

function behave(behavior: 'close' | 'crash' | 'stay' | 'announce, close' | 'announce, crash'): void {
  writeFileSync(join(tryOut.folder, 'notes.behavior'), behavior);
}

function situation(part: Partial<Situation>): Situation {
  const window = join(tryOut.folder, 'window');
  return {
    wanted: null,
    hasDisplay: true,
    asRoot: false,
    electron: { state: 'unavailable', reason: 'there is no Electron' },
    browser: { state: 'present', executable: window },
    ...part,
  };
}

/** Resolves when the notes hold a text; the file's own changes wake it. */
async function noted(text: string): Promise<void> {
  const watcher = watch(join(tryOut.folder, 'notes'));
  try {
    if (tryOut.notes().includes(text)) return;
    await new Promise<void>((settle) => {
      watcher.on('change', () => {
        if (tryOut.notes().includes(text)) settle();
      });
    });
  } finally {
    watcher.close();
  }
}

function profileNoted(): string {
  return /^window profile (.+)$/m.exec(tryOut.notes())?.[1] ?? '';
}

describe.skipIf(process.platform === 'win32')('the launcher', () => {
  test("opens a browser's window on the host's address, and ends with it", async () => {
    behave('close');
    expect(await launch(situation({}), tryOut.ground)).toBe(0);
    expect(tryOut.notes()).toMatch(
      /^host started --archive \/skins\nwindow opened http:\/\/127\.0\.0\.1:4000\/\?ticket=\d+\nwindow profile .*\nhost closed\n$/,
    );
    expect(tryOut.lines).toEqual([
      expect.stringMatching(/^Opening Exuviary in an app window of .*: there is no Electron\.$/),
      'a line that is no announcement',
    ]);
  });

  test('leaves no profile behind', async () => {
    behave('close');
    await launch(situation({}), tryOut.ground);
    expect(profileNoted()).toContain('exuviary-window-');
    expect(existsSync(profileNoted())).toBe(false);
  });

  test('ends window and host and removes the profile when it is stopped', async () => {
    behave('stay');
    const code = launch(situation({}), tryOut.ground);
    await noted('window stays');
    expect(existsSync(profileNoted())).toBe(true);
    tryOut.stop.abort();
    expect(await code).toBe(0);
    expect(tryOut.notes()).toContain('window told to close');
    expect(tryOut.notes()).toContain('host closed');
    expect(existsSync(profileNoted())).toBe(false);
  });

  test('gives the address, from a fresh host, when the browser cannot open a window', async () => {
    behave('crash');
    const stopAtAddress = (line: string) => {
      tryOut.lines.push(line);
      if (line.startsWith('http://')) tryOut.stop.abort();
    };
    expect(await launch(situation({}), { ...tryOut.ground, print: stopAtAddress })).toBe(0);
    expect(tryOut.notes().match(/host started/g)).toHaveLength(2);
    expect(tryOut.notes().match(/host closed/g)).toHaveLength(2);
    expect(tryOut.lines.join('\n')).toMatch(/\(there is no Electron, and .*window ended with code 7\):\nhttp:\/\/127\.0\.0\.1:4000/);
  });

  test('ends with the exit code of a host that refuses, and opens nothing', async () => {
    behave('close');
    expect(await launch(situation({}), { ...tryOut.ground, passedOn: ['--refuse'] })).toBe(3);
    expect(tryOut.notes()).toBe('host started --refuse\n');
  });

  test('announces no address where the host refuses', async () => {
    const code = await launch(situation({ wanted: 'link' }), { ...tryOut.ground, passedOn: ['--refuse'] });
    expect(code).toBe(3);
    expect(tryOut.lines).toEqual([]);
  });

  test('starts Electron on the folder of package.json, and ends with it', async () => {
    behave('announce, close');
    const electron = { state: 'present', executable: join(tryOut.folder, 'window') } as const;
    expect(await launch(situation({ electron, asRoot: true }), tryOut.ground)).toBe(0);
    expect(tryOut.notes()).toContain('window opened --no-sandbox /app/root --archive /skins\n');
    expect(tryOut.notes()).not.toContain('host started');
  });

  test('takes what comes next when Electron ends before it opened its window', async () => {
    behave('crash');
    const electron = { state: 'present', executable: join(tryOut.folder, 'window') } as const;
    const browser = { state: 'unavailable', reason: 'there is no browser' } as const;
    const stopAtAddress = (line: string) => {
      tryOut.lines.push(line);
      if (line.startsWith('http://')) tryOut.stop.abort();
    };
    await launch(situation({ electron, browser }), { ...tryOut.ground, print: stopAtAddress });
    expect(tryOut.lines.join('\n')).toMatch(/window ended with code 7, and there is no browser\)/);
  });

  test('ends with the exit code of an Electron that had opened its window', async () => {
    behave('announce, crash');
    const electron = { state: 'present', executable: join(tryOut.folder, 'window') } as const;
    expect(await launch(situation({ electron }), tryOut.ground)).toBe(7);
  });

  test('says why a program could not be started at all', async () => {
    const electron = { state: 'present', executable: join(tryOut.folder, 'missing') } as const;
    expect(
      await launch(
        situation({ electron, browser: { state: 'present', executable: join(tryOut.folder, 'gone') }, wanted: 'electron' }),
        tryOut.ground,
      ),
    ).toBe(1);
    expect(tryOut.lines.at(-1)).toMatch(/^Exuviary cannot open with --shell electron: .*missing could not be started \(.*ENOENT\)\.$/);
  });
});
