import { expect, test } from 'vitest';
import { asDisk } from '../../../../src/domain/finding/coin/coinMarks.ts';
import type { ScaleProposal } from '../../../../src/domain/finding/foundScale.ts';
import { betterCoinInWords, coinHintOf } from '../../../../src/renderer/pages/bench/scale/coinHint.ts';
import { coinOptions } from '../../../../src/renderer/pages/bench/scale/objects.ts';
import { COIN_PHOTOS, coinTruth } from '../../../support/coinTruth.ts';
import { photoTruths, tickMarksOn } from '../../../support/photoTruth.ts';

/** A quarter dollar of 24.26 mm (United States Mint, Coin Specifications) beside a rule of 100 mm; rendered, its truth known. */
const [, , photo] = COIN_PHOTOS;
const { rim, marksOn, picture } = coinTruth(photo);
const quarter = asDisk(marksOn(rim, 0.25, null), { coin: 'us-quarter' });
/** 17.91 mm (the same source): 26 % too small for this rim. */
const dime = asDisk(quarter, { coin: 'us-dime' });

function ruleSeen(confidence: number, graduationMm = 1): ScaleProposal {
  const seen = photoTruths().find(({ name }) => photo.truth.endsWith(name));
  if (!seen) throw new Error('The photo with both is missing');
  const marks = { ...tickMarksOn(seen), graduationMm };
  return {
    marks,
    evidence: { kind: 'ticks', found: marks.ticks.length, missing: [], scatterPx: 0.1, graduationAssumed: true },
    confidence,
  };
}

test('a coin that was taken is still told to fit the rule beside it, first in the list', () => {
  const hint = coinHintOf(quarter, undefined, [ruleSeen(0.9)], picture);
  expect(hint?.coins).toContain('us-quarter');
  expect(hint?.isBetter).toBe(false);
  const labels = coinOptions(hint?.coins ?? []).map(({ label }) => label);
  expect(labels[0]).toMatch(/fits the other object$/);
  expect(labels).toContain('US quarter dollar, 24.26 mm, fits the other object');
  expect(labels).toContain('US dime (10 cents), 17.91 mm');
});

test('of a coin that contradicts a clearly seen rule it is said which would fit, and on what condition', () => {
  const hint = coinHintOf(dime, undefined, [ruleSeen(0.9)], picture);
  expect(hint).toMatchObject({ isBetter: true, isSizeAssumed: true });
  expect(hint?.coins).not.toContain('us-dime');
  if (hint === null) throw new Error('Nothing was said');
  expect(betterCoinInWords(hint)).toMatch(/if its ticks are 1 mm apart, the coin chosen here does not fit; “.+” would\./);
});

test('a rule that is seen less than clearly accuses no coin, but still marks what fits it', () => {
  const hint = coinHintOf(dime, undefined, [ruleSeen(0.7)], picture);
  expect(hint?.isBetter).toBe(false);
  expect(hint?.coins).toContain('us-quarter');
});

test('what the keeper took to check by counts before what was seen, without a condition', () => {
  const { marks } = ruleSeen(0.9);
  const hint = coinHintOf(dime, marks, [ruleSeen(0.9, 1.5875)], picture);
  expect(hint).toMatchObject({ by: marks, isBetter: true, isSizeAssumed: false });
  if (hint === null) throw new Error('Nothing was said');
  expect(betterCoinInWords(hint)).not.toContain('if its ticks');
});

test('where no other object lies nothing is said, and no coin is marked', () => {
  expect(coinHintOf(dime, undefined, [], picture)).toBeNull();
  const labels = coinOptions([]).map(({ label }) => label);
  expect(labels.every((label) => !label.includes('fits'))).toBe(true);
});
