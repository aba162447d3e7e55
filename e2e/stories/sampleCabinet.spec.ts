import { expect, test } from '../support/hosts.ts';
import { Keeper, shownEstimate } from '../support/keeper.ts';
import { photoTruth } from '../support/photoTruth.ts';

const JUNIPER = ['05', '06', '07', '08', '09', '10'].map((instar) => ({
  instar: Number(instar),
  truth: photoTruth(`juniper-${instar}-dorsal`, `specimen-a_instar-${instar}_dorsal`),
}));

test('the sample cabinet shows what every room is for, and goes as it came', async ({ page }) => {
  const keeper = new Keeper(page);
  await keeper.openSample();
  await expect(page.getByText('2.7.5', { exact: true })).toBeVisible();
  await expect(page.getByText('14 animals kept: 2 males, 7 females, 5 unsexed or only leaning')).toBeVisible();
  await expect(page.getByText('The animals marked "sample" are invented, and so is every number about them.')).toBeVisible();
  await expect(keeper.animal('FH-03')).toContainText('female, strong');
  await expect(keeper.animal('FH-05')).toContainText('male, probable');
  await page.getByLabel('Search').fill('brachypelma');
  await expect(page.getByText('1 of 15 shown')).toBeVisible();
  await page.getByRole('button', { name: 'Clear' }).click();

  await keeper.goTo('Bench');
  await expect(page.getByText(/^Every photo of a skin from above is measured, \d+ other photos are not\.$/)).toBeVisible();
  await page.getByRole('link', { name: /Juniper.*skin of instar 10, from above/ }).click();
  await keeper.bench.shown();
  await expect(keeper.heading()).toHaveText('Juniper Aphonopelma seemanni');
  await keeper.bench.take('Points');
  await expect(keeper.bench.panel().getByText('52 of 52 points answered')).toBeVisible();

  await keeper.goTo('Ladder');
  await page.getByRole('link', { name: /Juniper/ }).click();
  const rows = page.getByRole('table', { name: 'Instars on record' }).getByRole('row').filter({ hasText: 'shed' });
  await expect(rows).toHaveCount(JUNIPER.length);
  for (const [index, { instar, truth }] of JUNIPER.entries()) {
    await expect(rows.nth(index).getByRole('rowheader')).toContainText(`Instar ${instar}`);
    const { value, uncertainty } = shownEstimate(await rows.nth(index).getByRole('cell').nth(1).textContent());
    expect(Math.abs(value - truth.carapaceLengthMm)).toBeLessThan(uncertainty);
    expect(uncertainty / value).toBeLessThan(0.15);
  }
  const chart = page.getByRole('figure');
  await expect(chart.getByRole('link')).toHaveCount(JUNIPER.length);
  const first = shownEstimate(await rows.first().getByRole('cell').nth(1).textContent());
  const shed = (await rows.first().getByRole('rowheader').textContent())?.split('shed ')[1] ?? '';
  const point = `Instar 5, molted ${shed}: carapace length ${first.value} mm ± ${first.uncertainty} mm`;
  await expect(chart.getByRole('link', { name: point })).toBeVisible();
  // The six true lengths grow by 1.25 from molt to molt; least squares on their logarithms must find that again.
  const ratio = Number(
    /(\d\.\d+)\s*times as long/.exec((await page.getByText('a molt made the carapace on average').textContent()) ?? '')?.[1],
  );
  expect(ratio).toBeCloseTo(geometricMeanRatio(JUNIPER.map(({ truth }) => truth.carapaceLengthMm)), 1);
  await page.getByRole('radio', { name: 'By date' }).check();
  await expect(chart.getByText('Each point stands on the day of the molt')).toBeVisible();
  const gallery = page.getByRole('region', { name: 'Skins at one scale', exact: true });
  await expect(gallery.getByRole('img')).toHaveCount(JUNIPER.length);
  await expect(page.getByText(/^\d+ mm$/)).toBeVisible();

  await keeper.goTo('Examination');
  await page.getByRole('button', { name: 'Show skins already read' }).click();
  await page.getByRole('link', { name: /Bramble.*Shed instar 10/ }).click();
  await expect(keeper.heading()).toHaveText('Skin of instar 10');

  await keeper.goTo('Cabinet');
  await page.getByRole('button', { name: 'Remove the sample' }).click();
  await expect(page.getByText('The sample cabinet was removed.')).toBeVisible();
  await expect(page.getByRole('button', { name: 'Open the sample cabinet' })).toBeVisible();
  expect(await keeper.asks('/api/about')).toMatchObject({ specimens: 0, samples: 0, photos: 0 });
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect(keeper.animal('FH-03')).toContainText('female, strong');
  await expect(page.getByText('2.7.5', { exact: true })).toBeVisible();
});

