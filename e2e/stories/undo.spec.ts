import { expect, test } from '../support/hosts.ts';
import { Keeper } from '../support/keeper.ts';
import { photoTruth } from '../support/photoTruth.ts';

const skin = photoTruth('juniper-08-dorsal', 'specimen-a_instar-08_dorsal');

test('on the Bench every change can be taken back and made again, by keys and by buttons', async ({ page }) => {
  const keeper = new Keeper(page);
  const { bench } = keeper;
  await keeper.layOnBench(skin.file, { photo: skin.fileName, to: 'TK-01', instarShed: '8' });
  const front = bench.point('Carapace', 'Front, midline');
  const rear = bench.point('Carapace', 'Rear, midline');
  await bench.take('Points');
  await expect(bench.button('Nothing to undo')).toBeDisabled();
  await bench.click(skin.landmark('carapace_anterior_mid'), skin.size);
  const clicked = (await front.textContent()) ?? '';
  await page.keyboard.press('Shift+ArrowRight');
  await page.keyboard.press('ArrowDown');
  await page.keyboard.press('Alt+ArrowLeft');
  const nudged = (await front.textContent()) ?? '';
  expect(difference(nudged, clicked)).toEqual([9.9, 1]);
  await bench.click(skin.landmark('carapace_posterior_mid'), skin.size);
  await expect(rear).toHaveText(/\d+\.\d, \d+\.\d$/);
  const placed = (await rear.textContent()) ?? '';

  await page.keyboard.press('Control+z');
  await expect(rear).toHaveText(/(next|open)$/);
  await page.keyboard.press('Control+Shift+z');
  await expect(rear).toHaveText(placed);
  await bench.button('Undo: place a point').click();
  await expect(rear).toHaveText(/(next|open)$/);
  await bench.button('Undo: move a point').click();
  await expect.poll(async () => difference((await front.textContent()) ?? '', clicked)[0]).toBeLessThan(9.9);
  while (await bench.button('Undo: move a point').isVisible()) await bench.button('Undo: move a point').click();
  await expect(front).toHaveText(clicked);
  await bench.button('Undo: place a point').click();
  await expect(front).toHaveText(/(next|open)$/);
  await expect(bench.button('Nothing to undo')).toBeDisabled();
  await bench.button('Redo: place a point').click();
  while (await bench.button('Redo: move a point').isVisible()) await bench.button('Redo: move a point').click();
  await expect(front).toHaveText(nudged);

  // A new change after going back leaves nothing to redo; what is stored is what stands.
  await rear.click();
  await bench.panel().getByRole('button', { name: 'Not visible', exact: true }).click();
  await expect(bench.button('Nothing to redo')).toBeDisabled();
  await expect(bench.panel().getByText('2 of 52 points answered')).toBeVisible();
  await bench.saved();
  await page.reload();
  await bench.shown();
  await bench.take('Points');
  await expect(front).toHaveText(nudged);
  await expect(rear).toHaveText(/not visible$/);
});

test('a pass that was removed comes back by the key and by the button of the Bench, as a change does', async ({ page }) => {
  const keeper = new Keeper(page);
  const { bench } = keeper;
  await keeper.layOnBench(skin.file, { photo: skin.fileName, to: 'TK-01', instarShed: '8' });
  await bench.take('Points');
  await bench.click(skin.landmark('carapace_anterior_mid'), skin.size);
  await bench.saved();
  const answered = bench.panel().getByText('1 of 52 points answered');
  for (const undo of [() => page.keyboard.press('Control+z'), () => bench.button('Undo: remove pass 1').click()]) {
    await bench.take('Lengths');
    await bench.panel().getByRole('button', { name: 'Remove this pass' }).click();
    await expect(page.getByText(/^Pass 1 of .* removed\.$/)).toBeVisible();
    await expect(bench.button('Undo: remove pass 1')).toBeEnabled();
    await bench.take('Points');
    await expect(bench.panel().getByText('0 of 52 points answered')).toBeVisible();
    await undo();
    await expect(page.getByText('Put back as it was.')).toBeVisible();
    await bench.take('Points');
    await expect(answered).toBeVisible();
    await expect(bench.button('Nothing to undo')).toBeDisabled();
  }
});

test('removing an animal says what goes with it, and all of it can be put back', async ({ page }) => {
  const keeper = new Keeper(page);
  await keeper.openSample();
  const count = page.getByText(/^\d+\.\d+\.\d+$/).first();
  const everyAnimal = animalsIn(await count.textContent());
  await keeper.animal('FH-05').getByRole('link').click();
  const stops = page.getByRole('region', { name: 'Life line' }).getByRole('article');
  await expect(stops).toHaveCount(5);
  await page.getByRole('button', { name: 'Remove FH-05' }).click();
  const dialog = page.getByRole('dialog', { name: 'Remove FH-05?' });
  await expect(dialog).toContainText('With it go 5 molts, 5 skins, 2 determinations and 8 observations.');
  await expect(dialog).toContainText('6 photos stay in the archive with all readings');
  await dialog.getByRole('button', { name: 'Keep it' }).click();
  await expect(dialog).toBeHidden();
  await expect(stops).toHaveCount(5);

  await page.getByRole('button', { name: 'Remove FH-05' }).click();
  await dialog.getByRole('button', { name: 'Remove', exact: true }).click();
  await expect(keeper.heading()).toHaveText('Cabinet');
  await expect(keeper.animal('FH-05')).toHaveCount(0);
  await expect.poll(async () => animalsIn(await count.textContent())).toBe(everyAnimal - 1);
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect(page.getByText('Put back as it was.')).toBeVisible();
  await expect(keeper.animal('FH-05')).toContainText('male, probable');
  await keeper.animal('FH-05').getByRole('link').click();
  await expect(stops).toHaveCount(5);
  await expect(
    page
      .getByRole('region', { name: /^Skin of / })
      .getByText(/± \d/)
      .first(),
  ).toBeVisible();
});

test('a message goes by itself, unless it is pointed at, and covers nothing', async ({ page }) => {
  const keeper = new Keeper(page);
  await keeper.openSample();
  await page.clock.install();
  await page.getByRole('button', { name: 'Remove the sample' }).click();
  const message = page.getByText('The sample cabinet was removed.');
  await message.hover();
  await page.clock.fastForward(60_000);
  await expect(message).toBeVisible();
  const foot = (await message.boundingBox())?.y ?? Number.NaN;
  expect(foot).toBeLessThan((await page.getByRole('main').boundingBox())?.y ?? 0);
  await page.mouse.move(700, 600);
  await page.clock.fastForward(60_000);
  await expect(message).toBeHidden();
  await page.getByRole('button', { name: 'Settings' }).click();
  await page.getByRole('button', { name: 'Put back: The sample cabinet' }).click();
  await page.getByRole('button', { name: 'Close', exact: true }).click();
  await expect(keeper.animal('FH-05')).toBeVisible();
});

function difference(one: string, other: string): [number, number] {
  const [first, second] = [one, other].map((words) => (/(-?\d+\.\d), (-?\d+\.\d)$/.exec(words) ?? []).slice(1).map(Number));
  const by = (axis: number) => Math.round(10 * ((first?.[axis] ?? Number.NaN) - (second?.[axis] ?? Number.NaN))) / 10;
  return [by(0), by(1)];
}

/** Males, females and unsexed together, of a count as "1.2.3". */
function animalsIn(count: string | null): number {
  return (count ?? '').split('.').reduce((sum, part) => sum + Number(part), 0);
}
