import type { Page } from '@playwright/test';
import { expect, test } from '../support/hosts.ts';
import { Keeper } from '../support/keeper.ts';
import { expectAccessible, expectNoSidewaysScroll } from '../support/pageChecks.ts';

/** An animal with one skin that was read as a female; ends on its page. */
async function withAReadSkin(page: Page, keeper: Keeper): Promise<void> {
  await keeper.beginEmpty();
  await keeper.addSpecimen({ code: 'EX-01', taxon: 'Lasiodora parahybana', name: 'Sorrel' });
  await page.getByRole('button', { name: 'Add a molt' }).first().click();
  const dialog = page.getByRole('dialog', { name: 'Add a molt' });
  await dialog
    .getByLabel(/^Day|Molted on|On the day/)
    .first()
    .fill('2025-03-01');
  await dialog.getByRole('button', { name: 'Add', exact: true }).click();
  await expect(dialog).toBeHidden();
}

test('what the animal shows is recorded, counts, is stated honestly, and can be withdrawn', async ({ page }) => {
  const keeper = new Keeper(page);
  await keeper.openSample();
  await keeper.animal('FH-03').getByRole('link').click();
  const section = page.getByRole('region', { name: 'Its sex, seen on the animal' });
  await section.getByRole('button', { name: 'Record a sign' }).press('Enter');
  const dialog = page.getByRole('dialog', { name: 'Record a sign of the animal' });
  await dialog.getByLabel('What', { exact: true }).selectOption('Hooks on the tibiae');
  await dialog.getByLabel('Seen?').selectOption('Looked, none');
  await expect(dialog.getByText('that none were seen never speaks for a female')).toBeVisible();
  await expectAccessible(page, 'recording a sign');
  await dialog.getByLabel('What', { exact: true }).selectOption('An egg sac');
  await dialog.getByLabel('Seen by').fill('');
  await dialog.getByRole('button', { name: 'Record', exact: true }).press('Enter');
  await expect(dialog.getByText('Say who saw it.')).toBeVisible();
  await dialog.getByLabel('Seen by').fill('Ottokar Venn');
  await dialog.getByRole('button', { name: 'Record', exact: true }).press('Enter');
  await expect(section.getByText('An egg sac laid', { exact: true })).toBeVisible();
  await expect(section.getByText('Speaks for: female, established.')).toBeVisible();

  await section.getByRole('button', { name: 'Statement of sex' }).press('Enter');
  const statement = page.getByRole('dialog', { name: 'Statement of sex' });
  await expect(statement.getByText('Sex: female. How sure: established, which is the highest level.')).toBeVisible();
  await expect(statement.getByText('nothing is promised', { exact: true })).toBeVisible();
  await statement.getByLabel('If it proves wrong').selectOption('Refund');
  await statement.getByLabel('Size now').fill('leg span 11 cm');
  await expect(statement.getByRole('definition').filter({ hasText: 'leg span 11 cm' })).toBeVisible();
  await expectAccessible(page, 'the statement of sex');
  const address = (await statement.getByRole('link', { name: 'Save as a page (PDF)' }).getAttribute('href')) ?? '';
  const head = await page.evaluate(async (from) => (await (await fetch(from)).text()).slice(0, 5), address);
  expect(head).toBe('%PDF-');
  await statement.getByRole('button', { name: 'Close' }).press('Enter');

  await section.getByRole('button', { name: /^Withdraw/ }).press('Enter');
  const withdrawing = page.getByRole('dialog');
  await withdrawing.getByLabel('Why?').fill('It was another animal’s sac.');
  await withdrawing.getByRole('button', { name: 'Withdraw' }).press('Enter');
  await expect(section.getByText('It was another animal’s sac.')).toBeVisible();
});

test('a profile is edited with a reason and named as the keeper’s, and goes back to what was shipped', async ({ page }) => {
  const keeper = new Keeper(page);
  await keeper.openSample();
  await keeper.goTo('Examination');
  await page.getByRole('link', { name: 'Profiles of genera' }).press('Enter');
  await page.getByLabel('Find a genus').fill('avic');
  await page.getByText('Avicularia', { exact: true }).first().click();
  await page.getByRole('button', { name: 'Edit this profile' }).press('Enter');
  const dialog = page.getByRole('dialog', { name: 'Profile of Avicularia' });
  await expectAccessible(page, 'a profile');
  await dialog.getByLabel('Adult carapace of a female').fill('-3');
  await dialog.getByRole('button', { name: 'Keep this version' }).press('Enter');
  await expect(dialog.getByText('A length in millimeters')).toBeVisible();
  await expect(dialog.getByText('Say why')).toBeVisible();
  await dialog.getByLabel('Adult carapace of a female').fill('17,5');
  await dialog.getByLabel('Why? What does it rest on?').fill('Four adult skins of ours.');
  await dialog.getByLabel('Changed by').fill('Ottokar Venn');
  await dialog.getByRole('button', { name: 'Keep this version' }).press('Enter');
  await expect(page.getByText('about 17.5 mm')).toBeVisible();
  await expect(page.getByText(/Ottokar Venn: Four adult skins of ours\./)).toBeVisible();
  await page.getByRole('button', { name: 'Edit this profile' }).press('Enter');
  await dialog.getByRole('checkbox', { name: 'Go back to the profile as shipped' }).check();
  await dialog.getByLabel('Why? What does it rest on?').fill('They were of another genus.');
  await dialog.getByLabel('Changed by').fill('Ottokar Venn');
  await dialog.getByRole('button', { name: 'Keep this version' }).press('Enter');
  await expect(page.getByText('They were of another genus. (back to the shipped profile)')).toBeVisible();
  await expect(page.getByText('about 17.5 mm')).toHaveCount(0);
});

