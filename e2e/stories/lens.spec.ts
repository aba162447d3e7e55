import { expect, test } from '../support/camera.ts';
import { Keeper, millimeters, percentOff } from '../support/keeper.ts';
import { expectAccessible } from '../support/pageChecks.ts';
import { photoTruth } from '../support/photoTruth.ts';
import { seenThroughLens, writeThroughLens } from '../support/pictures.ts';

/** Looking through a picture takes a second or two; on a machine that does other things besides, more. */
const SOUGHT = { timeout: 90_000 };
test.describe.configure({ timeout: 180_000 });

const straight = photoTruth('juniper-10-dorsal', 'specimen-a_instar-10_dorsal');

test('a lens that bends the edges of the card is told in millimeters and undone, unless the keeper leaves it', async ({ page, camera }) => {
  const keeper = new Keeper(page);
  const { bench } = keeper;
  await keeper.layOnBench(await writeThroughLens(camera, straight.file), {
    photo: 'bent.jpg',
    to: 'TK-01',
    moltedOn: '2024-05-01',
    instarShed: '10',
  });
  await bench
    .panel()
    .getByRole('button', { name: /^Take it: A bank-size card/ })
    .click(SOUGHT);
  const corrects = bench.panel().getByRole('checkbox', { name: 'Correct the distortion of the lens' });
  await expect(corrects).toBeChecked();
  await expect(bench.panel().getByText(/the lens drew the outermost corner \d\.\d+ ± \d\.\d+ mm too near to the middle/)).toBeVisible();
  await expectAccessible(page, 'a corrected lens');

  await bench.take('Points');
  for (const [name, landmark] of [
    ['Front, midline', 'carapace_anterior_mid'],
    ['Rear, midline', 'carapace_posterior_mid'],
  ] as const) {
    await bench.place('Carapace', name, seenThroughLens(straight.landmark(landmark), straight.size), straight.size);
    await bench.enterPointHeight(straight.landmarkHeightMm(landmark));
  }
  await bench.take('Lengths');
  const length = bench.length('Carapace length');
  const corrected = millimeters(await length.textContent());
  expect(percentOff(corrected, straight.carapaceLengthMm)).toBeLessThan(0.6);
  await length.click();
  await expect(bench.panel().getByText(/^Corrected for the lens by [+−]0\.\d+ mm$/)).toBeVisible();

  await bench.take('Known size');
  await corrects.uncheck();
  await expect(bench.panel().getByText(/^Left as it is, as you chose: .* up to \d\.\d+ mm beside its place/)).toBeVisible();
  await bench.take('Lengths');
  await expect.poll(async () => millimeters(await length.textContent())).not.toBe(corrected);
  expect(percentOff(millimeters(await length.textContent()), straight.carapaceLengthMm)).toBeGreaterThan(
    percentOff(corrected, straight.carapaceLengthMm),
  );
  await expect(bench.panel().getByText(/^Corrected for the lens/)).toBeHidden();

  await bench.button('Undo: change the scale').click();
  await bench.take('Known size');
  await expect(corrects).toBeChecked();
  await bench.saved();
});
