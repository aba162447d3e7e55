import { readFile } from 'node:fs/promises';
import { expect, type Page } from '@playwright/test';
import { test } from '../support/hosts.ts';
import { Keeper } from '../support/keeper.ts';
import { expectAccessible, expectNoSidewaysScroll } from '../support/pageChecks.ts';

async function openJuniper(page: Page): Promise<Keeper> {
  const keeper = new Keeper(page);
  await keeper.openSample();
  await keeper.goTo('Ladder');
  await page.getByRole('link', { name: /Juniper/ }).click();
  await expect(keeper.heading()).toHaveText('Juniper');
  return keeper;
}

test('a rung is lit in the chart, in the gallery and in the table alike, also by keys', async ({ page }) => {
  await openJuniper(page);
  const skin = page.getByRole('listitem').filter({ has: page.getByRole('img', { name: /Skin of instar 7, at the common scale/ }) });
  const point = page.getByRole('figure').getByRole('link', { name: /^Instar 7,/ });
  const row = page.getByRole('row', { name: /Instar 7/ });
  const plain = { skin: await backgroundOf(skin.getByRole('paragraph')), row: await backgroundOf(row.getByRole('rowheader')) };
  await point.focus();
  await expect.poll(() => backgroundOf(row.getByRole('rowheader'))).not.toBe(plain.row);
  await expect.poll(() => backgroundOf(skin.getByRole('paragraph'))).not.toBe(plain.skin);
  await row.hover();
  await expect(page.getByRole('figure').getByText(/shed \d+ \w{3} \d{4}/)).toBeVisible();
});

test('growth is drawn four ways, each with words, and leaves as drawing, picture and figures', async ({ page }) => {
  await openJuniper(page);
  const figure = page.getByRole('figure');
  for (const [way, words] of [
    ['By instar', 'The inner band holds the size expected there'],
    ['By date', 'Each point stands on the day of the molt'],
    ['Ratios', 'how many times as large a skin is'],
    ['Intervals', 'how long an instar lasted'],
  ] as const) {
    await page.getByRole('radio', { name: way, exact: true }).check();
    await expect(figure.getByText(words)).toBeVisible();
  }
  await expect(figure.getByRole('link')).toHaveCount(5);
  const saved = async (button: string) => {
    const [download] = await Promise.all([page.waitForEvent('download'), page.getByRole('button', { name: button }).click()]);
    return { name: download.suggestedFilename(), bytes: await readFile(await download.path()) };
  };
  const svg = await saved('Drawing (SVG)');
  expect(svg.name).toBe('Juniper, Days an instar lasted.svg');
  expect(svg.bytes.toString()).toMatch(/^<svg[^>]*>.*instar that ended.*<\/svg>$/s);
  expect(svg.bytes.toString()).not.toContain('NaN');
  for (const words of ['Days an instar lasted: Juniper, FH-03', 'Each point is how long an instar lasted', 'are invented'])
    expect(svg.bytes.toString()).toContain(words);
  const png = await saved('Picture (PNG)');
  expect([...png.bytes.subarray(1, 4)]).toEqual([...Buffer.from('PNG')]);
  const csv = await saved('Figures (CSV)');
  const lines = csv.bytes.toString().trim().split('\r\n');
  expect(lines).toHaveLength(7);
  for (const line of lines.slice(1)) expect(line).toMatch(/^Juniper,FH-03,[^,]+,yes,skin,/);
  expect(csv.bytes.toString()).not.toMatch(/\d\.\d{4}/);
});

