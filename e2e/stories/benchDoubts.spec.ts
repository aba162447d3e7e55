import { expect, test } from '../support/hosts.ts';
import { Keeper } from '../support/keeper.ts';
import { photoTruth } from '../support/photoTruth.ts';

const skin = photoTruth('juniper-08-dorsal', 'specimen-a_instar-08_dorsal');

test('a click that chooses a point says so, and Shift places beside it; exchanged sides are doubted, never refused', async ({ page }) => {
  const keeper = new Keeper(page);
  const { bench } = keeper;
  await keeper.layOnBench(skin.file, { photo: skin.fileName, to: 'TK-01', instarShed: '8' });
  await bench.scaleByCard(skin.cardCorners(), skin.size);
  await bench.take('Points');
  await bench.click(skin.landmark('carapace_anterior_mid'), skin.size);
  await bench.click(skin.landmark('carapace_anterior_mid'), skin.size);
  await expect(page.getByText(/this click chose the point that lies here, front of the carapace/)).toBeVisible();
  await expect(bench.panel().getByText('1 of 52 points answered')).toBeVisible();
  await page.keyboard.down('Shift');
  await bench.click(skin.landmark('carapace_anterior_mid'), skin.size);
  await page.keyboard.up('Shift');
  await expect(bench.panel().getByText('2 of 52 points answered')).toBeVisible();

  await bench.click({ x: -20, y: skin.size.height / 2 }, skin.size);
  const outside = page.getByRole('status').filter({ hasText: 'Nothing placed: this lies outside the picture.' });
  await expect(outside).toHaveText(/Click on the picture; a point that it does not show is marked “Not visible”\.$/);
  await expect(bench.panel().getByText('2 of 52 points answered')).toBeVisible();
  await bench.hover({ x: skin.size.width / 2, y: skin.size.height / 2 }, skin.size);
  await expect(outside).toBeHidden();

  await bench.button('Undo: place a point').click();
  await expect(bench.panel().getByRole('heading', { name: 'Rear of the carapace, midline' })).toBeVisible();
  await bench.click(skin.landmark('carapace_posterior_mid'), skin.size);
  await bench.click(skin.landmark('carapace_right_widest'), skin.size);
  await bench.click(skin.landmark('carapace_left_widest'), skin.size);
  await expect(bench.panel().getByText(/Left and right of the carapace lie on the wrong sides/)).toBeVisible();
  await bench.take('Lengths');
  await expect(bench.panel().getByText(/Left and right of the carapace lie on the wrong sides/)).toBeVisible();
  await bench.length('Carapace length').click();
  await expect(bench.panel().getByText(/^To narrow it: /)).toBeVisible();
  await bench.saved();
});

test('marks put down to be dragged are no scale before each was brought to its place', async ({ page }) => {
  const keeper = new Keeper(page);
  const { bench } = keeper;
  await keeper.layOnBench(skin.file, { photo: skin.fileName, to: 'TK-01', instarShed: '8' });
  await bench
    .panel()
    .getByRole('button', { name: /^A bank-size card/ })
    .click();
  await bench.panel().getByRole('button', { name: 'Put all down, to be dragged' }).click();
  await expect(bench.panel().getByText('0 of 4 in place')).toBeVisible();
  await expect(bench.fact('One pixel, at the middle')).toBeHidden();
  for (const name of ['Corner 1', 'Corner 2', 'Corner 3', 'Corner 4']) {
    await bench.mark(name).click();
    await page.keyboard.press('ArrowRight');
  }
  await expect(bench.fact('One pixel, at the middle')).toHaveText(/ ± 0\.\d+ mm \(\d+(\.\d+)?\s%\)$/);
  await bench.saved();
});

test('a card is marked without a mouse: the keys stay with the photo after each button', async ({ page }) => {
  const keeper = new Keeper(page);
  const { bench } = keeper;
  await keeper.layOnBench(skin.file, { photo: skin.fileName, to: 'TK-01', instarShed: '8' });
  await bench
    .panel()
    .getByRole('button', { name: /^A bank-size card/ })
    .press('Enter');
  await expect(bench.panel().getByRole('heading', { name: 'Mark the four corners' })).toBeVisible();
  await expect(bench.keys()).toBeFocused();
  await bench.panel().getByRole('button', { name: 'Put all down, to be dragged' }).press('Enter');
  await expect(bench.keys()).toBeFocused();
  for (let corner = 1; corner <= 4; corner++) {
    await page.keyboard.press('ArrowRight');
    await expect(bench.panel().getByText(`${corner} of 4 in place`)).toBeVisible({ visible: corner < 4 });
    await page.keyboard.press('PageDown');
  }
  await expect(bench.fact('One pixel, at the middle')).toHaveText(/ ± 0\.\d+ mm \(\d+(\.\d+)?\s%\)$/);
});

test('marks that could not be sent are sent from the next room', async ({ page, app }) => {
  const keeper = new Keeper(page);
  const { bench } = keeper;
  await keeper.layOnBench(skin.file, { photo: skin.fileName, to: 'TK-01', instarShed: '8' });
  await bench.take('Points');
  await app.context.setOffline(true);
  await bench.click(skin.landmark('carapace_anterior_mid'), skin.size);
  await expect(page.getByText('Not saved yet: Exuviary does not answer.')).toBeVisible();
  await keeper.goTo('Cabinet');
  await expect(page.getByText(/The last marks on .* are not saved yet/)).toBeVisible();
  await app.context.setOffline(false);
  await expect(page.getByText(/The last marks on .* are not saved yet/)).toBeHidden();
  await page.goBack();
  await bench.shown();
  await bench.take('Points');
  await expect(bench.panel().getByText('1 of 52 points answered')).toBeVisible();
});