test('an animal whose skins were read both ways is shown as contradicted and counts as unsexed', async ({ page }) => {
  const keeper = new Keeper(page);
  await keeper.openSample();
  await keeper.animal('FH-03').getByRole('link').click();
  await page
    .getByRole('region', { name: /^Skin of/ })
    .nth(1)
    .getByRole('link', { name: 'Examine for sex' })
    .click();
  await keeper.answer(/Does this skin belong/, 'Yes');
  await page.getByLabel('Leg span of this skin').fill('82');
  await keeper.toStep('Grade');
  await keeper.answer(/grade/, 'A: flat and complete');
  await keeper.toStep('Orient');
  await keeper.answer(/four book lungs/, 'Yes');
  await keeper.answer('Side', 'Both');
  await keeper.toStep('Look');
  await keeper.answer(/Is there a flap/, 'Readable and absent');
  await keeper.answer(/fusillae/, 'Seen');
  await keeper.toStep('Conclude');
  await keeper.answer('What is it?', 'Male');
  await keeper.answer('How sure?', 'Probable');
  await keeper.toStep('Sign');
  await page.getByLabel('Read by').fill('Ottokar Venn');
  await page.getByRole('button', { name: 'Sign', exact: true }).click();
  await expect(page.getByText('Signed: male, probable.')).toBeVisible();
  await expect(page.getByText('The record of this animal contradicts itself.')).toBeVisible();

  await keeper.goTo('Cabinet');
  await keeper.animal('FH-03').getByRole('link').click();
  await expect(page.getByText('It counts as unsexed until one side is corrected or withdrawn.')).toBeVisible();
  const readings = page.getByRole('listitem').filter({ hasText: /, from the skin: .*, read by / });
  await expect(readings).toHaveCount(2);
  await expect(readings.filter({ hasText: /^female, strong,/ })).toHaveCount(1);
  await readings
    .filter({ hasText: 'Ottokar Venn' })
    .getByRole('link', { name: /^male, probable, from the skin:/ })
    .click();
  await expect(keeper.heading()).toHaveText(/^Skin of instar/);
  await keeper.goTo('Cabinet');
  await expect(keeper.animal('FH-03')).toContainText('unsexed (contradicted)');
  await expect(page.getByText('2.6.6', { exact: true })).toBeVisible();
  await page.getByLabel('Sex', { exact: true }).selectOption('Contradicted');
  await expect(page.getByText('1 of 15 shown')).toBeVisible();
});

function geometricMeanRatio(lengths: readonly number[]): number {
  return ((lengths.at(-1) ?? 0) / (lengths[0] ?? 1)) ** (1 / (lengths.length - 1));
}

test('a code in use is refused at its field, and the wish for an empty cabinet is kept', async ({ page }) => {
  const keeper = new Keeper(page);
  await keeper.beginEmpty();
  await keeper.goTo('Intake');
  await page.reload();
  await keeper.goTo('Cabinet');
  await expect(page.getByRole('heading', { name: 'An empty cabinet' })).toBeVisible();
  await keeper.addSpecimen({ code: 'TK-01', taxon: 'Aphonopelma seemanni', name: 'Nutmeg' });
  await keeper.goTo('Cabinet');
  await page.getByRole('button', { name: 'Add a specimen' }).click();
  const dialog = page.getByRole('dialog', { name: 'Add a specimen' });
  const code = dialog.getByLabel('Code');
  await code.fill('tk-01');
  await dialog.getByRole('button', { name: 'Add', exact: true }).click();
  await expect(code).toHaveAccessibleDescription(/Another specimen already has the code tk-01/);
  await expect(code).toBeFocused();
  await code.fill('T'.repeat(43));
  await expect(code).toHaveAccessibleDescription(/Too long: 43 of at most 40 characters/);
});
