import { expect, test } from '../support/hosts.ts';
import { Keeper, millimeters, percentOff } from '../support/keeper.ts';
import { graysOf } from '../support/likeness.ts';
import { photoTruth } from '../support/photoTruth.ts';

const skin = photoTruth('juniper-08-dorsal', 'specimen-a_instar-08_dorsal');

/** The loupe is 176 CSS pixels wide and shows each pixel of the photo eight times as large. */
const LOUPE_SIDE_PX = 22;

const CARAPACE = [
  ['Front, midline', 'carapace_anterior_mid'],
  ['Rear, midline', 'carapace_posterior_mid'],
  ['Widest point, left', 'carapace_left_widest'],
  ['Widest point, right', 'carapace_right_widest'],
] as const;
const LEG = [
  ['Trochanter to femur', 'trochanter_femur'],
  ['Femur to patella', 'femur_patella'],
  ['Patella to tibia', 'patella_tibia'],
  ['Tibia to metatarsus', 'tibia_metatarsus'],
  ['Metatarsus to tarsus', 'metatarsus_tarsus'],
  ['Tip of the tarsus', 'tarsus_tip'],
] as const;

test('a photo of a shed becomes millimeters, a rung of the ladder and a sex on record', async ({ open }) => {
  const first = await open();
  const keeper = new Keeper(first.page);
  const { page, bench } = keeper;

  await keeper.beginEmpty();
  await keeper.addSpecimen({ code: 'TK-01', taxon: 'Aphonopelma seemanni', name: 'Nutmeg' });
  await keeper.goTo('Intake');
  await keeper.bringIn([skin.file], '1 photo added');
  await expect(page.getByRole('checkbox', { name: skin.fileName })).toHaveAccessibleName(/30 Jun 2023, 21:10/);
  await keeper.give({ photo: skin.fileName, to: 'TK-01', instarShed: '8' });
  await page.getByRole('link', { name: 'Measure it on the Bench' }).click();

  await bench.shown();
  await expect(keeper.heading()).toHaveText('Nutmeg Aphonopelma seemanni');
  await expect(page.getByText('This skin shows instar 8, which has ended; Nutmeg has been larger ever since.')).toBeVisible();
  await bench.scaleByCard(skin.cardCorners(), skin.size);
  await expect(bench.panel().getByText(`${skin.cameraTiltDeg.toFixed(1)}°`)).toBeVisible();

  await bench.take('Points');
  await bench.hover(skin.landmark('fovea_centre'), skin.size);
  await expect(bench.loupe()).toBeVisible();
  const grays = await graysOf(await bench.loupe().screenshot(), skin, skin.landmark('fovea_centre'), LOUPE_SIDE_PX);
  expect(Math.abs(grays.drawn - grays.photo)).toBeLessThan(15);
  for (const [name, truth] of CARAPACE) await bench.place('Carapace', name, skin.landmark(truth), skin.size);
  await bench.enterHeight(skin.carapaceHeightMm);
  await bench.part('Leg I right').getByText('Leg I right').click();
  await bench.point('Leg I right', 'Trochanter to femur').click();
  for (const [name, truth] of LEG) await bench.place('Leg I right', name, skin.landmark(`leg_R1_${truth}`), skin.size);
  await bench.saved();

  await bench.take('Lengths');
  const carapace = millimeters(await bench.length('Carapace length').textContent());
  expect(percentOff(carapace, skin.carapaceLengthMm)).toBeLessThan(1.5);
  expect(percentOff(millimeters(await bench.length('Carapace width').textContent()), skin.carapaceWidthMm)).toBeLessThan(1.5);
  expect(percentOff(millimeters(await bench.length('Leg I right').textContent()), skin.legLengthMm('R1'))).toBeLessThan(3);
  await bench.length('Carapace length').click();
  await expect(bench.panel().getByRole('row', { name: /^Height above the plane/ })).toContainText('%');

  await keeper.goTo('Ladder');
  await page.getByRole('link', { name: /Nutmeg/ }).click();
  const rung = page.getByRole('row', { name: /Instar 8/ });
  await expect(rung.getByRole('cell').nth(1)).toContainText(`${carapace} ±`);
  await expect(rung).toContainText('shed 30 Jun 2023');
  await expect(page.getByText('Nutmeg is already in instar 9, and larger than the last rung.')).toBeVisible();
  await keeper.goTo('Cabinet');
  await expect(keeper.animal('TK-01')).toContainText(`${carapace} ±`);
  await expect(keeper.animal('TK-01')).toContainText('Instar now9');

  await keeper.goTo('Examination');
  await page.getByRole('link', { name: /Nutmeg.*Shed instar 8/ }).click();
  await keeper.answer(/Does this skin belong/, 'Yes');
  await page
    .getByRole('button', { name: /^Take .* mm from the Bench$/ })
    .last()
    .click();
  await expect(page.getByLabel('Carapace of this skin')).not.toHaveValue('');
  await keeper.toStep('Grade');
  await keeper.answer(/grade/, 'B: folded or cloudy');
  await keeper.toStep('Orient');
  await keeper.answer(/four book lungs/, 'Yes');
  await keeper.answer('Side', 'Inner side');
  await keeper.answer('Enlarged by', 'Loupe');
  await keeper.toStep('Look');
  await keeper.answer(/Is there a flap/, 'Seen');
  await keeper.answer(/uterus externus/, 'Seen');
  await page.getByRole('checkbox', { name: /Evidence.*from above/ }).check();
  await keeper.toStep('Conclude');
  await keeper.answer('What is it?', 'Female');
  await expect(page.getByRole('radio', { name: 'Established' })).toBeDisabled();
  await keeper.answer('How sure?', 'Probable');
  await keeper.toStep('Sign');
  await page.getByLabel('Read by').fill('Ilka Moorhen');
  await page.getByRole('button', { name: 'Sign', exact: true }).click();
  await expect(page.getByText('Signed: female, probable.')).toBeVisible();
  await first.close();

  const second = new Keeper((await open()).page);
  await expect(second.animal('TK-01')).toContainText('female, probable');
  await expect(second.animal('TK-01')).toContainText(`${carapace} ±`);
  await second.animal('TK-01').getByRole('link').click();
  await expect(second.page.getByText('Ilka Moorhen')).toBeVisible();
  await second.page.getByRole('link', { name: /open on the Bench/ }).click();
  await second.bench.shown();
  await second.bench.take('Lengths');
  expect(millimeters(await second.bench.length('Carapace length').textContent())).toBe(carapace);
  await second.bench.take('Points');
  await expect(second.bench.panel().getByText('10 of 52 points answered')).toBeVisible();
});
