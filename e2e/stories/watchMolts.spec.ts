import { expect, test } from '../support/camera.ts';
import { Keeper } from '../support/keeper.ts';

test('an animal that died in its molt is recorded as dead with one tap, and an undo', async ({ page }) => {
  const keeper = new Keeper(page);
  await keeper.openSample();
  await keeper.animal('FH-03').getByRole('link').click();
  await page.getByRole('button', { name: 'Add a molt' }).first().click();
  const dialog = page.getByRole('dialog', { name: 'Add a molt' });
  await dialog.getByRole('checkbox', { name: 'Died' }).check();
  await dialog.getByRole('button', { name: 'Add', exact: true }).click();
  await expect(dialog).toBeHidden();
  await expect(page.getByText('says that it died in it.')).toBeVisible();
  await expect(page.getByRole('region', { name: 'Forecast' })).toHaveCount(0);
  await keeper.goTo('Watch');
  const entry = page
    .getByRole('region', { name: /^Today/ })
    .getByRole('listitem')
    .filter({ hasText: 'FH-03' });
  await expect(entry).toContainText('Died in its molt');
  await entry.getByRole('button', { name: 'Record it as dead: FH-03' }).click();
  await expect(entry).toHaveCount(0);
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect(entry).toHaveCount(1);
});
