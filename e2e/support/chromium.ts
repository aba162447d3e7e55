import { existsSync } from 'node:fs';
import type { LaunchOptions } from '@playwright/test';

/** Debian's Chromium where it is installed, else Playwright's own. */
const SYSTEM_CHROMIUM = '/usr/bin/chromium';

/** A quiet browser: no start-up traffic; as root the sandbox cannot be had. */
export function chromiumOptions(): LaunchOptions {
  const asRoot = process.getuid?.() === 0;
  return {
    ...(existsSync(SYSTEM_CHROMIUM) ? { executablePath: SYSTEM_CHROMIUM } : {}),
    args: [
      ...(asRoot ? ['--no-sandbox'] : []),
      '--disable-gpu',
      '--disable-quic',
      '--no-first-run',
      '--disable-background-networking',
      '--disable-component-update',
      '--disable-sync',
    ],
  };
}
