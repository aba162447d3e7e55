import { expect, test } from '../support/camera.ts';
import { Keeper } from '../support/keeper.ts';
import { photoTruth } from '../support/photoTruth.ts';
import { writeMirrored, writeWronglyNoted } from '../support/pictures.ts';

/** Looking through a picture takes a second or two; on a machine that does other things besides, more. */
const SOUGHT = { timeout: 90_000 };
test.describe.configure({ timeout: 180_000 });

const withMarkers = photoTruth('saffron-10-dorsal', 'specimen-c_instar-10_dorsal');
const withCard = photoTruth('juniper-10-dorsal', 'specimen-a_instar-10_dorsal');

test('a mirrored photo is told by its printed card: what is wrong, what still holds, what to do', async ({ page, camera }) => {
  const keeper = new Keeper(page);
  const { bench } = keeper;
  const mirrored = await writeMirrored(camera, withMarkers.file);
  await keeper.layOnBench(mirrored, { photo: 'mirrored.jpg', to: 'TK-01', instarShed: '10' });
  const words =
    /^This picture is mirrored: .*Lengths still come out right, but left and right are exchanged.*Import the unmirrored original/;
  const found = bench.panel().getByRole('region', { name: 'Found in this picture' });
  const card = found.getByRole('button', { name: /^A card with printed markers.*uncertain/ });
  await expect(card).toBeVisible(SOUGHT);
  await card.click();
  await expect(found.getByText(words)).toBeVisible();
  await found.getByRole('button', { name: /^Take it: A card with printed markers/ }).click();
  await expect(bench.panel().getByText(words)).toBeVisible();
  await bench.saved();
  await page.reload();
  await bench.shown();
  await bench.take('Points');
  await expect(bench.panel().getByText(words)).toBeVisible();
  await bench.take('Lengths');
  await expect(bench.panel().getByText(words)).toBeVisible();
});

test('handles beside the edges of their card are told so, not taken for a second card, and fitted with one press', async ({ page }) => {
  const keeper = new Keeper(page);
  const { bench } = keeper;
  await keeper.layOnBench(withCard.file, { photo: withCard.fileName, to: 'TK-01', instarShed: '10' });
  await expect(bench.panel().getByRole('button', { name: /^Take it: A bank-size card/ })).toBeVisible(SOUGHT);
  const corners = withCard.cardCorners();
  const middle = {
    x: corners.reduce((sum, { x }) => sum + x / 4, 0),
    y: corners.reduce((sum, { y }) => sum + y / 4, 0),
  };
  const outward = corners.map(({ x, y }) => ({ x: middle.x + 1.06 * (x - middle.x), y: middle.y + 1.06 * (y - middle.y) }));
  await bench.scaleByCard(outward, withCard.size);
  await expect(bench.panel().getByText('The handles do not lie on the edges of the card')).toBeVisible();
  await expect(bench.panel().getByText(/^Its edges were found in the picture, drawn yellow: one handle is \d+ px away/)).toBeVisible();
  await expect(bench.panel().getByText('Two objects in this picture contradict each other')).toBeHidden();
  await bench.panel().getByRole('button', { name: 'Fit them to these edges' }).click();
  await expect(bench.panel().getByText('The handles do not lie on the edges of the card')).toBeHidden();
  await expect(bench.panel().getByText('All four edges were found; the corners are where they meet.')).toBeVisible();
  // What was found along the edges came with the corners: only then can it be said that the lens does not show on them.
  await expect(
    bench.panel().getByText(/^Distortion of the lens\. Not corrected: what the scale object shows of it cannot be told from none/),
  ).toBeVisible();
  await bench.button('Undo: take over what was found').click();
  await expect(bench.panel().getByText('The handles do not lie on the edges of the card')).toBeVisible();
  await bench.button('Redo: take over what was found').click();
  await bench.saved();
});

