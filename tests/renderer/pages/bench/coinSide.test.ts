import { expect, test } from 'vitest';
import type { ScaleProposal } from '../../../../src/domain/finding/foundScale.ts';
import { sideFromOthers } from '../../../../src/renderer/pages/bench/scale/useProposals.ts';
import { COIN_PHOTOS, coinTruth } from '../../../support/coinTruth.ts';
import { photoTruths, rectangleOn } from '../../../support/photoTruth.ts';

const [, photo] = COIN_PHOTOS;
const { rim, marksOn, picture } = coinTruth(photo);
const undecided = marksOn(rim, 0.25, null);

function cardWith(evidence: ScaleProposal['evidence']): ScaleProposal {
  const seen = photoTruths().find(({ name }) => photo.truth.endsWith(name));
  if (!seen) throw new Error('The photo with both is missing');
  return { marks: rectangleOn(seen).marks, evidence, confidence: 0.9 };
}

test('the side of a coin follows from an object of known size beside it, and is told with that object', () => {
  const card = cardWith({ kind: 'sides', sides: [null, null, null, null], lost: [] });
  const sided = sideFromOthers(undecided, [card], picture);
  expect(sided?.by).toBe(card.marks);
  expect(sided?.marks).toMatchObject({ kind: 'coin', nearEdgeRad: expect.any(Number) });
});

test('it does not follow from an object whose size was only assumed, nor for a coin that is decided', () => {
  const assumed = cardWith({ kind: 'markers', markers: 4, points: 16, sizeAssumed: true });
  expect(sideFromOthers(undecided, [assumed], picture)).toBeNull();
  const known = cardWith({ kind: 'markers', markers: 4, points: 16, sizeAssumed: false });
  expect(sideFromOthers({ ...undecided, nearEdgeRad: 1 }, [known], picture)).toBeNull();
});
