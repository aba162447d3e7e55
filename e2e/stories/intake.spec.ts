import { copyFile, readFile } from 'node:fs/promises';
import { basename, join } from 'node:path';
import { expect, test } from '../support/camera.ts';
import { Keeper } from '../support/keeper.ts';
import { heicFile, samplePhoto, writeEachKind, writeSeries, writeSpoiltFiles } from '../support/pictures.ts';

interface StoredPhoto {
  readonly originalName: string;
  readonly mediaType: string;
}

test('every file gets its outcome in words, and a bad one stops nobody', async ({ page, camera }) => {
  const keeper = new Keeper(page);
  const spoilt = await writeSpoiltFiles(camera);
  const others = await writeEachKind(camera);
  const photo = samplePhoto('bramble-06-dorsal');
  const copy = join(camera, 'the same again.jpg');
  await copyFile(photo, copy);

  await keeper.goTo('Intake');
  await keeper.bringIn(
    [spoilt.empty, photo, spoilt.text, ...others, spoilt.truncated, heicFile, copy],
    '5 photos added, 1 already here and 3 refused',
  );
  const outcome = (file: string) =>
    keeper
      .report()
      .getByRole('listitem')
      .filter({ hasText: basename(file) })
      .first();
  await expect(outcome(spoilt.empty)).toContainText('empty.jpg is empty. Copy it from the camera again.');
  await expect(outcome(spoilt.text)).toContainText('shopping.jpg is not a picture. JPEG, PNG, WebP, TIFF and HEIC files are kept.');
  await expect(outcome(spoilt.truncated)).toContainText('half.jpg breaks off before its end. Copy it from the camera again.');
  await expect(outcome(copy)).toContainText('Already here, byte for byte.');
  await keeper.report().getByText('Every file').click();
  for (const file of [photo, ...others, heicFile]) {
    await expect(
      keeper
        .report()
        .getByRole('listitem')
        .filter({ hasText: basename(file) }),
    ).toContainText('Added.');
  }

  await expect(page.getByText('5 waiting, 0 chosen')).toBeVisible();
  const waiting = page.getByRole('region', { name: 'Whose skin?' });
  await waiting.getByRole('checkbox', { name: /bramble-06-dorsal/ }).check();
  // Nobody has to say whose skin it is before it is measured.
  await expect(waiting.getByRole('link', { name: 'Measure it first' })).toHaveAttribute('href', /#\/bench\/.+/);
  await waiting.getByRole('checkbox', { name: /bramble-06-dorsal/ }).uncheck();
  await expect(page.getByRole('checkbox', { name: 'skin.png' })).toHaveAccessibleName(/no date from the camera/);
  const pictures = page.getByRole('region', { name: 'Whose skin?' }).locator('img');
  await expect
    .poll(() => pictures.evaluateAll((all) => all.filter((one) => one instanceof HTMLImageElement && one.naturalWidth > 0).length))
    .toBe(5);
  const stored = await keeper.asks<StoredPhoto[]>('/api/photos');
  expect(stored.map(({ originalName }) => originalName).toSorted()).toEqual(
    [photo, ...others, heicFile].map((file) => basename(file)).toSorted(),
  );
});

test('stopping keeps what was confirmed and says what was not reached', async ({ page, camera }) => {
  const keeper = new Keeper(page);
  const files = await writeSeries(camera, 40);
  await keeper.goTo('Intake');
  await keeper.choosePhotos(files);
  const running = page.getByRole('region', { name: 'Importing' });
  await expect(running.getByRole('status')).toHaveText(/^[1-9]\d* of 40$/);
  await running.getByRole('button', { name: 'Stop' }).click();

  const report = keeper.report().getByRole('status');
  await expect(report).toHaveText(/^Stopped: \d+ photos? added and \d+ not reached$/);
  const [added = 0, left = 0] = (/(\d+) photos? added and (\d+)/.exec((await report.textContent()) ?? '') ?? []).slice(1).map(Number);
  expect(added + left).toBe(40);
  expect(left).toBeGreaterThan(0);
  await expect(page.getByText(`${added} waiting, 0 chosen`)).toBeVisible();
  expect(await keeper.asks<StoredPhoto[]>('/api/photos')).toHaveLength(added);
});

test('a photo from the camera goes to the animal whose code its name carries', async ({ page, camera }) => {
  const keeper = new Keeper(page);
  await keeper.beginEmpty();
  await keeper.addSpecimen({ code: 'TK-01', taxon: 'Aphonopelma seemanni', name: 'Nutmeg' });
  await page.getByRole('link', { name: 'Cabinet', exact: true }).first().click();
  await keeper.addSpecimen({ code: 'TK-02', taxon: 'Grammostola rosea', name: 'Sorrel' });
  const named = join(camera, 'TK-02 ventral.jpg');
  await copyFile(samplePhoto('saffron-08-dorsal'), named);

  await keeper.goTo('Intake');
  await keeper.bringIn([named], '1 photo added');
  await page.getByRole('checkbox', { name: 'TK-02 ventral.jpg' }).check();
  const panel = page.getByRole('region', { name: 'Whose skin is it?' });
  await expect(panel.getByRole('radio', { name: 'TK-02' })).toBeChecked();
  await expect(panel.getByLabel('View')).toHaveValue('ventral');
  await panel.getByRole('button', { name: /^The day of the photo/ }).click();
  await panel.getByRole('button', { name: 'Give it to TK-02' }).click();
  await expect(page.getByText('1 photo given to TK-02.')).toBeVisible();
  await expect(page.getByRole('checkbox')).toHaveCount(0);
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect(page.getByRole('checkbox', { name: 'TK-02 ventral.jpg' })).toBeVisible();
  await keeper.goTo('Cabinet');
  await keeper.animal('TK-02').getByRole('link').click();
  await expect(page.getByText('No molt on record')).toBeVisible();
  await page.reload();
  await page.getByRole('button', { name: 'Settings' }).click();
  await page.getByRole('button', { name: /^Put back: The molt of .* of TK-02$/ }).click();
  await expect(page.getByText('Nothing was removed since Exuviary was started.')).toBeVisible();
  await page.getByRole('button', { name: 'Close', exact: true }).click();
  await expect(page.getByRole('region', { name: 'Life line' }).getByRole('article')).toHaveCount(1);
});

test('after a photo was given away the way to the Bench is in sight; taken back, it is chosen with its animal', async ({ page }) => {
  await page.setViewportSize({ width: 1024, height: 700 });
  const keeper = new Keeper(page);
  await keeper.beginEmpty();
  await keeper.addSpecimen({ code: 'TK-01', taxon: 'Aphonopelma seemanni', name: 'Nutmeg' });
  await page.getByRole('link', { name: 'Cabinet', exact: true }).first().click();
  await keeper.addSpecimen({ code: 'TK-02', taxon: 'Grammostola rosea', name: 'Sorrel' });
  await keeper.goTo('Intake');
  const photos = ['juniper-10-dorsal', 'juniper-09-dorsal', 'juniper-08-dorsal', 'juniper-07-dorsal'];
  await keeper.bringIn(photos.map(samplePhoto), '4 photos added');
  await keeper.give({ photo: 'juniper-07-dorsal', to: 'TK-01' });
  await expect(page.getByRole('link', { name: 'Measure it on the Bench' })).toBeInViewport({ ratio: 1 });

  await page.getByRole('button', { name: 'Undo' }).click();
  await expect(page.getByRole('checkbox', { name: 'juniper-07-dorsal' })).toBeChecked();
  await expect(page.getByRole('radio', { name: 'TK-01' })).toBeChecked();
  await expect(page.getByRole('radio', { name: 'TK-02' })).not.toBeChecked();
});

test('the second photo of a skin is offered the molt the first one made; photos months apart are asked about', async ({ page }) => {
  const keeper = new Keeper(page);
  await keeper.beginEmpty();
  await keeper.addSpecimen({ code: 'TK-01', taxon: 'Aphonopelma seemanni', name: 'Nutmeg' });
  await keeper.goTo('Intake');
  const photos = ['juniper-10-dorsal', 'juniper-10-abdomen-inside', 'juniper-05-dorsal'];
  await keeper.bringIn(photos.map(samplePhoto), '3 photos added');
  await expect(page.getByRole('checkbox')).toHaveCount(3);
  await expect(page.getByRole('checkbox').first()).toHaveAccessibleName(/juniper-05-dorsal/);
  await keeper.give({ photo: 'juniper-10-dorsal', to: 'TK-01', instarShed: '10' });
  const panel = page.getByRole('region', { name: 'Whose skin is it?' });
  await page.getByRole('checkbox', { name: /juniper-10-abdomen/ }).check();
  await expect(panel.getByLabel('Skin of the molt').locator('option:checked')).toHaveText(/^8 Feb 2025 · Shed instar 10/);

  await page.getByRole('checkbox', { name: /juniper-05-dorsal/ }).check();
  await expect(panel.getByLabel('View of juniper-05-dorsal.jpg')).toHaveValue('dorsal');
  await expect(panel.getByLabel('View of juniper-10-abdomen-inside.jpg')).toHaveValue('abdomen-inside');
  const give = panel.getByRole('button', { name: 'Give 2 photos to TK-01' });
  await expect(panel.getByText('These photos were taken 1093 days apart: 11 Feb 2022 to 8 Feb 2025.')).toBeVisible();
  await expect(give).toBeDisabled();
  await panel.getByLabel('They show one and the same skin').check();
  await expect(panel.getByText('Say first when the molt was')).toBeVisible();
  await panel.getByRole('button', { name: /^The day of the photo/ }).click();
  await expect(give).toBeEnabled();

  await panel.getByLabel('Molted on').fill('2099-01-05');
  await give.click();
  await expect(panel.getByText('5 Jan 2099 has not come yet. Give a day up to today.')).toBeVisible();
  await expect(panel.getByLabel('Molted on')).toBeFocused();
});

test('photos are dropped on the room as well as chosen', async ({ page }) => {
  const keeper = new Keeper(page);
  await keeper.goTo('Intake');
  const bytes = [...(await readFile(samplePhoto('juniper-05-dorsal')))];
  const dataTransfer = await page.evaluateHandle((content) => {
    const dropped = new DataTransfer();
    dropped.items.add(new File([new Uint8Array(content)], 'dropped.jpg', { type: 'image/jpeg' }));
    return dropped;
  }, bytes);
  await page.getByRole('region', { name: 'Bring photos in' }).dispatchEvent('drop', { dataTransfer });
  await expect(keeper.report().getByRole('status')).toHaveText('1 photo added', { timeout: 60_000 });
  await expect(page.getByRole('checkbox', { name: 'dropped.jpg' })).toHaveAccessibleName(/11 Feb 2022/);
});
