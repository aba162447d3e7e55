import { mkdtemp, readdir, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { _electron, type BrowserContext, chromium, type Page, test as playwright } from '@playwright/test';
import { chromiumOptions } from './chromium.ts';
import { electronBinary } from './electronBinary.ts';
import { startLoopback } from './loopback.ts';

export type Host = 'loopback' | 'desktop';

export interface HostOptions {
  host: Host;
}

/** Exuviary running on one archive. */
export interface RunningApp {
  readonly page: Page;
  readonly context: BrowserContext;
  /** Ends it properly. */
  close(): Promise<void>;
  /** Ends it without any warning. */
  kill(): Promise<void>;
  complaints(): string;
}

/** How long anything that is clicked or read may take to be there, on a busy machine. */
const PATIENCE_MS = 20_000;

const root = resolve(import.meta.dirname, '../..');

/** The only code that knows how the hosts differ. */
const openers: Record<Host, (archive: string) => Promise<RunningApp>> = {
  async loopback(archive) {
    const host = await startLoopback(archive);
    const browser = await chromium.launch(chromiumOptions());
    const context = await browser.newContext({ viewport: { width: 1440, height: 900 }, reducedMotion: 'reduce' });
    const page = await context.newPage();
    await page.goto(host.url);
    return {
      page,
      context,
      close: async () => {
        await browser.close();
        await host.stop();
      },
      kill: async () => {
        await host.kill();
        await browser.close();
      },
      complaints: host.stderr,
    };
  },
  async desktop(archive) {
    const executablePath = electronBinary(root);
    if (executablePath === null) throw new Error('Expected the Electron binary to be installed for the desktop project');
    const app = await _electron.launch({ executablePath, args: [root, '--archive', archive] });
    const page = await app.firstWindow();
    return {
      page,
      context: app.context(),
      close: () => app.close(),
      kill: async () => {
        app.process().kill('SIGKILL');
      },
      complaints: () => '',
    };
  },
};

export interface Fixtures {
  /** A fresh, empty folder that goes away after the test. */
  archive: string;
  /** Opens Exuviary on the archive; may be called again after `close` or `kill`. */
  open: () => Promise<RunningApp>;
  app: RunningApp;
}

export const test = playwright.extend<Fixtures & HostOptions>({
  host: ['loopback', { option: true }],
  archive: async ({ host }, use) => {
    const folder = await mkdtemp(join(tmpdir(), `exuviary-${host}-`));
    await use(folder);
    await rm(folder, { recursive: true, force: true });
  },
  open: async ({ archive, host }, use, testInfo) => {
    const running: RunningApp[] = [];
    await use(async () => {
      const app = await openers[host](archive);
      app.context.setDefaultTimeout(PATIENCE_MS);
      await app.context.tracing.start({ screenshots: true, snapshots: true });
      running.push(app);
      return app;
    });
    for (const app of running) {
      if (testInfo.status !== testInfo.expectedStatus) await report(app, archive, testInfo);
      await app.close();
    }
  },
  app: async ({ open }, use) => {
    await use(await open());
  },
  page: async ({ app }, use) => {
    await use(app.page);
  },
});

export { expect } from '@playwright/test';

async function report(app: RunningApp, archive: string, testInfo: ReturnType<typeof playwright.info>): Promise<void> {
  await testInfo.attach('host', { body: app.complaints(), contentType: 'text/plain' });
  await testInfo.attach('archive', { body: (await readdir(archive, { recursive: true })).join('\n'), contentType: 'text/plain' });
  if (app.page.isClosed()) return;
  await testInfo.attach('screen', { body: await app.page.screenshot(), contentType: 'image/png' });
  const trace = testInfo.outputPath('trace.zip');
  await app.context.tracing.stop({ path: trace });
  await testInfo.attach('trace', { path: trace, contentType: 'application/zip' });
}
