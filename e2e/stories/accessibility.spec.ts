import { expect, test } from '../support/hosts.ts';
import { Keeper, type Room } from '../support/keeper.ts';
import { expectAccessible, expectNoSidewaysScroll } from '../support/pageChecks.ts';

const ROOMS: readonly Room[] = ['Cabinet', 'Intake', 'Bench', 'Ladder', 'Examination', 'Watch'];

/** The pages behind the rooms: how to get to each, and what says that it is there. */
const PLACES: readonly { readonly name: string; readonly go: (keeper: Keeper) => Promise<void> }[] = [
  ...ROOMS.map((room) => ({ name: room, go: (keeper: Keeper) => keeper.goTo(room) })),
  {
    name: 'an animal',
    go: async (keeper) => {
      await keeper.goTo('Cabinet');
      await keeper.animal('FH-03').getByRole('link').click();
      await expect(keeper.page.getByRole('heading', { name: 'Life line' })).toBeVisible();
    },
  },
  {
    name: 'the notes of one animal',
    go: async (keeper) => {
      await keeper.goTo('Watch');
      await keeper.page.getByRole('region', { name: 'Everybody' }).getByRole('button', { name: /FH-03/ }).click();
      await expect(keeper.page.getByRole('group', { name: 'Fangs' })).toBeVisible();
    },
  },
  {
    name: 'the ladder of an animal',
    go: async (keeper) => {
      await keeper.goTo('Ladder');
      await keeper.page.getByRole('link', { name: /Juniper/ }).click();
      await expect(keeper.page.getByRole('region', { name: 'Skins at one scale', exact: true })).toBeVisible();
    },
  },
  {
    name: 'the examination of a skin',
    go: async (keeper) => {
      await keeper.goTo('Examination');
      await keeper.page.getByRole('link', { name: /Saffron.*Shed instar 11/ }).click();
      await expect(keeper.page.getByRole('navigation', { name: 'Steps of the reading' })).toBeVisible();
    },
  },
  ...(['Known size', 'Points', 'Lengths'] as const).map((step) => ({
    name: `the Bench, ${step}`,
    go: async (keeper: Keeper) => {
      await keeper.goTo('Bench');
      await keeper.page.getByRole('link', { name: /Juniper.*skin of instar 10, from above/ }).click();
      await keeper.bench.shown();
      await keeper.bench.take(step);
    },
  })),
];

for (const theme of ['Light', 'Dark'] as const) {
  test(`axe-core finds no fault with any room in the ${theme.toLowerCase()} theme`, async ({ page }) => {
    test.setTimeout(180_000);
    const keeper = new Keeper(page);
    await expectAccessible(page, 'the first start');
    await keeper.openSample();
    await page.getByRole('button', { name: 'Settings' }).click();
    const settings = page.getByRole('dialog', { name: 'Settings' });
    await settings.getByLabel('Theme').selectOption(theme);
    await expect(page.locator('html')).toHaveAttribute('data-theme', theme.toLowerCase());
    await expectAccessible(page, 'Settings');
    await settings.getByRole('button', { name: 'Close' }).click();
    for (const place of PLACES) {
      await place.go(keeper);
      await expectAccessible(page, `${place.name}, ${theme}`);
    }
  });
}

test('every page fits a window of 1024 by 700, and the same window at 200 % zoom, with very long names', async ({ page }) => {
  const keeper = new Keeper(page);
  await keeper.openSample();
  await keeper.animal('FH-03').getByRole('link').click();
  await page.getByRole('button', { name: 'Change', exact: true }).first().click();
  const dialog = page.getByRole('dialog', { name: 'Change FH-03' });
  const taxon = `Aphonopelma ${'seemanniformissimoides'.repeat(5)}`;
  await dialog.getByLabel('Species').fill(taxon);
  await dialog.getByLabel('Name', { exact: true }).fill('Juniper, Grand Duchess of the Lower Left Terrarium Shelf, '.repeat(3));
  await dialog.getByRole('button', { name: 'Save' }).click();
  await expect(keeper.heading()).toHaveText(taxon);
  await keeper.goTo('Cabinet');
  await keeper.addSpecimen({ code: 'A-VERY-LONG-CODE-WITHOUT-A-SINGLE-SPACE', taxon, name: 'X'.repeat(200) });
  await page.setViewportSize({ width: 1024, height: 700 });
  await expectNoSidewaysScroll(page, 'an animal with very long names');
  for (const place of PLACES) {
    await place.go(keeper);
    await expectNoSidewaysScroll(page, `${place.name}, 1024 by 700`);
  }
  // Zoom halves the window in CSS pixels (WCAG 2.2, 1.4.4).
  await page.setViewportSize({ width: 512, height: 350 });
  for (const place of PLACES) {
    await place.go(keeper);
    await expectNoSidewaysScroll(page, `${place.name}, 200 %`);
  }
});

test('the rooms and the points on the Bench are reached and moved with the keyboard alone', async ({ page }) => {
  const keeper = new Keeper(page);
  await keeper.openSample();
  await page.reload();
  await expect(keeper.heading()).toHaveText('Cabinet');
  await page.keyboard.press('Tab');
  await expect(page.getByRole('button', { name: 'Skip to the page' })).toBeFocused();
  await page.keyboard.press('Enter');
  await expect(page.getByRole('main')).toBeFocused();

  for (const room of ROOMS) {
    const link = page.getByRole('navigation', { name: 'Rooms' }).getByRole('link', { name: room, exact: true });
    await page.reload();
    const unfocused = await link.evaluate((one) => getComputedStyle(one).boxShadow);
    await page.keyboard.press('Tab');
    for (let stops = 0; stops <= ROOMS.length + 1; stops++) {
      if (await link.evaluate((one) => one === document.activeElement)) break;
      await page.keyboard.press('Tab');
    }
    await expect(link).toBeFocused();
    expect(await link.evaluate((one) => getComputedStyle(one).boxShadow)).not.toBe(unfocused);
    await page.keyboard.press('Enter');
    await expect(keeper.heading()).toHaveText(room);
    await expect(link).toHaveAttribute('aria-current', 'page');
  }

  await keeper.goTo('Bench');
  await page.getByRole('link', { name: /Juniper.*skin of instar 10, from above/ }).press('Enter');
  await keeper.bench.shown();
  await page.getByRole('tab', { selected: true }).focus();
  while ((await page.getByRole('tab', { name: 'Points' }).getAttribute('aria-selected')) !== 'true')
    await page.keyboard.press('ArrowRight');
  await expect(page.getByRole('tab', { name: 'Points' })).toBeFocused();
  const part = keeper.bench.part('Carapace');
  await part.locator('summary').press('Enter');
  const front = keeper.bench.point('Carapace', 'Front, midline');
  await front.press('Enter');
  await expect(front).toHaveAttribute('aria-pressed', 'true');
  const [x = 0, y = 0] = placeIn(await front.textContent());
  await page.keyboard.press('Shift+ArrowLeft');
  await page.keyboard.press('ArrowUp');
  await page.keyboard.press('Alt+ArrowDown');
  expect(placeIn(await front.textContent())).toEqual([expect.closeTo(x - 10, 5), expect.closeTo(y - 0.9, 5)]);
  await page.keyboard.press('PageDown');
  await expect(keeper.bench.point('Carapace', 'Rear, midline')).toHaveAttribute('aria-pressed', 'true');
});

function placeIn(words: string | null): number[] {
  return (/(\d+\.\d), (\d+\.\d)$/.exec(words ?? '') ?? []).slice(1).map(Number);
}