test('the same card marked at another place is another card, and the two are told apart', async ({ page }) => {
  const keeper = new Keeper(page);
  const { bench } = keeper;
  await keeper.layOnBench(withCard.file, { photo: withCard.fileName, to: 'TK-01', instarShed: '10' });
  await expect(bench.panel().getByRole('button', { name: /^Take it: A bank-size card/ })).toBeVisible(SOUGHT);
  const corners = withCard.cardCorners();
  const middleX = corners.reduce((sum, { x }) => sum + x / 4, 0);
  const byX = middleX > withCard.size.width / 2 ? -0.4 * withCard.size.width : 0.4 * withCard.size.width;
  const smaller = corners.map(({ x, y }) => ({
    x: middleX + byX + 0.5 * (x - middleX),
    y: withCard.size.height / 2 + 0.5 * (y - (corners[0]?.y ?? 0)),
  }));
  await bench.scaleByCard(smaller, withCard.size);
  await expect(bench.panel().getByText('Two objects in this picture contradict each other')).toBeVisible();
  const trust = bench.panel().getByRole('button', { name: /^Trust: A bank-size card .*, the (left|right) one$/ });
  await expect(bench.panel().getByText(/^Measured by now: A bank-size card .*, the (left|right) one$/)).toBeVisible();
  await trust.click();
  await expect(bench.panel().getByText('Two objects in this picture contradict each other')).toBeHidden();
  await bench.saved();
});

test('a wrong note of how the camera was held is told of, and corners no card could have are called that; what was measured stays', async ({
  page,
  camera,
}) => {
  const keeper = new Keeper(page);
  const { bench } = keeper;
  await keeper.layOnBench(await writeWronglyNoted(camera, withCard.file, 2), {
    photo: 'noted-2.jpg',
    to: 'TK-01',
    moltedOn: '2024-05-01',
    instarShed: '10',
  });
  await expect(
    bench.panel().getByText(/^The file notes that its picture is a mirror image.*If writing in it reads backwards/),
  ).toBeVisible();
  const { width, height } = withCard.size;
  const across = [
    { x: 0.2 * width, y: 0.5 * height },
    { x: 0.8 * width, y: 0.5 * height },
    { x: 0.79 * width, y: 0.51 * height },
    { x: 0.21 * width, y: 0.51 * height },
  ];
  await bench.panel().getByRole('button', { name: 'A bank-size card (ISO/IEC 7810 ID-1) 85.60 × 53.98 mm' }).click();
  await bench.markCorners(across, withCard.size);
  await expect(
    bench.panel().getByText(/^These corners fit no rectangle of this size.*almost edge-on.*Mark the corners anew/),
  ).toBeVisible();
  await bench.take('Points');
  await bench.click({ x: 0.5 * width, y: 0.5 * height }, withCard.size);
  await bench.saved();
  await page.reload();
  await bench.shown();
  await bench.take('Points');
  await expect(bench.panel().getByText('1 of 52 points answered')).toBeVisible();
});

test('corners that are all there but cross are not saved, and the bar says why', async ({ page }) => {
  const keeper = new Keeper(page);
  const { bench } = keeper;
  await keeper.layOnBench(withCard.file, { photo: withCard.fileName, to: 'TK-01', instarShed: '10' });
  const corners = withCard.cardCorners();
  await bench.scaleByCard(corners, withCard.size);
  await bench.saved();
  const [first, , third] = corners;
  if (first === undefined || third === undefined) throw new Error('Expected four corners');
  const from = await bench.inWindow(first, withCard.size);
  const beyond = { x: first.x + 0.8 * (third.x - first.x), y: first.y + 0.8 * (third.y - first.y) };
  const to = await bench.inWindow(beyond, withCard.size);
  await page.mouse.move(from.x, from.y);
  await page.mouse.down();
  await page.mouse.move(to.x, to.y, { steps: 8 });
  await page.mouse.up();
  await expect(page.getByText('All saved but the scale: its corners cannot be right')).toBeVisible();
  await bench.button(/^Undo/).click();
  await expect(page.getByText(/^All saved$/)).toBeVisible();
});
