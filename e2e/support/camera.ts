import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { test as stories } from './hosts.ts';

export { expect } from './hosts.ts';

export const test = stories.extend<{ camera: string }>({
  /** A folder of files to bring in, such as a card reader shows; goes away after the test. */
  camera: async ({ host }, use) => {
    const folder = await mkdtemp(join(tmpdir(), `exuviary-camera-${host}-`));
    await use(folder);
    await rm(folder, { recursive: true });
  },
});
