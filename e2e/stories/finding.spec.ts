import { expect, test } from '../support/hosts.ts';
import { Keeper, millimeters, percentOff } from '../support/keeper.ts';
import { expectAccessible } from '../support/pageChecks.ts';
import { type PhotoTruth, photoTruth } from '../support/photoTruth.ts';

const withCard = photoTruth('juniper-10-dorsal', 'specimen-a_instar-10_dorsal');
/** Looking through a picture takes a second or two; on a machine that does other things besides, more. */
const SOUGHT = { timeout: 90_000 };
test.describe.configure({ timeout: 180_000 });

const withCoin = photoTruth('saffron-09-dorsal', 'specimen-c_instar-09_dorsal');
const withRule = photoTruth('bramble-08-dorsal', 'specimen-b_instar-08_dorsal');

/** Marks the midline of the carapace, each end at its own height, and reads its length. */
async function carapaceLength(keeper: Keeper, photo: PhotoTruth): Promise<number> {
  const { bench } = keeper;
  await bench.take('Points');
  await bench.place('Carapace', 'Front, midline', photo.landmark('carapace_anterior_mid'), photo.size);
  await expect(bench.panel().getByText(/^Not known yet: it follows from the carapace’s width, 0\.35 of it/)).toBeVisible();
  await expect(bench.panel().getByLabel('This point, mm')).toHaveValue('');
  await bench.enterPointHeight(photo.landmarkHeightMm('carapace_anterior_mid'));
  await bench.place('Carapace', 'Rear, midline', photo.landmark('carapace_posterior_mid'), photo.size);
  await bench.enterPointHeight(photo.landmarkHeightMm('carapace_posterior_mid'));
  await expect(bench.panel().getByText(/It moves the point by \d+\.\d\d mm on the plane of the scale/)).toBeVisible();
  await bench.take('Lengths');
  return millimeters(await bench.length('Carapace length').textContent());
}

test('a card is found without a click, offered, and taken over only when the keeper says so', async ({ page }) => {
  const keeper = new Keeper(page);
  const { bench } = keeper;
  await keeper.layOnBench(withCard.file, { photo: withCard.fileName, to: 'TK-01', instarShed: '10' });
  const found = bench.panel().getByRole('region', { name: 'Found in this picture' });
  await expect(found.getByRole('button', { name: /^A bank-size card.*(clear|likely)/ })).toBeVisible(SOUGHT);
  await expect(found.getByText('All four edges were found; the corners are where they meet.')).toBeVisible();
  expect((await keeper.asks<{ calibration: { marks: unknown } }>(await addressOfSheet(keeper))).calibration.marks).toBeNull();

  await expectAccessible(page, 'what was found');
  await found.getByRole('button', { name: /^Take it: A bank-size card/ }).click();
  await expect(bench.fact('Tilt of the camera')).toHaveText(new RegExp(`^${Math.trunc(withCard.cameraTiltDeg)}\\.\\d+° ± \\d+\\.\\d+°$`));
  expect(percentOff(await carapaceLength(keeper, withCard), withCard.carapaceLengthMm)).toBeLessThan(0.4);
  await bench.saved();
});

test('rough corners are fitted to the edges of the card, which can be undone', async ({ page }) => {
  const keeper = new Keeper(page);
  const { bench } = keeper;
  await keeper.layOnBench(withCard.file, { photo: withCard.fileName, to: 'TK-01', instarShed: '10' });
  const corners = withCard.cardCorners().map(({ x, y }, index) => ({ x: x + (index % 2 === 0 ? 12 : -9), y: y + (index < 2 ? -10 : 8) }));
  await bench.scaleByCard(corners, withCard.size);
  await bench.panel().getByRole('button', { name: 'Fit to the edges' }).click();
  await expect(bench.panel().getByText('All four edges were found; the corners are where they meet.')).toBeVisible(SOUGHT);
  const [first] = withCard.cardCorners();
  if (first === undefined) throw new Error('Expected four corners');
  await expect
    .poll(async () => {
      const marks = bench.panel().getByRole('list', { name: 'Marks on the scale object' });
      const read = await marks.getByRole('button').locator('span:last-child').allTextContents();
      const places = read.map((line) => line.split(', ').map(Number));
      return Math.min(...places.map(([x = 0, y = 0]) => Math.hypot(x - first.x, y - first.y)));
    })
    .toBeLessThan(1);
  await bench.button('Undo: take over what was found').click();
  await expect(bench.panel().getByText('All four edges were found')).toBeHidden();
});

