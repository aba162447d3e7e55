import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { rimAbout } from '../../../../src/domain/finding/coin/findCoin.ts';
import { type CoinProposal, proposeCoins } from '../../../../src/domain/finding/coin/proposeCoins.ts';
import { judgedPicture } from '../../../../src/domain/finding/judged.ts';
import type { LightPlanes } from '../../../../src/domain/finding/light.ts';
import type { Ellipse } from '../../../../src/domain/measuring/ellipse.ts';
import { unwrap } from '../../../../src/domain/result.ts';
import { readLight } from '../../../../src/images/light.ts';
import { brightened, type Changed, gray, inverted, quarterTurned } from '../../../support/changedLight.ts';
import { rimError } from '../../../support/coinScenes.ts';
import { COIN_PHOTOS, type CoinPhoto, coinLight, coinTruth } from '../../../support/coinTruth.ts';

/** An error of the rim of three standard uncertainties is passed in 5 % of all cases at the most: see `coinScenes.test.ts`. */
const COVERS = 3;
/** Beyond this share of its radius a rim is another outline: a core of another metal, an engraved ring, a shadow. */
const ANOTHER_SHARE = 1 / 30;

const CHANGES: readonly (readonly [string, (shown: Changed) => Changed])[] = [
  ['turned by a quarter', quarterTurned],
  ['without colors', gray],
  ['brightened by half', (shown) => brightened(shown, 1.5)],
  ['darkened to a third', (shown) => brightened(shown, 0.33)],
  ['as a negative', inverted],
  ['as a negative, turned upside down', (shown) => quarterTurned(quarterTurned(inverted(shown)))],
];

const NO_RIM: Ellipse = { centre: { xPx: 0, yPx: 0 }, semiMajorPx: 1, semiMinorPx: 1, angleRad: 0 };

async function shownOn(photo: CoinPhoto): Promise<Changed> {
  return { planes: await coinLight(photo), rim: coinTruth(photo).rim };
}

/** From a middle that is off by 3 % of the coin's width. */
function foundOn({ planes, rim }: Changed) {
  const { xPx, yPx } = rim.centre;
  const found = rimAbout(planes, { xPx: xPx + 0.05 * rim.semiMajorPx, yPx: yPx - 0.033 * rim.semiMajorPx });
  if (!found.ok) throw new Error(found.failure.code);
  return { ...found.value, ...rimError(found.value.ellipse, rim) };
}

function coinsOf(planes: LightPlanes): readonly CoinProposal[] {
  return proposeCoins(judgedPicture(planes[0], planes).colors);
}

describe.each(CHANGES)('the rim of a coin in a photo %s', (_, change) => {
  test('is that of the coin rather than of its core or its engraved ring, where it has an edge of its own', async () => {
    for (const photo of COIN_PHOTOS.filter(({ name }) => !name.startsWith('silver'))) {
      const found = foundOn(change(await shownOn(photo)));
      expect(found.rmsPx, photo.name).toBeLessThan(ANOTHER_SHARE * found.ellipse.semiMajorPx);
      expect(found.rmsPx, photo.name).toBeLessThan(COVERS * found.standardUncertaintyPx);
    }
  }, 60_000);

  test('is stated wide enough where it fades into its shadow', async () => {
    for (const photo of COIN_PHOTOS.filter(({ name }) => name.startsWith('silver'))) {
      const found = foundOn(change(await shownOn(photo)));
      expect(found.settled, photo.name).toBe(false);
      expect(found.rmsPx, photo.name).toBeLessThan(COVERS * found.standardUncertaintyPx);
    }
  }, 60_000);
});

// Without color a two-colored coin is too faint to be proposed; a click still finds its rim.
test.each(CHANGES.filter(([, change]) => change !== gray))(
  'a coin with an edge of its own is proposed without a click in a photo %s',
  async (_, change) => {
    for (const photo of COIN_PHOTOS.filter(({ name }) => !name.startsWith('silver'))) {
      const { planes, rim } = change(await shownOn(photo));
      const [first] = coinsOf(planes);
      expect(first && rimError(first.rim.ellipse, rim).rmsPx, photo.name).toBeLessThan(ANOTHER_SHARE * rim.semiMajorPx);
    }
  },
  60_000,
);

/** Photos of the sample cabinet with a card, a rule or markers, but no coin. */
const WITHOUT_COIN = ['juniper-06-dorsal', 'juniper-07-dorsal', 'bramble-09-dorsal', 'saffron-08-dorsal'];

test.each(WITHOUT_COIN)(
  'no coin is proposed on %s, however it is turned or its light is changed',
  async (name) => {
    const path = join(import.meta.dirname, `../../../../resources/sample/photos/${name}.jpg`);
    const { colors } = unwrap(await readLight({ path, name }));
    for (const [how, change] of CHANGES) expect(coinsOf(change({ planes: colors, rim: NO_RIM }).planes), how).toEqual([]);
  },
  60_000,
);