test('a number of the model is changed with a reason; one that does not fit is refused, and the change stays on record', async ({
  page,
}) => {
  const keeper = new Keeper(page);
  await keeper.openSample();
  await page.getByRole('button', { name: 'Settings' }).click();
  await page.getByRole('link', { name: 'To the numbers' }).click();
  await expect(keeper.heading()).toHaveText('Numbers of the evidence model');
  await expectAccessible(page, 'the numbers of the model');
  await page.getByRole('button', { name: /Change.*Where the bands begin/ }).press('Enter');
  const dialog = page.getByRole('dialog', { name: 'Where the bands begin' });
  await dialog.getByLabel('Strong, above').fill('0.7');
  await dialog.getByLabel('Why?').fill('To see what happens.');
  await dialog.getByLabel('Changed by').fill('Ottokar Venn');
  await dialog.getByRole('button', { name: 'Keep these numbers' }).press('Enter');
  await expect(dialog.getByRole('alert')).toContainText('does not fit');
  await dialog.getByLabel('Strong, above').fill('0.97');
  await dialog.getByRole('button', { name: 'Keep these numbers' }).press('Enter');
  await expect(dialog).toBeHidden();
  await expect(page.getByText(/Model \d+\.1, changed once/)).toBeVisible();
  await expect(page.getByText('Set here; shipped as 0.95')).toBeVisible();
  await expect(page.getByText('To see what happens.')).toBeVisible();
});

test('readings of an animal that is proved later are counted, with an interval that admits how little one case says', async ({ page }) => {
  const keeper = new Keeper(page);
  await withAReadSkin(page, keeper);
  await page.evaluate(async () => {
    const send = async (method: string, address: string, body: object) => {
      const answer = await fetch(address, { method, headers: { 'content-type': 'application/json' }, body: JSON.stringify(body) });
      if (!answer.ok) throw new Error(`${method} ${address}: ${await answer.text()}`);
      return answer.json();
    };
    const [{ specimen }] = await (await fetch('/api/specimens')).json();
    const { molts } = await (await fetch(`/api/specimens/${specimen.id}`)).json();
    const known = { recovered: true, grade: 'B', completeness: 'complete', storagePlace: '', notes: '' };
    const skin = molts[0].exuvia ?? (await send('POST', `/api/molts/${molts[0].molt.id}/exuvia`, known));
    const unanswered = {
      ...{ condition: null, light: null, magnification: 'loupe', uterusExternusSeen: 'not-looked', accessoryOrgansSeen: 'not-looked' },
      ...{ fusillaeOutsideSeen: 'not-looked', secondReaderAgrees: 'not-looked', secondReader: null, palpalBulbsOnAnimal: 'not-looked' },
    };
    const checklist = {
      ...unanswered,
      ...{ skinMatchesAnimal: 'yes', grade: 'B', fourBookLungsFound: 'yes', view: 'inside', receptaclesSeen: 'yes' },
      ...{ eggSacLaid: 'not-looked', legSpanMm: 60 },
    };
    await send('POST', `/api/exuviae/${skin.id}/determinations`, {
      ...{ sex: 'female', level: 'leaning', reader: 'Ottokar Venn', readOn: '2025-03-10', checklist, evidencePhotoIds: [] },
      ...{ notes: '', supersedes: null, readingVersion: 0, gradeForSkin: null },
    });
    await send('POST', `/api/specimens/${specimen.id}/live-signs`, {
      ...{ finding: { kind: 'egg-sac', fertile: 'yes' }, seenOn: '2025-06-01', observer: 'Ottokar Venn', photoIds: [], notes: '' },
    });
  });
  await keeper.goTo('Examination');
  await page.getByRole('link', { name: 'Outcome log' }).press('Enter');
  const row = page.getByRole('row', { name: /A skin, loupe/ });
  await expect(row).toContainText('1 of 1');
  // Clopper & Pearson for 1 of 1 at 95 %: the lower limit is 0.025.
  await expect(row).toContainText('between 2 % and 100 % right');
  await expectAccessible(page, 'the outcome log');
});

test('the guide plates have words for who does not see them, and every page beside the readings fits a small window', async ({ page }) => {
  const keeper = new Keeper(page);
  await keeper.openSample();
  await page.setViewportSize({ width: 1024, height: 700 });
  for (const name of ['Guide plates', 'Profiles of genera', 'Outcome log', 'Numbers of the evidence model']) {
    await keeper.goTo('Examination');
    await page.getByRole('link', { name }).press('Enter');
    await expect(keeper.heading()).toHaveText(name);
    await expectNoSidewaysScroll(page, name);
    await expectAccessible(page, name);
  }
  await keeper.goTo('Examination');
  await page.getByRole('link', { name: 'Guide plates' }).press('Enter');
  for (const words of [/four pale book lungs/, /Male with accessory organs/, /Two fangs, black/]) {
    await expect(page.getByRole('img', { name: words })).toBeVisible();
  }
});
