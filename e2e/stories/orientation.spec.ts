import { expect, test } from '../support/hosts.ts';
import { Keeper } from '../support/keeper.ts';
import { differenceFrom } from '../support/likeness.ts';
import { photoTruth } from '../support/photoTruth.ts';

/** Orientation tags as EXIF 2.32 (CIPA DC-008) numbers them; the places in the truth are those of the upright picture. */
const TURNED = [
  { orientation: 6, skin: photoTruth('juniper-06-dorsal', 'specimen-a_instar-06_dorsal') },
  { orientation: 8, skin: photoTruth('juniper-09-dorsal', 'specimen-a_instar-09_dorsal') },
  { orientation: 3, skin: photoTruth('bramble-08-dorsal', 'specimen-b_instar-08_dorsal') },
] as const;

interface Sheet {
  readonly photo: { readonly widthPx: number; readonly heightPx: number };
  readonly readings: readonly {
    readonly landmarks: Readonly<Record<string, { readonly at: { readonly xPx: number; readonly yPx: number } }>>;
  }[];
}

for (const { orientation, skin } of TURNED) {
  test(`a photo of EXIF orientation ${orientation} lies upright on the Bench, and a click lands where the truth says`, async ({ page }) => {
    const keeper = new Keeper(page);
    const { bench } = keeper;
    await keeper.goTo('Intake');
    await keeper.bringIn([skin.file], '1 photo added');
    await keeper.report().getByText('Every file').click();
    await page.getByRole('link', { name: 'See it on the Bench' }).click();
    await bench.shown();
    const drawn = await bench.middleOfPhoto(skin.size);
    expect(await differenceFrom(drawn, skin, 0)).toBeLessThan(4);
    for (const turn of [90, 180, 270]) expect(await differenceFrom(drawn, skin, turn)).toBeGreaterThan(10);

    // Nothing is wrong, so nothing is said of the note before it is asked for.
    await expect(bench.panel().getByText(/note of how the camera was held/)).toBeHidden();
    await bench.take('Points');
    const front = skin.landmark('carapace_anterior_mid');
    await bench.click(front, skin.size);
    await bench.saved();

    const photoId = page.url().split('/').at(-1);
    const sheet = await keeper.asks<Sheet>(`/api/photos/${photoId}/bench`);
    expect(sheet.photo).toMatchObject({ widthPx: skin.size.width, heightPx: skin.size.height });
    const at = sheet.readings[0]?.landmarks['carapace-front']?.at;
    // A pixel of the window holds about two and a half of the photo.
    expect(Math.hypot((at?.xPx ?? 0) - front.x, (at?.yPx ?? 0) - front.y)).toBeLessThan(2.5);
  });
}