test('two clicks on a rule find every tick between them, and tell the tilt', async ({ page }) => {
  const keeper = new Keeper(page);
  const { bench } = keeper;
  await keeper.layOnBench(withRule.file, { photo: withRule.fileName, to: 'TK-01', instarShed: '8' });
  await bench
    .panel()
    .getByRole('button', { name: /^A rule with ticks/ })
    .click();
  await bench.panel().getByLabel('Above the table, mm').last().fill('0.5');
  await bench.panel().getByRole('button', { name: 'Click two ticks, far apart' }).click();
  for (const mm of [10, 90]) await bench.click(withRule.ruleMark(mm), withRule.size);
  await expect(bench.panel().getByText(/^(79|80|81|82|83) ticks used/)).toBeVisible(SOUGHT);
  await expect(bench.fact('Tilt of the camera')).toHaveText(/^\d+(\.\d+)?° ± \d+(\.\d+)?°$/);
  expect(percentOff(await carapaceLength(keeper, withRule), withRule.carapaceLengthMm)).toBeLessThan(0.6);
});

test('a coin taken for another one contradicts the card beside it: both are shown, and the keeper says which to trust', async ({
  page,
}) => {
  const keeper = new Keeper(page);
  const { bench } = keeper;
  await keeper.layOnBench(withCoin.file, { photo: withCoin.fileName, to: 'TK-01', instarShed: '9' });
  await expect(bench.panel().getByRole('button', { name: /^Take it: A bank-size card/ })).toBeVisible(SOUGHT);
  await bench
    .panel()
    .getByRole('button', { name: /^A coin one click/ })
    .click();
  // It is a euro of 23.25 mm (Council Regulation (EU) No 729/2014); a dime has 17.91 mm (United States Mint).
  await bench.panel().getByLabel('Which coin').selectOption({ label: 'US dime (10 cents), 17.91 mm' });
  await bench.panel().getByRole('button', { name: 'Click its middle' }).click();
  await bench.click(withCoin.coinMiddle(), withCoin.size);
  await expect(bench.panel().getByText('Two objects in this picture contradict each other')).toBeVisible(SOUGHT);
  await expect(bench.panel().getByRole('group', { name: 'Which edge of the coin was nearer to the camera?' })).toBeVisible();
  await bench
    .panel()
    .getByRole('radio', { name: /one: camera tilted \d+\.\d°/ })
    .first()
    .check();
  await expect(bench.fact('Tilt of the camera')).toHaveText(/^\d+(\.\d+)?° ± \d+(\.\d+)?°$/);
  await expect(
    bench.panel().getByText(/^By “A bank-size card.*” in this picture, the coin chosen here does not fit; “.+” would\./),
  ).toBeVisible();
  await expect(
    bench.panel().getByLabel('Which coin').getByRole('option', { name: '1 euro, 23.25 mm, fits the other object' }),
  ).toBeAttached();

  await bench
    .panel()
    .getByRole('button', { name: /^Trust: A bank-size card/ })
    .click();
  await expect(bench.panel().getByText('Two objects in this picture contradict each other')).toBeHidden();
  await expect(bench.fact('Tilt of the camera')).toHaveText(/^2[12]\.\d+° ± \d+\.\d+°$/);
  await bench.saved();
});

