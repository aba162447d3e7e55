import { existsSync } from 'node:fs';
import { mkdtemp, readdir, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { chromium } from '@playwright/test';
import { chromiumOptions } from '../support/chromium.ts';
import { expect, test } from '../support/hosts.ts';
import { openedBy, profileOf, startLauncher, writeHeadlessBrowser } from '../support/launcher.ts';

/** `npm start` from the command to a closed archive. It builds first, so it takes its time. */
const BUILT_BY = { timeout: 60_000 };

test.describe('starting Exuviary', { tag: '@loopback' }, () => {
  test('opens an app window on the cabinet, and leaves nothing behind when it closes', async ({ archive }) => {
    const folder = await mkdtemp(join(tmpdir(), 'exuviary-start-'));
    const program = await writeHeadlessBrowser(folder);
    const launcher = startLauncher(['--shell', 'browser', '--browser', program, '--archive', archive], ':0');
    await expect(async () => expect(existsSync(`${program}.profile`)).toBe(true)).toPass(BUILT_BY);
    expect(launcher.lines.filter((line) => line.startsWith('Opening Exuviary'))).toHaveLength(1);

    const browser = await openedBy(program);
    const page = browser.contexts()[0]?.pages()[0];
    if (page === undefined) throw new Error('Expected the app window to have a page');
    await expect(page).toHaveTitle(/Exuviary/);
    expect(new URL(page.url()).search).toBe('');
    await (await browser.newBrowserCDPSession()).send('Browser.close');

    expect(await launcher.ended).toBe(0);
    expect(existsSync(await profileOf(program))).toBe(false);
    expect(await readdir(archive)).not.toContain('catalogue.db-wal');
    await rm(folder, { recursive: true });
  });

  test('without a display gives an address that is good once, and stops at Ctrl-C', async ({ archive }) => {
    const launcher = startLauncher(['--archive', archive], null);
    const address = () => launcher.lines.find((line) => line.startsWith('http://127.0.0.1:'));
    await expect(async () => expect(address()).toBeDefined()).toPass(BUILT_BY);
    expect(launcher.lines[0]).toContain('there is no display here');

    const browser = await chromium.launch(chromiumOptions());
    const page = await browser.newPage();
    await page.goto(address() ?? '');
    await expect(page).toHaveTitle(/Exuviary/);
    const stranger = await browser.newContext();
    expect((await (await stranger.newPage()).goto(address() ?? ''))?.status()).toBe(401);
    await browser.close();

    launcher.interrupt();
    expect(await launcher.ended).toBe(0);
    expect(await readdir(archive)).not.toContain('catalogue.db-wal');
  });
});
