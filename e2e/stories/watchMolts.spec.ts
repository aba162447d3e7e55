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

test('keys stay under the thumb whatever is noted, and the clock with its cautions stays in sight', async ({ page }) => {
  await page.setViewportSize({ width: 1024, height: 700 });
  const keeper = new Keeper(page);
  await keeper.openSample();
  await keeper.goTo('Watch');
  await page.getByRole('region', { name: 'Everybody' }).getByRole('button', { name: /FH-03/ }).click();
  const pad = page.getByRole('region', { name: /FH-03/ });
  const key = (name: string) => pad.getByRole('button', { name, exact: true });
  const placesOfKeys = async () => {
    const names = ['Refused food', 'Turned over', 'Fangs white', 'Lost a limb'];
    return Promise.all(names.map(async (name) => (await key(name).boundingBox())?.y));
  };
  const top = await placesOfKeys();
  await key('Refused food').click();
  await expect(page.getByRole('button', { name: 'Undo' })).toBeVisible();
  expect(await placesOfKeys()).toEqual(top);
  await key('Fangs white').scrollIntoViewIfNeeded();
  const before = await placesOfKeys();
  await key('Turned over').click();
  await expect(pad.getByRole('timer')).toBeInViewport();
  await expect(pad.getByText('Remove nothing, touch nothing')).toBeInViewport({ ratio: 1 });
  expect(await placesOfKeys()).toEqual(before);
  const place = await key('Turned over').boundingBox();
  // The second tap of the same place, wherever that leads: nothing else is noted by it.
  await page.mouse.click((place?.x ?? 0) + 20, (place?.y ?? 0) + 20);
  await key('Carapace open').click();
  await expect(pad.getByRole('region', { name: 'Noted last' }).getByRole('listitem')).toHaveText([
    /^Carapace open/,
    /^Turned over/,
    /^Refused food/,
  ]);
  await key('Turned over').click();
  await expect(pad.getByRole('alert')).toContainText('a second one cannot begin');
  await expect(pad.getByRole('alert')).toBeInViewport();
});

test('an earlier time holds for every key until it is taken back, what is no time is refused, and a lost limb is asked for', async ({
  page,
}) => {
  const keeper = new Keeper(page);
  await keeper.openSample();
  await keeper.animal('FH-03').getByRole('link').click();
  await page.getByRole('link', { name: 'Note what you see' }).click();
  const pad = page.getByRole('region', { name: /FH-03/ });
  const last = pad.getByRole('region', { name: 'Noted last' }).getByRole('listitem');
  await keeper.wasEarlier(pad, 48);
  const day = await pad.getByLabel('Seen on').inputValue();
  await pad.getByRole('button', { name: 'Refused food' }).click();
  await expect(last).toHaveCount(1);
  await expect(pad.getByLabel('Seen on')).toHaveValue(day);
  await pad.getByLabel('Seen at').fill('half past nine');
  await pad.getByRole('button', { name: 'Drank' }).click();
  await expect(pad.getByRole('alert')).toContainText('is no time');
  await expect(last).toHaveCount(1);
  await pad.getByLabel('Seen at').fill('9:30');
  await pad.getByRole('button', { name: 'Lost a limb' }).click();
  await page.getByRole('dialog', { name: 'Which limb?' }).getByRole('button', { name: 'right leg III', exact: true }).click();
  await expect(last.first()).toHaveText(/^Lost a limb.* 09:30right leg III$/);
  await pad.getByRole('button', { name: 'Back to now' }).click();
  await expect(pad.getByText('Noted as seen now.')).toBeVisible();
  await pad.getByRole('heading', { level: 2 }).getByRole('link', { name: 'FH-03' }).click();
  await expect(page.getByRole('link', { name: 'Note what you see' })).toBeVisible();
});
