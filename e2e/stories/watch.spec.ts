import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import sharp from 'sharp';
import { expect, test } from '../support/camera.ts';
import { Keeper } from '../support/keeper.ts';
import { expectAccessible, expectKeysForAThumb } from '../support/pageChecks.ts';

test('what is seen is noted in two taps, taken back, noted for an earlier hour, and survives a new start of the page', async ({ page }) => {
  const keeper = new Keeper(page);
  await keeper.openSample();
  await keeper.goTo('Watch');
  await page.getByRole('region', { name: 'Everybody' }).getByRole('button', { name: /FH-03/ }).click();
  const pad = page.getByRole('region', { name: /FH-03/ });
  await expect(pad.getByRole('heading', { level: 2 })).toBeFocused();

  await pad.getByRole('button', { name: 'Refused food' }).click();
  const last = pad.getByRole('region', { name: 'Noted last' });
  await expect(last.getByRole('listitem')).toHaveText([/^Refused food/]);
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect(last).toHaveCount(0);

  await keeper.wasEarlier(pad, 365 * 24);
  await pad.getByRole('button', { name: 'Laid a silk mat' }).click();
  await expect(last.getByRole('listitem')).toHaveText([/^Laid a silk mat/]);
  await page.reload();
  await expect(last.getByRole('listitem')).toHaveText([/^Laid a silk mat/]);
  await last.getByRole('button', { name: 'Remove "laid a silk mat"' }).click();
  await expect(last).toHaveCount(0);
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect(last.getByRole('listitem')).toHaveCount(1);
});

test('a note with five later ones is removed from the line of the animal, and put back', async ({ page }) => {
  const keeper = new Keeper(page);
  await keeper.openSample();
  await keeper.goTo('Watch');
  await page.getByRole('region', { name: 'Everybody' }).getByRole('button', { name: /FH-03/ }).click();
  const pad = page.getByRole('region', { name: /FH-03/ });
  const last = pad.getByRole('region', { name: 'Noted last' });
  for (const [index, key] of ['Laid a silk mat', 'Ate', 'Drank', 'Refused food', 'Ate', 'Drank'].entries()) {
    await pad.getByRole('button', { name: key, exact: true }).click();
    await expect(last.getByRole('listitem')).toHaveCount(Math.min(index + 1, 5));
    await expect(last.getByRole('listitem').first()).toHaveText(new RegExp(`^${key}`));
  }
  await expect(last).not.toContainText('Laid a silk mat');
  await last.getByRole('link', { name: 'the page of FH-03' }).click();
  const line = page.getByRole('region', { name: 'Everything on record' });
  const mat = line.getByRole('listitem').filter({ hasText: 'Laid a silk mat' });
  await expect(mat).toHaveCount(1);
  await mat.getByRole('button', { name: /^Remove "laid a silk mat" of / }).click();
  const dialog = page.getByRole('dialog', { name: /^Remove "laid a silk mat" of / });
  await expect(dialog).toContainText('Nothing else goes with it.');
  await dialog.getByRole('button', { name: 'Remove', exact: true }).click();
  await expect(mat).toHaveCount(0);
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect(mat).toHaveCount(1);
});