test('skins lie over each other, turn one by one, and leave as a contact sheet and a flip-book', async ({ page }) => {
  const keeper = await openJuniper(page);
  await page.getByRole('radio', { name: 'Over each other' }).check();
  const stage = page.getByRole('region', { name: 'Two skins over each other' });
  await expect(stage.getByRole('img')).toHaveCount(2);
  await page.getByLabel('Below').selectOption({ label: 'Instar 5' });
  await expect(stage.getByRole('img', { name: /instar 5/ })).toBeVisible();
  await page.getByRole('slider', { name: 'Fade' }).fill('0.2');
  await expect(page.getByRole('slider', { name: 'Fade' })).toHaveAttribute('aria-valuetext', '20 % of instar 10');

  await page.getByRole('radio', { name: 'One by one' }).check();
  await expect(page.getByText('(6 of 6)')).toBeVisible();
  await page.getByRole('button', { name: 'Earlier' }).click();
  await expect(page.getByText('(5 of 6)')).toBeVisible();

  await page.getByText('Save a contact sheet or a flip-book').click();
  for (const [link, signature, name] of [
    ['Contact sheet (PDF)', '%PDF', 'Juniper contact sheet, A4, fitted.pdf'],
    ['Flip-book (animated WebP)', 'RIFF', 'Juniper flip-book.webp'],
  ] as const) {
    const [download] = await Promise.all([page.waitForEvent('download'), page.getByRole('link', { name: link }).click()]);
    expect((await readFile(await download.path())).subarray(0, 4).toString()).toBe(signature);
    expect(download.suggestedFilename()).toBe(name);
  }
  await expect(keeper.heading()).toHaveText('Juniper');
});

test('animals stand beside each other with their order, and the next molt is told with why', async ({ page }) => {
  const keeper = await openJuniper(page);
  await expect(page.getByRole('region', { name: 'Forecast' })).toContainText(/Next molt: .*; carapace then [\d.]+ to [\d.]+ mm\./);
  await expect(page.getByRole('region', { name: 'The living animal now' })).toContainText(
    /Carapaceabout [\d.]+ mm, nine chances in ten [\d.]+ to [\d.]+ mm.*Instar 10 is the instar that ended/,
  );
  await page.getByRole('button', { name: 'Compare' }).click();
  const add = page.getByLabel('Add another animal');
  for (const name of ['Bramble', 'Saffron']) {
    const label = (await add.getByRole('option').allTextContents()).find((option) => option.includes(name)) ?? '';
    await add.selectOption({ label });
  }
  const ranks = page.getByRole('table', { name: /animals measured in instar 8,/ });
  await page.getByLabel('In order of size in').selectOption({ label: 'Instar 8' });
  for (const name of ['Juniper', 'Bramble', 'Saffron']) await expect(ranks.getByRole('rowheader', { name })).toBeVisible();
  await expect(page.getByText('The band is where one more animal of this group would lie')).toBeVisible();
  await page.getByText('The same figures as a table').click();
  await expect(
    page.getByRole('table', { name: 'Every skin in the chart' }).getByRole('rowheader', { name: 'Bramble' }).first(),
  ).toBeVisible();
  await page.getByRole('radio', { name: 'By days since a molt' }).check();
  await expect(page.getByLabel('Day 0 is the molt of')).toBeVisible();
  await expectAccessible(page, 'the Ladder with animals beside each other');
  await page.setViewportSize({ width: 1024, height: 700 });
  await expectNoSidewaysScroll(page, 'the Ladder');
  const topOf = async (name: string) => (await page.getByRole('heading', { name, exact: true }).boundingBox())?.y;
  expect(await topOf('The skins at one scale')).toBe(await topOf('Growth'));

  await keeper.goTo('Cabinet');
  await page.getByRole('button', { name: 'Next due' }).click();
  await expect(page.getByRole('button', { name: /Next due/ })).toHaveAttribute('aria-pressed', 'true');
});

function backgroundOf(part: ReturnType<Page['locator']>): Promise<string> {
  return part.evaluate((element) => getComputedStyle(element).backgroundColor);
}

