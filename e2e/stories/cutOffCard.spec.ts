import { expect, test } from '../support/camera.ts';
import { Keeper, percentOff, shownEstimate } from '../support/keeper.ts';
import { type PixelPlace, photoTruth } from '../support/photoTruth.ts';
import { writeNarrowed } from '../support/pictures.ts';

/** Fitting takes a second or two; on a machine that does other things besides, more. */
const SOUGHT = { timeout: 90_000 };
test.describe.configure({ timeout: 180_000 });

const whole = photoTruth('juniper-10-dorsal', 'specimen-a_instar-10_dorsal');
/** The middle of that photo: its left border runs through the card. 26 mm over the diagonal of the whole are 38 mm over that of this. */
const NARROW_PX = 828;
const FOCAL_LENGTH_35_MM = 38;
const size = { width: NARROW_PX, height: whole.size.height };
const moved = ({ x, y }: PixelPlace): PixelPlace => ({ x: x - (whole.size.width - NARROW_PX) / 2, y });

test('a card with one side out of the frame is marked beside the picture and fitted on its three sides; what is lost is said', async ({
  page,
  camera,
}) => {
  const keeper = new Keeper(page);
  const { bench } = keeper;
  await keeper.layOnBench(await writeNarrowed(camera, whole.file, NARROW_PX, FOCAL_LENGTH_35_MM), {
    photo: 'narrowed.jpg',
    to: 'TK-01',
    moltedOn: '2024-05-01',
    instarShed: '10',
  });
  const corners = whole.cardCorners().map(moved);
  expect(corners.filter(({ x }) => x < 0)).toHaveLength(2);
  const clicked = corners.map(({ x, y }, index) => ({ x: x + (index % 2 === 0 ? 5 : -4), y: y + (index < 2 ? -4 : 5) }));
  await bench.take('Known size');
  await bench
    .panel()
    .getByRole('button', { name: /^A bank-size card .*mm$/ })
    .click();
  await expect(
    bench.panel().getByText(/^A corner that is covered, or cut off by the frame: mark it where the straight edges would meet/),
  ).toBeVisible();
  await bench.click({ x: -0.26 * size.height, y: 400 }, size);
  await expect(page.getByRole('status').filter({ hasText: 'Nothing placed: this lies too far outside the picture.' })).toBeVisible();
  await bench.markCorners(clicked, size);
  await expect(bench.panel().getByText(/^Corners \d and \d lie beside the picture, put there by hand/)).toBeVisible();
  // A handle out there can be taken hold of and dragged on.
  const [held, meant] = [clicked[0], corners[0]];
  if (held === undefined || meant === undefined) throw new Error('Expected four corners');
  const [from, to] = [await bench.inWindow(held, size), await bench.inWindow(meant, size)];
  await page.mouse.move(from.x, from.y);
  await page.mouse.down();
  await page.mouse.move(to.x - 6, to.y, { steps: 4 });
  await page.mouse.move(to.x, to.y, { steps: 4 });
  await page.mouse.up();
  await bench.saved();

  await bench.panel().getByRole('button', { name: 'Fit to the edges' }).click();
  await expect(bench.panel().getByText(/^The edge \d to \d was not seen; its corners follow from the other three/)).toBeVisible(SOUGHT);
  await expect(bench.panel().getByText(/^The edge from corner \d to \d was not seen\. Lengths rest on the other three/)).toBeVisible();
  await expect(bench.panel().getByText(/put there by hand/)).toBeHidden();
  await bench.saved();
  await page.reload();
  await bench.shown();

  await bench.take('Points');
  await bench.place('Carapace', 'Front, midline', moved(whole.landmark('carapace_anterior_mid')), size);
  await bench.place('Carapace', 'Rear, midline', moved(whole.landmark('carapace_posterior_mid')), size);
  await bench.enterHeight(whole.carapaceHeightMm);
  await bench.take('Lengths');
  const { value, uncertainty } = shownEstimate(await bench.length('Carapace length').textContent());
  expect(percentOff(value, whole.carapaceLengthMm)).toBeLessThan(1.5);
  expect(Math.abs(value - whole.carapaceLengthMm)).toBeLessThan(uncertainty);
});
