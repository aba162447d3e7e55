import { expect, test } from 'vitest';
import type { TwoPointScale } from '../../../../src/domain/measuring/calibration.ts';
import { estimateFrom } from '../../../../src/domain/measuring/quantity.ts';
import { cautionsOf, type LengthBy } from '../../../../src/renderer/pages/bench/lengths/lengthBy.ts';
import { uprightCard } from '../../../support/uprightCard.ts';

const card = uprightCard(100, 100);
const distance: TwoPointScale = {
  kind: 'two-points',
  ends: [
    { xPx: 100, yPx: 100 },
    { xPx: 900, yPx: 100 },
  ],
  distanceMm: 95,
  distanceStandardUncertaintyMm: 0.1,
  pointingPx: 1,
  heightMm: 0,
};
const contradiction = { itselfMm: 95, byOtherMm: 85.6, expandedUncertaintyMm: 0.4 };
const lengthBy: LengthBy = {
  name: 'Carapace length',
  of: (marks) => (marks.kind === 'two-points' ? estimateFrom(19, 0.1) : estimateFrom(17.12, 0.04)),
};

test('a copied reading says that its scale is contradicted, and what both objects make of its first length', () => {
  const [caution] = cautionsOf([{ one: card, other: distance, contradiction, areOfOneCard: false }], lengthBy);
  expect(caution).toMatch(/^CAUTION: two objects in this picture contradict each other\. By “A bank-size card.*would be 85\.60 mm/);
  expect(caution).toMatch(/Carapace length: by “A bank-size card.*” 17\.120 ± 0\.080 mm, by “A rule.*” 19\.00 ± 0\.20 mm\.$/);
  expect(cautionsOf([], lengthBy)).toEqual([]);
});

test('handles beside the edges of their own card are called that, and no length is told where one object gives none', () => {
  const displaced = { one: card, other: uprightCard(104, 100), contradiction, areOfOneCard: true };
  expect(cautionsOf([displaced], lengthBy)).toEqual([
    'CAUTION: the handles do not lie on the edges of the card. Carapace length: by the handles 17.120 ± 0.080 mm, by the edges 17.120 ± 0.080 mm.',
  ]);
  expect(cautionsOf([displaced], { ...lengthBy, of: () => null })).toEqual(['CAUTION: the handles do not lie on the edges of the card.']);
});