test('a found coin gives no scale before the keeper has said which one it is; a disk of their own needs its diameter', async ({ page }) => {
  const keeper = new Keeper(page);
  const { bench } = keeper;
  await keeper.layOnBench(withCoin.file, { photo: withCoin.fileName, to: 'TK-01', instarShed: '9' });
  const found = bench.panel().getByRole('region', { name: 'Found in this picture' });
  await found.getByRole('button', { name: /^A coin/ }).click(SOUGHT);
  const take = found.getByRole('button', { name: /^Take it/ });
  await expect(take).toHaveAccessibleName('Take it: A coin');
  await expect(take).toBeDisabled();
  const diameter = found.getByLabel('Its diameter, mm');
  await found.getByLabel('Which coin is it?').selectOption({ label: 'Another disk of known diameter' });
  await expect(diameter).toHaveValue('');
  await expect(diameter).toBeInViewport({ ratio: 0.95 });
  await expect(take).toBeDisabled();
  await diameter.fill('1000');
  await expect(
    found.getByText(/^Can that be\? With a diameter of 1000 mm the camera would have been [\d.]+ m above the coin/),
  ).toBeVisible();
  await diameter.fill('0,5');
  await expect(found.getByText(/^Can that be\? With a diameter of 0\.5 mm the camera would have been .* cm above the coin/)).toBeVisible();
  // A euro has 23.25 mm (Council Regulation (EU) No 729/2014).
  await diameter.fill('23.25');
  await expect(found.getByText(/^Can that be/)).toBeHidden();
  await expect(take).toBeEnabled();
  await diameter.fill('-5');
  await expect(found.getByText('It must be more than 0.')).toBeInViewport({ ratio: 0.95 });
  await expect(take).toBeDisabled();
  await diameter.fill('23.25');
  await take.click();
  await expect(bench.panel().getByRole('heading', { name: 'Another disk of known diameter' })).toBeVisible();

  const taken = bench.panel().getByLabel('Diameter, mm');
  await expect(taken).toHaveValue('23.25');
  await taken.fill('0');
  await taken.press('Enter');
  await expect(bench.panel().getByText('It must be more than 0. Until then it stays 23.25.')).toBeInViewport({ ratio: 0.95 });
  await taken.press('Escape');
  await bench.saved();

  await bench
    .panel()
    .getByRole('radio', { name: /^I cannot say/ })
    .check();
  await bench.take('Points');
  await bench.place('Carapace', 'Front, midline', withCoin.landmark('carapace_anterior_mid'), withCoin.size);
  await bench.place('Carapace', 'Rear, midline', withCoin.landmark('carapace_posterior_mid'), withCoin.size);
  await bench.take('Lengths');
  await expect(bench.length('Carapace length')).toHaveText(/±/);
  const undecided = await bench.length('Carapace length').textContent();
  await expect(bench.panel().getByText('Nobody has said it yet, so every length stands between two answers')).toBeVisible();
  await bench.button('Say which edge was nearer').press('Enter');
  await expect(page.getByRole('tab', { name: 'Known size' })).toBeFocused();
  const edges = bench.panel().getByRole('group', { name: 'Which edge of the coin was nearer to the camera?' });
  await expect(edges).toBeInViewport({ ratio: 0.95 });
  await edges
    .getByRole('radio', { name: /one: camera tilted \d+\.\d°/ })
    .first()
    .check();
  await bench.take('Lengths');
  await expect(bench.length('Carapace length')).toHaveText(/±/);
  await expect(bench.length('Carapace length')).not.toHaveText(undecided ?? '');
  await expect(bench.button('Say which edge was nearer')).toBeHidden();
});

test('clicks where no rule lies are told so, and nothing that was measured is lost', async ({ page }) => {
  const keeper = new Keeper(page);
  const { bench } = keeper;
  await keeper.layOnBench(withCard.file, { photo: withCard.fileName, to: 'TK-01', instarShed: '10' });
  await bench.scaleByCard(withCard.cardCorners(), withCard.size);
  const before = await bench.fact('One pixel, at the middle').textContent();
  await bench.panel().getByRole('button', { name: 'Another object' }).click();
  await bench
    .panel()
    .getByRole('button', { name: /^A coin one click/ })
    .click();
  await expect(bench.panel().getByRole('button', { name: 'Click its middle' })).toBeDisabled();
  await bench.panel().getByLabel('Which coin').selectOption({ label: 'US quarter dollar, 24.26 mm' });
  await bench.panel().getByRole('button', { name: 'Click its middle' }).click();
  await bench.click({ x: withCard.size.width * 0.06, y: withCard.size.height * 0.06 }, withCard.size);
  await expect(bench.panel().getByRole('alert')).toBeVisible(SOUGHT);
  await bench.panel().getByRole('button', { name: 'Leave it' }).click();
  await expect(bench.fact('One pixel, at the middle')).toHaveText(before ?? '');

  await bench.panel().getByRole('button', { name: 'Another object' }).click();
  await bench
    .panel()
    .getByRole('button', { name: /^Take it: A bank-size card/ })
    .click(SOUGHT);
  await expect(bench.panel().getByRole('heading', { name: /^A bank-size card/ })).toBeVisible();
  await expect(bench.panel().getByRole('region', { name: 'Found in this picture' })).toBeHidden();
});

/** The address at which the page asks for the sheet of the photo that is open. */
async function addressOfSheet(keeper: Keeper): Promise<string> {
  const photoId = /\/bench\/([^/?#]+)/.exec(keeper.page.url())?.[1];
  if (photoId === undefined) throw new Error(`Expected a photo on the Bench but the page is ${keeper.page.url()}`);
  return `/api/photos/${photoId}/bench`;
}
