import { expect, test } from '../support/camera.ts';
import { Keeper, millimeters, percentOff, shownEstimate } from '../support/keeper.ts';
import { type PhotoTruth, photoTruth } from '../support/photoTruth.ts';
import { SHEET_PICTURE, writeSheetPicture } from '../support/pictures.ts';

const withCard = photoTruth('juniper-10-dorsal', 'specimen-a_instar-10_dorsal');
const withRule = photoTruth('bramble-08-dorsal', 'specimen-b_instar-08_dorsal');

/** Marks the midline of the carapace and reads its length. */
async function carapaceLength(keeper: Keeper, photo: PhotoTruth): Promise<number> {
  const { bench } = keeper;
  await bench.take('Points');
  await bench.place('Carapace', 'Front, midline', photo.landmark('carapace_anterior_mid'), photo.size);
  await bench.place('Carapace', 'Rear, midline', photo.landmark('carapace_posterior_mid'), photo.size);
  await bench.enterHeight(photo.carapaceHeightMm);
  await bench.take('Lengths');
  return millimeters(await bench.length('Carapace length').textContent());
}

test("a rectangle of one's own size gives the same millimeters as the card it is", async ({ page }) => {
  const keeper = new Keeper(page);
  const { bench } = keeper;
  await keeper.layOnBench(withCard.file, { photo: withCard.fileName, to: 'TK-01', instarShed: '10' });
  await bench.take('Known size');
  await bench
    .panel()
    .getByRole('button', { name: /Another rectangle/ })
    .click();
  await bench.panel().getByLabel('One side, mm').fill('85,6');
  await bench.panel().getByLabel('Other side, mm').fill('53.98');
  await bench.panel().getByRole('button', { name: 'Mark the four corners' }).click();
  await bench.markCorners(withCard.cardCorners(), withCard.size);
  await expect(bench.fact('Tilt of the camera')).toHaveText(/^1[01]\.\d+° ± \d+\.\d+°$/);
  await expect(bench.panel().getByText(/do not fit a rectangle/)).toBeHidden();
  // An own size is known to half a millimeter only until the keeper says better: the table of the card is thicker than nothing.
  await bench.panel().getByLabel('Thickness, mm').fill('o.76');
  await bench.panel().getByLabel('Thickness, mm').press('Enter');
  await expect(page.getByText('Not saved: a field holds what cannot be its figure')).toBeVisible();
  await expect(page.getByText(/^All saved/)).toBeHidden();
  await bench.panel().getByLabel('Thickness, mm').fill('0.76');
  await bench.panel().getByLabel('Thickness, mm').press('Enter');
  expect(percentOff(await carapaceLength(keeper, withCard), withCard.carapaceLengthMm)).toBeLessThan(1.5);
});

test('corners that fit no sheet of that size are told so in words', async ({ page }) => {
  const keeper = new Keeper(page);
  const { bench } = keeper;
  await keeper.layOnBench(withCard.file, { photo: withCard.fileName, to: 'TK-01', instarShed: '10' });
  await bench.take('Known size');
  await bench
    .panel()
    .getByRole('button', { name: /A6 sheet/ })
    .click();
  await bench.markCorners(withCard.cardCorners(), withCard.size);
  // 85.60 by 53.98 mm is not 148 by 105 mm (ISO/IEC 7810, ISO 216): sides as 1.586 to 1.410.
  await expect(bench.panel().getByText(/These corners do not fit a rectangle of this size \(sides 1[0-4]\.\d %/)).toBeVisible();
});

test('a sheet seen from straight above gives its scale, and says what the picture does not tell', async ({ page, camera }) => {
  const { size, sheet, carapace, pxPerMm } = SHEET_PICTURE;
  const keeper = new Keeper(page);
  const { bench } = keeper;
  await keeper.layOnBench(await writeSheetPicture(camera), { photo: 'sheet.jpg', to: 'TK-01', moltedOn: '2024-05-01' });
  await bench.take('Known size');
  await bench
    .panel()
    .getByRole('button', { name: /A6 sheet/ })
    .click();
  const right = sheet.x + sheet.widthMm * pxPerMm;
  const bottom = sheet.y + sheet.heightMm * pxPerMm;
  await bench.markCorners(
    [
      { x: sheet.x, y: sheet.y },
      { x: right, y: sheet.y },
      { x: right, y: bottom },
      { x: sheet.x, y: bottom },
    ],
    size,
  );
  await expect(bench.fact('One pixel, at the middle')).toHaveText(/^0\.12[45]\d* ± 0\.\d+ mm \(\d+(\.\d+)?\s%\)$/);
  await expect(bench.panel().getByText('The picture does not tell its focal length')).toBeVisible();

  await bench.take('Points');
  await bench.place('Carapace', 'Front, midline', { x: carapace.x, y: carapace.topY }, size);
  await bench.place('Carapace', 'Rear, midline', { x: carapace.x, y: carapace.topY + carapace.lengthMm * pxPerMm }, size);
  await bench.take('Lengths');
  expect(percentOff(millimeters(await bench.length('Carapace length').textContent()), carapace.lengthMm)).toBeLessThan(1);
  await expect(bench.panel().getByRole('list').getByText('not corrected for height')).toBeVisible();
});

test('two points of a rule give millimeters, wider, and say that the tilt is unknown', async ({ page }) => {
  const keeper = new Keeper(page);
  const { bench } = keeper;
  await keeper.layOnBench(withRule.file, { photo: withRule.fileName, to: 'TK-01', instarShed: '8' });
  await bench.take('Known size');
  await bench
    .panel()
    .getByRole('button', { name: /A rule, or a length you know/ })
    .click();
  await bench.panel().getByLabel('Distance between the marks').fill('4');
  await bench.panel().getByLabel('Unit').selectOption('inches');
  await bench.panel().getByRole('button', { name: 'Mark the two ends' }).click();
  await expect(page.getByText('Click one end of the distance')).toBeVisible();
  await bench.panel().getByRole('button', { name: 'Cancel' }).click();

  await bench
    .panel()
    .getByRole('button', { name: /A rule, or a length you know/ })
    .click();
  await bench.panel().getByLabel('Distance between the marks').fill('100');
  await bench.panel().getByRole('button', { name: 'Mark the two ends' }).click();
  await bench.click(withRule.ruleMark(0), withRule.size);
  await expect(page.getByText('Click the other end')).toBeVisible();
  await bench.click(withRule.ruleMark(100), withRule.size);
  await expect(bench.fact('Tilt of the camera')).toHaveText('unknown');
  await expect(bench.panel().getByText('Two points say nothing about the tilt of the camera.')).toBeVisible();

  const lengthMm = await carapaceLength(keeper, withRule);
  expect(percentOff(lengthMm, withRule.carapaceLengthMm)).toBeLessThan(10);
  const { value, uncertainty } = shownEstimate(await bench.length('Carapace length').textContent());
  expect(Math.abs(value - withRule.carapaceLengthMm)).toBeLessThan(uncertainty);
  await expect(bench.panel().getByRole('list').getByText('tilt unknown')).toBeVisible();
  await bench.length('Carapace length').click();
  await expect(bench.panel().getByRole('row', { name: /^Tilt of the camera, unknown/ })).toContainText('%');

  // Typed figures count: twice the distance makes everything twice as long.
  await bench.take('Known size');
  await bench.panel().getByLabel('Distance, mm').fill('200');
  await bench.panel().getByLabel('Distance, mm').press('Enter');
  await bench.take('Lengths');
  await expect.poll(async () => percentOff(millimeters(await bench.length('Carapace length').textContent()), 2 * lengthMm)).toBeLessThan(6);
});
