import { expect, it } from 'vitest';
import { killRuns } from '../support/killRuns.ts';

it('loses nothing that was confirmed, however often it is killed while importing and saving', async () => {
  const runs = await killRuns(25, 20_261_125);
  expect(runs.troubles).toEqual([]);
  expect(runs.survived).toBe(runs.kills);
  // The kills fell into work worth losing.
  expect(runs.confirmedPhotos).toBeGreaterThan(25);
  expect(runs.confirmedReadings).toBeGreaterThan(25);
}, 300_000);
