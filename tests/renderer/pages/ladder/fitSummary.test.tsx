import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, it } from 'vitest';
import { buildLadder } from '../../../../src/domain/growth/ladder.ts';
import type { Measure } from '../../../../src/renderer/pages/ladder/chart/measures.ts';
import { FitSummary } from '../../../../src/renderer/pages/ladder/FitSummary.tsx';
import { moltOn, quantity, skinReading } from '../../../domain/growth/skins.ts';

/** A carapace that grows by 1.3 and a leg that grows by 1.5 with each molt. */
const LADDER = buildLadder(
  [0, 1, 2].map((step) => ({
    ...moltOn(`2024-0${step + 1}-01`, 5 + step, null),
    readings: [
      skinReading(`photo-2024-0${step + 1}-01`, [
        quantity('carapace-length', 10 * 1.3 ** step, 0.1),
        quantity('leg-L1', 30 * 1.5 ** step, 0.1),
        ...(step === 0 ? [] : [quantity('carapace-width', 9 * 1.3 ** step, 0.1)]),
      ]),
    ],
  })),
);

function wordsOf(measure: Measure): string {
  return renderToStaticMarkup(<FitSummary ladder={LADDER} caution={null} measure={measure} />)
    .replace(/<[^>]+>/g, '')
    .replace(/\s+/g, ' ');
}

describe('the growth in words', () => {
  it('speaks of the skins on record, not of every molt', () => {
    expect(wordsOf('carapaceLengthMm')).toContain('Over these 3 skins, a molt made the carapace on average 1.30 times as long');
  });

  it('speaks of the measure that is shown', () => {
    expect(wordsOf('legFirstMm')).toContain('a molt made leg I on average 1.50 times as long');
  });

  it('tells no ratio where the skins follow none: an interval that reaches from nothing to thousands is no figure', () => {
    const odd = buildLadder([5.2, 5.3, 44.9].map((lengthMm, index) => moltOn(`2024-0${index + 1}-01`, 5 + index, lengthMm)));
    const words = renderToStaticMarkup(<FitSummary ladder={odd} caution={null} measure="carapaceLengthMm" />).replace(/<[^>]+>/g, '');
    expect(words).toContain('These 3 skins tell no common growth ratio');
    expect(words).not.toContain('95 %');
  });

  it('says of which measure too little is known', () => {
    expect(wordsOf('carapaceWidthMm')).toContain('the carapace is measured on 2 skins so far');
  });
});
