import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { expect, test } from '../support/hosts.ts';
import { Keeper } from '../support/keeper.ts';
import { expectAccessible, expectNoSidewaysScroll } from '../support/pageChecks.ts';

interface Truth {
  readonly display_width: number;
  readonly landmarks: Readonly<Record<string, { readonly px: readonly [number, number] }>>;
  readonly measurements_mm: Readonly<Record<string, number>>;
  readonly scale_objects: readonly {
    readonly tick_values_mm: readonly number[];
    readonly ticks_at_edge_px: readonly (readonly [number, number])[];
  }[];
}

const TRUTH = JSON.parse(
  readFileSync(resolve(import.meta.dirname, '../../tests/fixtures/abdomen-truth/specimen-a_instar-10_abdomen-inside.json'), 'utf8'),
) as Truth;

test('distances on an opened abdomen are measured on the Bench, stand beside the answer and in the statement', async ({ page }) => {
  const keeper = new Keeper(page);
  const { bench } = keeper;
  await keeper.openSample();
  // The photo gets its rule, and one distance with a name of the keeper's own, as an earlier pass would have left them.
  const photo = await page.evaluate(async (truth) => {
    const photos: { id: string; originalName: string; widthPx: number; heightPx: number }[] = await (
      await fetch('/api/photos?unassigned=false')
    ).json();
    const found = photos.find(({ originalName }) => originalName.startsWith('juniper-10-abdomen-inside'));
    if (!found) throw new Error('Expected the photo of the opened abdomen in the sample');
    const shrunk = found.widthPx / truth.display_width;
    const [rule] = truth.scale_objects;
    const ends = [rule?.ticks_at_edge_px.at(0), rule?.ticks_at_edge_px.at(-1)].map((px) => ({
      xPx: (px?.[0] ?? 0) * shrunk,
      yPx: (px?.[1] ?? 0) * shrunk,
    }));
    const sheet = await (await fetch(`/api/photos/${found.id}/bench`)).json();
    const answer = await fetch(`/api/photos/${found.id}/calibration`, {
      method: 'PUT',
      headers: { 'content-type': 'application/json', 'if-match': `"${sheet.calibration.version}"` },
      body: JSON.stringify({
        marks: {
          ...{ kind: 'two-points', ends, distanceMm: 100, distanceStandardUncertaintyMm: 0.1, pointingPx: 1, heightMm: 0.5 },
        },
      }),
    });
    if (!answer.ok) throw new Error(await answer.text());
    return { id: found.id, shrunk, size: { width: found.widthPx, height: found.heightPx } };
  }, TRUTH);

  await keeper.goTo('Examination');
  await page.getByRole('button', { name: 'Show skins already read' }).press('Enter');
  await page.getByLabel('Find an animal').fill('juniper');
  await page.getByRole('link', { name: /Juniper.*Shed instar 10/ }).press('Enter');
  await page.getByRole('button', { name: 'Read this skin once more' }).press('Enter');
  await page
    .getByRole('navigation', { name: /Steps/ })
    .getByRole('button', { name: /Orient/ })
    .press('Enter');
  await page.getByRole('link', { name: 'Measure on the Bench' }).first().press('Enter');
  await bench.shown();
  await bench.take('Points');
  await expect(page.getByRole('heading', { name: 'Receptacles, left edge' })).toBeVisible();
  const at = (name: string) => {
    const [x, y] = TRUTH.landmarks[name]?.px ?? [0, 0];
    return { x: x * photo.shrunk, y: y * photo.shrunk };
  };
  await bench.part('Front book lungs').locator('summary').click();
  await bench.point('Front book lungs', 'Middle of the left one').click();
  await bench.click(at('lung_anterior_left_centre'), photo.size);
  await bench.click(at('lung_anterior_right_centre'), photo.size);
  await bench.part('Your own distance').locator('summary').click();
  await bench.point('Your own distance', 'One end').click();
  await bench.click(at('furrow_left'), photo.size);
  await bench.click(at('furrow_mid'), photo.size);
  await page.getByLabel('Name of your own distance').fill('Furrow, left half');
  await page.getByLabel('Name of your own distance').press('Enter');
  await bench.saved();
  await expectAccessible(page, 'points of an opened abdomen');
  await bench.take('Lengths');
  await expect(page.getByRole('row', { name: /Furrow, left half/ })).toBeVisible();
  const lungs = await page
    .getByRole('row', { name: /Front book lungs, middle to middle/ })
    .getByRole('button')
    .textContent();
  // Clicks by eye on a shrunken photo: to a tenth of the truth.
  const trueMm = TRUTH.measurements_mm['anterior_lung_separation'] ?? Number.NaN;
  expect(Math.abs(Number(/([\d.]+) ±/.exec(lungs ?? '')?.[1]) - trueMm)).toBeLessThan(0.1 * trueMm);

  // Back at the step that was left, though nothing has been answered yet.
  await page.getByRole('link', { name: 'To the examination' }).press('Enter');
  await expect(page.getByRole('heading', { level: 2, name: 'Orient' })).toBeVisible();
  await expect(page.getByText('Front book lungs, middle to middle')).toBeVisible();
  await page.getByRole('navigation', { name: /Steps/ }).getByRole('button', { name: /Look/ }).press('Enter');
  await expect(page.getByText('Furrow, left half')).toBeVisible();
  await expectNoSidewaysScroll(page, 'the examination with lengths');
  await page.getByRole('button', { name: 'Statement of sex' }).press('Enter');
  await expect(
    page.getByRole('dialog', { name: 'Statement of sex' }).getByText(/front book lungs, middle to middle [\d.]+ mm ±/),
  ).toBeVisible();
});