test('a molt under way is timed, a second one refused in words, and its end leads to the fangs and the hold', async ({ page }) => {
  const keeper = new Keeper(page);
  await keeper.openSample();
  await keeper.goTo('Watch');
  await page.getByRole('region', { name: 'Everybody' }).getByRole('button', { name: /FH-03/ }).click();
  const pad = page.getByRole('region', { name: /FH-03/ });
  await pad.getByRole('button', { name: 'Turned over', exact: true }).click();
  await expect(pad.getByRole('status')).toHaveText('Within what is usual');
  await expect(pad.getByText('Remove nothing, touch nothing')).toBeVisible();
  const today = page.getByRole('region', { name: /^Today/ });
  const ofJuniper = (need: string) => today.getByRole('listitem').filter({ hasText: 'FH-03' }).filter({ hasText: need });
  await expect(ofJuniper('Molting now')).toHaveCount(1);

  await pad.getByRole('button', { name: 'Turned over', exact: true }).click();
  await expect(pad.getByRole('alert')).toContainText('a second one cannot begin');
  await page.reload();
  await expect(pad.getByRole('status')).toHaveText('Within what is usual');

  await pad.getByRole('button', { name: 'Free of its skin', exact: true }).click();
  await expect(ofJuniper('Hardening after its molt')).toContainText('fangs not noted yet');
  await pad.getByRole('button', { name: 'Free of its skin', exact: true }).click();
  await expect(pad.getByRole('alert')).toContainText('would be a second end');
  await pad.getByRole('button', { name: 'Fangs black', exact: true }).click();
  await expect(pad.getByRole('alert')).toContainText('Its new fangs cannot be black yet');
  await pad.getByRole('button', { name: 'Fangs red-brown', exact: true }).click();
  await expect(ofJuniper('Hardening after its molt')).toContainText('fangs red-brown');
  await pad.getByRole('button', { name: 'Fangs white', exact: true }).click();
  await expect(pad.getByRole('alert')).toContainText('cannot both be of one molt');
  await pad.getByRole('button', { name: 'Ate', exact: true }).click();
  await expect(ofJuniper('Hardening after its molt')).toContainText('too early: offer nothing more');
  await pad.getByRole('button', { name: 'Put it on record: FH-03' }).click();
  const dialog = page.getByRole('dialog', { name: 'Add a molt' });
  await expect(dialog.getByLabel('Instar')).toHaveValue('11');
  await dialog.getByRole('button', { name: 'Add', exact: true }).click();
  await expect(dialog).toBeHidden();
  await expect(ofJuniper('A skin to recover')).toHaveCount(1);
  await expect(ofJuniper('Hardening after its molt')).toContainText('fangs red-brown');
});

test('the sample shows one of everything that can bring an animal onto the board', async ({ page }) => {
  const keeper = new Keeper(page);
  await keeper.openSample();
  await keeper.goTo('Watch');
  const today = page.getByRole('region', { name: /^Today/ });
  for (const [code, need] of [
    ['FH-12', 'Molting now'],
    ['FH-07', 'Hardening after its molt'],
    ['FH-13', 'No prey yet'],
    ['FH-02', 'Premolt strongly suspected'],
    ['FH-10', 'Waiting long for a molt'],
    ['FH-05', 'Molt expected'],
    ['FH-15', 'A molt to put on record'],
    ['FH-13', 'A skin to recover'],
    ['FH-08', 'A skin to examine'],
  ] as const) {
    await expect(today.getByRole('listitem').filter({ hasText: code }).filter({ hasText: need })).toHaveCount(1);
  }
  await expect(today.getByRole('listitem').first()).toContainText('FH-12 Larch');
  await expectAccessible(page, 'the board with one of everything');
});

test('the waits can be the keeper’s own, with the difference shown, and the calendar is a file', async ({ page }) => {
  const keeper = new Keeper(page);
  await keeper.openSample();
  await keeper.goTo('Watch');
  await page.getByRole('button', { name: 'Waits after a molt' }).click();
  const dialog = page.getByRole('dialog', { name: 'Waits after a molt' });
  await expect(dialog.getByRole('status')).toHaveText('These are the cautious waits.');
  await dialog.getByLabel('Row 3, wait', { exact: true }).fill('14');
  await expect(dialog.getByRole('status')).toContainText('14 days instead of 21 days (shorter)');
  await dialog.getByLabel('Row 4, wait', { exact: true }).fill('0');
  await expect(dialog.getByRole('alert')).toContainText('A wait of 0 is no wait');
  await expect(dialog.getByRole('button', { name: 'Save' })).toBeDisabled();
  await dialog.getByLabel('Row 4, wait', { exact: true }).fill('1');
  await expect(dialog.getByRole('alert')).toHaveCount(0);
  await dialog.getByLabel('Row 3, wait', { exact: true }).fill('6');
  await expect(dialog.getByText('Shorter than anybody’s custom')).toBeVisible();
  await dialog.getByLabel('Row 3, wait', { exact: true }).fill('14');
  await expect(dialog.getByText('Shorter than anybody’s custom')).toHaveCount(0);
  await dialog.getByLabel('Row 2, from leg span in mm').fill('60');
  await expect(dialog.getByText('Not yet a table')).toBeVisible();
  await expect(dialog.getByRole('button', { name: 'Save' })).toBeDisabled();
  await dialog.getByLabel('Row 2, from leg span in mm').fill('25.4');
  await dialog.getByRole('button', { name: 'Save' }).click();
  await expect(dialog).toBeHidden();
  await page.getByRole('button', { name: 'Waits after a molt' }).click();
  await expect(dialog.getByLabel('Row 3, wait', { exact: true })).toHaveValue('14');
  await page.keyboard.press('Escape');

  const download = page.waitForEvent('download');
  await page.getByRole('link', { name: 'Calendar file' }).click();
  const text = await readFile(await (await download).path(), 'utf8');
  expect(text).toMatch(/^BEGIN:VCALENDAR\r\nVERSION:2\.0\r\n/);
});

