import { join } from 'node:path';
import sharp from 'sharp';
import { test } from '../support/camera.ts';
import { expect } from '../support/hosts.ts';
import { Keeper } from '../support/keeper.ts';
import { expectAccessible } from '../support/pageChecks.ts';

test('a picture without a time stays in the choice, and its stage is noted by the time that the keeper says', async ({ page, camera }) => {
  const file = join(camera, 'no-clock.jpg');
  await sharp({ create: { width: 323, height: 240, channels: 3, background: '#8a6f4e' } })
    .jpeg()
    .toFile(file);
  const keeper = new Keeper(page);
  await keeper.openSample();
  await keeper.goTo('Watch');
  await page.getByRole('region', { name: 'Everybody' }).getByRole('button', { name: /FH-14/ }).click();
  const pad = page.getByRole('region', { name: /FH-14/ });
  await pad.getByRole('button', { name: 'Times from photos' }).click();
  const dialog = page.getByRole('dialog', { name: 'Times from photos of FH-14' });
  const chooser = page.waitForEvent('filechooser');
  await dialog.getByRole('button', { name: 'Attach photos' }).click();
  await (await chooser).setFiles(file);
  await expect(dialog.getByText('Its camera wrote no time.')).toBeVisible();
  await dialog.getByLabel('Stage in no-clock.jpg').selectOption('Turned over');
  await expect(dialog.getByRole('button', { name: 'Note these times' })).toBeDisabled();
  await dialog.getByLabel('When no-clock.jpg was taken').fill('2026-03-01T22:10');
  await expectAccessible(page, 'a photo without a time');
  await dialog.getByRole('button', { name: 'Note these times' }).click();
  await expect(dialog).toBeHidden();
  await expect(pad.getByRole('region', { name: 'Noted last' }).getByRole('listitem')).toHaveText([/^Turned over1 Mar 2026, 22:10/]);
});
