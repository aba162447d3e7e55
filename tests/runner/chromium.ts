import { existsSync } from 'node:fs';
import process from 'node:process';
import { chromium } from '@playwright/test';
import { chromiumOptions } from '../../e2e/support/chromium.ts';
import { run, runTool } from './programs.ts';

const APT_GET = '/usr/bin/apt-get';

/** Makes sure that the stories find a Chromium: Debian's own where that can be installed, else Playwright's. */
export async function ensureChromium(): Promise<boolean> {
  if (isThere()) return true;
  const asRoot = process.getuid?.() === 0;
  if (asRoot && existsSync(APT_GET)) {
    console.log("No Chromium here: installing Debian's");
    await run(APT_GET, 'update', '-qq');
    await run(APT_GET, 'install', '-y', '-qq', '--no-install-recommends', 'chromium');
    if (isThere()) return true;
  }
  console.log("No Chromium here: installing Playwright's");
  await runTool('@playwright/test/cli.js', 'install', ...(asRoot ? ['--with-deps'] : []), 'chromium');
  if (isThere()) return true;
  console.error(
    'The stories need a Chromium and none could be installed. Install one (on Debian: apt-get install chromium; elsewhere: npx playwright install chromium) and run npm test again.',
  );
  return false;
}

function isThere(): boolean {
  return existsSync(chromiumOptions().executablePath ?? chromium.executablePath());
}