test('a molt that went unseen is suggested, put on record as a gap, and taken back', async ({ page }) => {
  const keeper = new Keeper(page);
  await keeper.openSample();
  // Juniper as if the molt of instar 8 had gone unseen and nobody had counted on since.
  await page.evaluate(async () => {
    const get = async (path: string) => (await fetch(path)).json();
    const animals = await get('/api/specimens');
    const { id } = animals.find(({ specimen }: { specimen: { code: string } }) => specimen.code === 'FH-03').specimen;
    for (const { molt } of (await get(`/api/specimens/${id}`)).molts) {
      if (molt.instarShed === 8) await fetch(`/api/molts/${molt.id}`, { method: 'DELETE' });
      if (molt.instarShed === null || molt.instarShed < 9) continue;
      const { happenedFrom, happenedTo, position, outcomes, notes } = molt;
      await fetch(`/api/molts/${molt.id}`, {
        method: 'PUT',
        headers: { 'content-type': 'application/json', 'if-match': `"${molt.version}"` },
        body: JSON.stringify({ happenedFrom, happenedTo, instarShed: null, position, outcomes, notes }),
      });
    }
  });
  await page.reload();
  await keeper.goTo('Ladder');
  await page.getByRole('link', { name: /Juniper/ }).click();
  const questions = page.getByRole('region', { name: 'Questions about this row' });
  await expect(questions).toContainText(/(Likely|Possible): a missed molt between instar 7 and instar 8/);
  // Whoever knows better says so, and is not asked again before they want to be.
  await questions.getByRole('button', { name: 'No, none was missed' }).first().click();
  await expect(questions).toContainText('You said that no molt was missed between instar 7 and instar 8.');
  await expect(questions).not.toContainText(/(Likely|Possible): a missed molt between instar 7/);
  await expect(questions).toBeFocused();
  await page.reload();
  await questions.getByRole('button', { name: 'Ask again' }).click();
  await expect(questions).toContainText(/(Likely|Possible): a missed molt between instar 7 and instar 8/);

  await questions.getByRole('button', { name: 'Put the gap on record' }).first().click();
  await expect(page.getByRole('cell', { name: 'Instar 8 has no molt on record.' })).toBeVisible();
  await questions.getByRole('button', { name: 'Take the gap back' }).click();
  await expect(page.getByRole('cell', { name: 'Instar 8 has no molt on record.' })).toHaveCount(0);
  await expect(questions).toContainText(/a missed molt between instar 7 and instar 8/);

  // Also on another day, when nobody remembers putting it there.
  await questions.getByRole('button', { name: 'Put the gap on record' }).first().click();
  await expect(page.getByRole('cell', { name: 'Instar 8 has no molt on record.' })).toBeVisible();
  await page.reload();
  await page.getByRole('button', { name: 'Take this gap out' }).click();
  await expect(page.getByText(/The gap is taken out: \d molts? got another instar number/)).toBeVisible();
  await expect(page.getByRole('cell', { name: 'Instar 8 has no molt on record.' })).toHaveCount(0);
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect(page.getByRole('cell', { name: 'Instar 8 has no molt on record.' })).toBeVisible();
});

test('in a row without any instar number the gap is kept as a presumed molt, and taken back', async ({ page }) => {
  const keeper = new Keeper(page);
  await keeper.openSample();
  // Juniper as if nobody had ever counted, the molt of instar 8 unseen.
  await page.evaluate(async () => {
    const get = async (path: string) => (await fetch(path)).json();
    const put = (path: string, version: number, body: unknown) =>
      fetch(path, {
        method: 'PUT',
        headers: { 'content-type': 'application/json', 'if-match': `"${version}"` },
        body: JSON.stringify(body),
      });
    const animals = await get('/api/specimens');
    const { specimen } = animals.find((animal: { specimen: { code: string } }) => animal.specimen.code === 'FH-03');
    const { id, version, sample: _, createdAt: __, ...draft } = specimen;
    await put(`/api/specimens/${id}`, version, { ...draft, acquiredInstar: null });
    for (const { molt } of (await get(`/api/specimens/${id}`)).molts) {
      if (molt.instarShed === 8) await fetch(`/api/molts/${molt.id}`, { method: 'DELETE' });
      const { happenedFrom, happenedTo, position, outcomes, notes } = molt;
      if (molt.instarShed !== 8)
        await put(`/api/molts/${molt.id}`, molt.version, { happenedFrom, happenedTo, instarShed: null, position, outcomes, notes });
    }
  });
  await page.reload();
  await keeper.goTo('Ladder');
  await page.getByRole('link', { name: /Juniper/ }).click();
  const questions = page.getByRole('region', { name: 'Questions about this row' });
  await expect(questions).toContainText('No instar is known here, so a presumed molt without a skin is put between the two');
  await questions.getByRole('button', { name: 'Put the gap on record' }).first().click();
  const presumed = page.getByText('presumed molt: nobody saw it, and no skin of it is on record').first();
  await expect(presumed).toBeVisible();
  await expect(questions).toContainText('1 presumed molt stands between the two skins');
  await questions.getByRole('button', { name: 'Take the gap back' }).click();
  await expect(page.getByText('presumed molt: nobody saw it')).toHaveCount(0);
  await expect(questions).toContainText(/a missed molt between/);
});