test('every key of the room is at least 40 pixels high at 1024 by 700, and nothing waits for a pointer to hover', async ({ page }) => {
  await page.setViewportSize({ width: 1024, height: 700 });
  const keeper = new Keeper(page);
  await keeper.openSample();
  await keeper.goTo('Watch');
  await page.getByRole('region', { name: 'Everybody' }).getByRole('button', { name: /FH-15/ }).click();
  await expect(page.getByRole('list', { name: 'Also to do' }).getByRole('button', { name: 'Put it on record: FH-15' })).toBeVisible();
  await expect(page.getByRole('main').getByRole('button', { name: 'Fangs black' })).toBeVisible();
  await expect(page.getByRole('region', { name: 'Pairing' })).toContainText('Grammostola pulchra');
  await expectKeysForAThumb(page, 'Watch');
});

test('a molt that ends before it began is refused in words, and a reader on another clock is told which one was read', async ({ page }) => {
  const keeper = new Keeper(page);
  await keeper.openSample();
  await keeper.goTo('Watch');
  await page.getByRole('region', { name: 'Everybody' }).getByRole('button', { name: /FH-03/ }).click();
  const pad = page.getByRole('region', { name: /FH-03/ });
  await keeper.wasEarlier(pad, 2);
  await pad.getByRole('button', { name: 'Turned over', exact: true }).click();
  await expect(pad.getByRole('status')).toHaveText('Within what is usual');
  await keeper.wasEarlier(pad, 4);
  await pad.getByRole('button', { name: 'Free of its skin', exact: true }).click();
  await expect(pad.getByRole('alert')).toContainText('before it begins at');
  await expect(pad.getByRole('status')).toHaveText('Within what is usual');

  const offset = await page.evaluate(() => new Date().getTimezoneOffset());
  const session = await page.context().newCDPSession(page);
  await session.send('Emulation.setTimezoneOverride', { timezoneId: offset === 0 ? 'America/Denver' : 'UTC' });
  await page.reload();
  await expect(pad.getByText(/^since .* \(UTC[+-]\d\d:\d\d\)$/)).toBeVisible();
  await pad.getByRole('button', { name: 'Free of its skin', exact: true }).click();
  await expect(pad.getByRole('region', { name: 'Noted last' }).getByRole('listitem')).toHaveText([
    /^Free of its skin(?!.*UTC)/,
    /^Turned over.*\(UTC/,
  ]);
});

test('an animal of unknown size waits the longest, says so, and offers to be measured', async ({ page }) => {
  const keeper = new Keeper(page);
  await keeper.openSample();
  await keeper.goTo('Watch');
  await page.getByRole('region', { name: 'Everybody' }).getByRole('button', { name: /FH-14/ }).click();
  const pad = page.getByRole('region', { name: /FH-14/ });
  await keeper.wasEarlier(pad, 72);
  await pad.getByRole('button', { name: 'Free of its skin', exact: true }).click();
  await expect(pad.getByText('Its size is not known, so it waits as the longest')).toBeVisible();
  await expect(pad.getByRole('button', { name: 'Leg span measured' })).toHaveCount(0);
  await pad.getByRole('button', { name: 'Back to now' }).click();
  await pad.getByRole('button', { name: 'Fangs black', exact: true }).click();
  await pad.getByRole('button', { name: 'Leg span measured' }).click();
  const dialog = page.getByRole('dialog', { name: 'Leg span measured' });
  await dialog.getByLabel('Leg span, mm').fill('20');
  await dialog.getByLabel('May be off by').fill('2');
  await dialog.getByRole('button', { name: 'Note it' }).click();
  const entry = page
    .getByRole('region', { name: /^Today/ })
    .getByRole('listitem')
    .filter({ hasText: 'FH-14' });
  await expect(entry).toHaveCount(1);
  await expect(entry).toContainText('its wait of 4 days ends on');
});

test('pictures are attached to a molt, and their times become its stages', async ({ page, camera }) => {
  const files = await Promise.all(
    (['22:10', '23:40'] as const).map(async (clock, index) => {
      const file = join(camera, `molt-${index}.jpg`);
      const taken = { DateTimeOriginal: `2026:03:01 ${clock}:00`, OffsetTimeOriginal: '+01:00' };
      await sharp({ create: { width: 320 + index, height: 240, channels: 3, background: '#8a6f4e' } })
        .withExif({ IFD2: taken })
        .jpeg()
        .toFile(file);
      return file;
    }),
  );
  const keeper = new Keeper(page);
  await keeper.openSample();
  await keeper.goTo('Watch');
  await page.getByRole('region', { name: 'Everybody' }).getByRole('button', { name: /FH-14/ }).click();
  const pad = page.getByRole('region', { name: /FH-14/ });
  await pad.getByRole('button', { name: 'Times from photos' }).click();
  const dialog = page.getByRole('dialog', { name: 'Times from photos of FH-14' });
  const chooser = page.waitForEvent('filechooser');
  await dialog.getByRole('button', { name: 'Attach photos' }).click();
  await (await chooser).setFiles(files);
  await dialog.getByLabel('Stage in molt-0.jpg').selectOption('Free of its skin');
  await dialog.getByLabel('Stage in molt-1.jpg').selectOption('Turned over');
  await expect(dialog.getByRole('alert')).toContainText('These times cannot be of one molt');
  await expect(dialog.getByRole('button', { name: 'Note these times' })).toBeDisabled();
  await dialog.getByLabel('Stage in molt-0.jpg').selectOption('Turned over');
  await dialog.getByLabel('Stage in molt-1.jpg').selectOption('Free of its skin');
  await expect(dialog.getByRole('alert')).toHaveCount(0);
  await expectAccessible(page, 'times from photos');
  await dialog.getByRole('button', { name: 'Note these times' }).click();
  await expect(dialog).toBeHidden();
  await expect(pad.getByRole('region', { name: 'Noted last' }).getByRole('listitem')).toHaveText([
    /^Free of its skin1 Mar 2026, 23:40.*from a photo/,
    /^Turned over1 Mar 2026, 22:10.*from a photo/,
  ]);
});

test('pictures that could not be taken on are told of at once, and can be attached again', async ({ page, camera }) => {
  const file = join(camera, 'molt.jpg');
  const taken = { DateTimeOriginal: '2026:03:01 22:10:00', OffsetTimeOriginal: '+01:00' };
  await sharp({ create: { width: 322, height: 240, channels: 3, background: '#8a6f4e' } })
    .withExif({ IFD2: taken })
    .jpeg()
    .toFile(file);
  const keeper = new Keeper(page);
  await keeper.openSample();
  await keeper.goTo('Watch');
  await page.getByRole('region', { name: 'Everybody' }).getByRole('button', { name: /FH-14/ }).click();
  await page.getByRole('region', { name: /FH-14/ }).getByRole('button', { name: 'Times from photos' }).click();
  const dialog = page.getByRole('dialog', { name: 'Times from photos of FH-14' });
  const attach = async () => {
    const chooser = page.waitForEvent('filechooser');
    await dialog.getByRole('button', { name: 'Attach photos' }).click();
    await (await chooser).setFiles(file);
  };
  await page.route('**/api/imports', (route) => route.abort());
  await attach();
  await expect(dialog.getByRole('alert')).toBeVisible();
  await expect(dialog.getByRole('button', { name: 'Attach photos' })).toBeEnabled();
  await page.unroute('**/api/imports');
  await attach();
  await expect(dialog.getByLabel('Stage in molt.jpg')).toBeVisible();
  await expect(dialog.getByRole('alert')).toHaveCount(0);
});

test('a molt that takes too long says whom to ask, and is told on the desktop only on consent', async ({ page }) => {
  await page.context().grantPermissions(['notifications']);
  const keeper = new Keeper(page);
  await keeper.openSample();
  const told: string[] = [];
  await page.exposeFunction('noteNotice', (title: string) => told.push(title));
  await page.addInitScript(() => {
    window.Notification = class extends Notification {
      constructor(title: string, options?: NotificationOptions) {
        super(title, options);
        Object.getOwnPropertyDescriptor(window, 'noteNotice')?.value(`${title} ${String(options?.silent)}`);
      }
    };
  });
  await page.reload();
  await keeper.goTo('Watch');
  await page.getByRole('region', { name: 'Everybody' }).getByRole('button', { name: /FH-03/ }).click();
  const pad = page.getByRole('region', { name: /FH-03/ });
  await keeper.wasEarlier(pad, 72);
  await pad.getByRole('button', { name: 'Write something with it' }).click();
  await pad.getByLabel('Note').fill('On its side');
  await pad.getByRole('button', { name: 'Turned over', exact: true }).click();
  await expect(pad.getByText('defer to a veterinarian with exotic-animal experience')).toBeVisible();
  await expect(pad.getByRole('region', { name: 'Noted last' })).toContainText('On its side');
  await expectAccessible(page, 'a molt that takes too long');
  expect(told).toEqual([]);

  const consent = page.getByRole('checkbox', { name: /Tell me on this desktop/ });
  await consent.click();
  await expect(consent).toBeChecked();
  await expect.poll(() => told).toEqual(['FH-03: Molting for too long true']);
  const asked = page.waitForResponse((response) => response.url().endsWith('/api/watch'));
  await page.reload();
  await asked;
  await expect(pad.getByText('defer to a veterinarian with exotic-animal experience')).toBeVisible();
  expect(told).toHaveLength(1);
  await page.getByRole('button', { name: 'Waits after a molt' }).click();
  await expectAccessible(page, 'the waits');
});

test('a molt that has become long while nobody sees the page is told on the desktop', async ({ page }) => {
  await page.context().grantPermissions(['notifications']);
  const keeper = new Keeper(page);
  await keeper.openSample();
  const told: string[] = [];
  await page.exposeFunction('noteNotice', (title: string) => told.push(title));
  await page.addInitScript(() => {
    window.Notification = class extends Notification {
      constructor(title: string, options?: NotificationOptions) {
        super(title, options);
        Object.getOwnPropertyDescriptor(window, 'noteNotice')?.value(title);
      }
    };
  });
  await page.clock.install();
  await page.reload();
  await keeper.goTo('Watch');
  await page.getByRole('region', { name: 'Everybody' }).getByRole('button', { name: /FH-03/ }).click();
  const consent = page.getByRole('checkbox', { name: /Tell me on this desktop/ });
  await consent.click();
  await expect(consent).toBeChecked();

  await page.evaluate(() => {
    Object.defineProperty(document, 'visibilityState', { get: () => 'hidden' });
    Object.defineProperty(document, 'hidden', { get: () => true });
    document.dispatchEvent(new Event('visibilitychange'));
  });
  const noted = await page.evaluate(async () => {
    const board: { at: string } = await (await fetch('/api/watch')).json();
    const body = {
      kind: 'turned-over',
      moment: { at: new Date(Date.parse(board.at) - 3 * 86_400_000).toISOString(), offset: '+00:00' },
      ...{ observer: '', note: '', source: { kind: 'hand' }, span: null },
    };
    const specimenId = window.location.hash.split('/').at(-1);
    const headers = { 'content-type': 'application/json' };
    return (await fetch(`/api/specimens/${specimenId}/observations`, { method: 'POST', headers, body: JSON.stringify(body) })).status;
  });
  expect(noted).toBe(201);
  expect(told).toEqual([]);
  await page.clock.fastForward('01:01');
  await expect.poll(() => told).toEqual(['FH-03: Molting for too long']);
});

test('everything on record about an animal stands on one line, and on paper without the ways to change it', async ({ page }) => {
  const keeper = new Keeper(page);
  await keeper.openSample();
  await keeper.animal('FH-03').getByRole('link').click();
  const line = page.getByRole('region', { name: 'Everything on record' });
  await expect(line).toBeVisible();
  const days = await line
    .getByRole('listitem')
    .getByRole('time')
    .evaluateAll((times) => times.map((time) => time.getAttribute('datetime') ?? ''));
  expect(days.length).toBeGreaterThan(10);
  expect(days).toEqual(days.toSorted().toReversed());
  await expect(line.getByRole('button', { name: 'Print this line' })).toBeVisible();
  await page.emulateMedia({ media: 'print' });
  await expect(line).toBeVisible();
  await expect(page.getByRole('button', { includeHidden: false })).toHaveCount(0);
  await expect(page.getByRole('navigation', { name: 'Rooms' })).toBeHidden();
  await expect(page.getByRole('region', { name: 'Life line' })).toBeHidden();
  await expect(page.getByRole('main').getByRole('link', { name: 'Cabinet', exact: true })).toBeHidden();
});
