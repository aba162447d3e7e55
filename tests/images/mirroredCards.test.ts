import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import type { LightImage } from '../../src/domain/finding/light.ts';
import { proposalsFrom } from '../../src/domain/finding/lookRound.ts';
import { type PrintedCard, printedCards } from '../../src/domain/finding/markers/printedCards.ts';
import { calibrate } from '../../src/domain/measuring/calibrate.ts';
import { unwrap } from '../../src/domain/result.ts';
import { scaleCardLayout } from '../../src/domain/scaleCard/layout.ts';
import { openFiducialDetector } from '../../src/images/fiducials.ts';
import { readLight } from '../../src/images/light.ts';
import { drawnCard } from '../support/drawnCard.ts';
import { photoTruths, pictureOf, trueClicksOn } from '../support/photoTruth.ts';
import { pinhole } from '../support/pinhole.ts';
import { measureTrueClicks, quantityOf, trueMm } from '../support/trueClicks.ts';

const detector = openFiducialDetector();
afterAll(() => detector.close());

/** As a front camera saves it. Written apart from the code under test. */
function asInMirror({ widthPx, heightPx, light }: LightImage): LightImage {
  return {
    widthPx,
    heightPx,
    light: light.map((_, index) => light[index - (index % widthPx) + widthPx - 1 - (index % widthPx)] ?? Number.NaN),
  };
}

async function cardsIn(image: LightImage): Promise<readonly PrintedCard[]> {
  return printedCards(image, [image], await detector.find(image));
}

describe('a plain card of which two markers are their own mirror images', () => {
  const seeing = (async () => {
    const truth = photoTruths().find(({ name }) => name === 'specimen-c_instar-10_dorsal');
    if (!truth) throw new Error('The photo is missing');
    const path = join(import.meta.dirname, '../../resources/sample/photos/saffron-10-dorsal.jpg');
    const { image } = unwrap(await readLight({ path, name: 'saffron-10' }));
    return { truth, image, mirrored: asInMirror(image) };
  })();

  test('is seen both ways with these two, but as what it is with four', async () => {
    const { image, mirrored } = await seeing;
    const markers = await detector.find(mirrored);
    expect(markers.upright.map(({ markerId }) => markerId).toSorted()).toEqual([8, 9]);
    expect(markers.mirrored).toHaveLength(4);
    expect(await cardsIn(image)).toMatchObject([{ object: 'markers', mirrored: false, found: { markers: 4 } }]);
    expect(await cardsIn(mirrored)).toMatchObject([{ object: 'markers', mirrored: true, found: { markers: 4 } }]);
  });

  test('is proposed with little confidence, and its marks say that the picture is mirrored', async () => {
    const { truth, mirrored } = await seeing;
    const picture = pictureOf(truth);
    const light = { image: mirrored, colors: [mirrored], factor: 1 } as const;
    const [proposal] = proposalsFrom(light, { markers: await detector.find(mirrored), straight: [], coins: [] }, 1, picture);
    expect(proposal).toMatchObject({ marks: { kind: 'points', mirrored: true } });
    expect(proposal?.confidence).toBeLessThan(0.5);
    const calibration = proposal && unwrap(calibrate(proposal.marks, picture));
    expect(calibration?.warnings.map(({ code }) => code)).toContain('picture-mirrored');
  });

  test('still gives the carapace within half a percent', async () => {
    const { truth, mirrored } = await seeing;
    const picture = pictureOf(truth);
    const light = { image: mirrored, colors: [mirrored], factor: 1 } as const;
    const [proposal] = proposalsFrom(light, { markers: await detector.find(mirrored), straight: [], coins: [] }, 1, picture);
    if (proposal?.marks.kind !== 'points') throw new Error('Expected the card');
    const thick = { ...proposal.marks, thicknessMm: 0.25 };
    const turnedOver = {
      ...truth,
      landmarks: Object.fromEntries(
        Object.entries(truth.landmarks).map(([name, { xyz_mm, px }]) => [
          name,
          { xyz_mm, px: [truth.display_width - px[0], px[1]] as [number, number] },
        ]),
      ),
    };
    const { heightsMm } = trueClicksOn(truth);
    const length = quantityOf(measureTrueClicks(turnedOver, unwrap(calibrate(thick, picture)), { heightsMm }), 'carapace-length');
    expect(Math.abs(length.estimate.value / trueMm(truth, 'carapace_length') - 1)).toBeLessThan(0.005);
  });
});

describe('the scale card', () => {
  const camera = pinhole({
    tiltDeg: 12,
    axisDeg: 40,
    rollDeg: 75,
    distanceMm: 330,
    aim: { xMm: 105, yMm: 74 },
    focalPx: 1500,
    widthPx: 1400,
    heightPx: 1050,
  });

  test('in a mirrored picture has all of its corners, to a tenth of a pixel of where the mirror shows them', async () => {
    const layout = scaleCardLayout('a5');
    const image = drawnCard(layout, camera, { grain: 0.006 });
    expect(await cardsIn(image)).toMatchObject([{ object: 'scale-card', mirrored: false }]);
    const cards = await cardsIn(asInMirror(image));
    expect(cards).toMatchObject([{ object: 'scale-card', mirrored: true }]);
    const points = cards[0]?.found.points ?? [];
    expect(points).toHaveLength(60);
    const off = points.map(({ at, xMm, yMm }) => {
      // The frame is 190 mm wide; its places are mirrored with the picture.
      const truth = camera.see(190 - xMm + layout.frameLeftMm, yMm + layout.frameTopMm);
      return Math.hypot(at.xPx - (1400 - truth.xPx), at.yPx - truth.yPx);
    });
    expect(Math.max(...off)).toBeLessThan(0.2);
  });
});

test('columns that the reduced picture leaves out do not shift what is found in the mirrored one', async () => {
  // 2399 px are reduced by 2: one column is left out.
  const camera = pinhole({
    tiltDeg: 5,
    axisDeg: 0,
    rollDeg: 0,
    distanceMm: 300,
    aim: { xMm: 105, yMm: 74 },
    focalPx: 2600,
    widthPx: 2399,
    heightPx: 1500,
  });
  const layout = scaleCardLayout('a5');
  const image = drawnCard(layout, camera, { grain: 0.006 });
  const [straight, turned] = [await detector.find(image), await detector.find(asInMirror(image))];
  const middleX = (markers: typeof straight.upright, markerId: number): number => {
    const corners = markers.find((marker) => marker.markerId === markerId)?.corners ?? [];
    return corners.reduce((sum, { xPx }) => sum + xPx / 4, 0);
  };
  // Outlines are found to whole pixels of the reduced picture; together they tell less than one of the picture itself.
  const shifts = straight.upright.map(({ markerId }) => middleX(straight.upright, markerId) - middleX(turned.mirrored, markerId));
  expect(Math.abs(shifts.reduce((sum, shift) => sum + shift, 0) / shifts.length)).toBeLessThan(0.3);
  expect(straight.upright.length).toBeGreaterThan(30);
});
