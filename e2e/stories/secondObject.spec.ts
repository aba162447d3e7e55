import { expect, test } from '../support/hosts.ts';
import { Keeper, millimeters, shownEstimate } from '../support/keeper.ts';
import { expectAccessible } from '../support/pageChecks.ts';
import { photoTruth } from '../support/photoTruth.ts';

const photo = photoTruth('saffron-09-dorsal', 'specimen-c_instar-09_dorsal');
const SOUGHT = { timeout: 90_000 };

test('a second object marked by hand checks the scale: a wrong length contradicts it, a coin whose rim is ill seen is called a weak check, and stays', async ({
  page,
}) => {
  const keeper = new Keeper(page);
  const { bench } = keeper;
  await keeper.layOnBench(photo.file, { photo: photo.fileName, to: 'TK-01', instarShed: '9' });
  await bench.scaleByCard(photo.cardCorners(), photo.size);

  // A long side of the card, 85.60 mm (ISO/IEC 7810), taken for 95 mm.
  const [one, other, third] = photo.cardCorners();
  if (one === undefined || other === undefined || third === undefined) throw new Error('Expected four corners');
  const isLong = Math.hypot(other.x - one.x, other.y - one.y) > Math.hypot(third.x - other.x, third.y - other.y);
  await bench.button('Check it by a second object').click();
  await bench
    .panel()
    .getByRole('button', { name: /^A rule, or a length you know/ })
    .click();
  await bench.panel().getByLabel('Distance between the marks').fill('95');
  await bench.panel().getByRole('button', { name: 'Mark the two ends' }).click();
  for (const end of isLong ? [one, other] : [other, third]) await bench.click(end, photo.size);
  const contradiction = bench.panel().getByText('Two objects in this picture contradict each other');
  await expect(contradiction).toBeVisible();
  await expect(bench.panel().getByRole('heading', { name: /^A bank-size card/ })).toBeVisible();
  await expectAccessible(page, 'a second object that contradicts');

  // It is told again where lengths stand, with what each of both makes of them.
  await bench.take('Points');
  await bench.place('Carapace', 'Front, midline', photo.landmark('carapace_anterior_mid'), photo.size);
  await bench.place('Carapace', 'Rear, midline', photo.landmark('carapace_posterior_mid'), photo.size);
  await bench.take('Lengths');
  await expect(contradiction).toBeVisible();
  const byCard = shownEstimate(await bench.fact('Carapace length by “A bank-size card').textContent());
  const byDistance = shownEstimate(await bench.fact('Carapace length by “A rule, or a length you know”').textContent());
  expect(millimeters(await bench.length('Carapace length').textContent())).toBe(byCard.value);
  expect(byDistance.value / byCard.value).toBeGreaterThan(1.05);
  await expectAccessible(page, 'lengths of a contradicted scale');
  await bench.saved();
  // The other rooms mark the size as doubted.
  const atBench = page.url();
  await keeper.goTo('Ladder');
  await page.getByRole('link', { name: /^Nutmeg/ }).click();
  await expect(page.getByText('doubted, see the Bench').first()).toBeVisible();
  await page.goto(atBench);
  await bench.shown();
  await bench.take('Known size');
  await bench
    .panel()
    .getByRole('button', { name: /^Trust: A rule, or a length/ })
    .click();
  await expect(bench.panel().getByRole('heading', { name: 'A rule, or a length you know', level: 2 })).toBeVisible();
  await bench.button('Undo: measure by the other object').click();
  await expect(bench.panel().getByRole('heading', { name: /^A bank-size card/, level: 2 })).toBeVisible();
  await bench.button('Take the check away').click();
  await expect(bench.panel().getByText('Two objects in this picture contradict each other')).toBeHidden();

  await bench.button('Check it by a second object').click();
  await bench
    .panel()
    .getByRole('button', { name: /^A coin one click/ })
    .click();
  await bench.panel().getByLabel('Which coin', { exact: true }).selectOption({ label: '1 euro, 23.25 mm' });
  await bench.panel().getByRole('button', { name: 'Click its middle' }).click();
  await bench.click(photo.coinMiddle(), photo.size);
  const second = bench.panel().getByRole('region', { name: 'Second object' });
  await expect(second.getByRole('status')).toHaveText(
    /^This check is too weak to tell whether both agree\. By the present scale its longest extent is 2\d\.\d+ mm/,
    SOUGHT,
  );
  await bench.saved();
  await page.reload();
  await bench.shown();
  await bench.take('Known size');
  await expect(second.getByRole('status')).toHaveText(/^This check is too weak/);
  await expect(bench.panel().getByRole('heading', { name: /^A bank-size card/, level: 2 })).toBeVisible();
});
