import type { ReactElement } from 'react';
import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, it } from 'vitest';
import { Router } from 'wouter';
import type { DueForecast } from '../../../../src/domain/growth/forecast/dueForecast.ts';
import type { GrowthForecast } from '../../../../src/domain/growth/forecast/forecast.ts';
import { buildLadder } from '../../../../src/domain/growth/ladder.ts';
import { measuredSteps } from '../../../../src/domain/growth/measuredStep.ts';
import { bandsOf } from '../../../../src/domain/growth/trend/bands.ts';
import { DatePlot } from '../../../../src/renderer/pages/ladder/chart/DatePlot.tsx';
import { InstarPlot } from '../../../../src/renderer/pages/ladder/chart/InstarPlot.tsx';
import { instarLegend, intervalLegend } from '../../../../src/renderer/pages/ladder/chart/legends.ts';
import { livingNowOf, runningInterval } from '../../../../src/renderer/pages/ladder/chart/livingNow.ts';
import { type Measure, pointsOf } from '../../../../src/renderer/pages/ladder/chart/measures.ts';
import { moltOn } from '../../../domain/growth/skins.ts';

const SHARES = { own: 1, siblings: 0, species: 0, genus: 0, family: 0, prior: 0 };
const size = (middleMm: number) => ({
  middleMm,
  low50Mm: middleMm * 0.95,
  high50Mm: middleMm * 1.05,
  low90Mm: middleMm * 0.9,
  high90Mm: middleMm * 1.1,
});
const DUE: DueForecast = {
  since: { kind: 'molt', moltId: 'molt-2024-07-01', from: '2024-07-01', to: '2024-07-01' },
  middle: '2024-10-01',
  window50: { from: '2024-09-15', to: '2024-10-15' },
  window90: { from: '2024-09-01', to: '2024-11-01' },
  chanceOfLasting: 0.6,
  ownIntervals: 3,
  shares: SHARES,
};
const FORECAST: GrowthForecast = {
  model: 1,
  madeOn: '2024-08-01',
  due: DUE,
  size: { nextSkin: size(10), afterMolt: size(12.5), ownRatios: 3, shares: SHARES },
  facts: [],
};
const LADDER = buildLadder([
  moltOn('2024-01-01', 5, 4.1),
  moltOn('2024-03-01', 6, 5.1),
  moltOn('2024-05-01', 7, 6.4),
  moltOn('2024-07-01', 8, 8),
]);
const LIVING = livingNowOf('2024-08-01', { number: 9, certainty: 'known' }, FORECAST);

function drawing(plot: ReactElement): string {
  return renderToStaticMarkup(<Router ssrPath="/">{plot}</Router>);
}

function byInstar(living: typeof LIVING | null, measure: Measure = 'carapaceLengthMm'): string {
  const points = pointsOf(LADDER, measure, []);
  const bands = bandsOf(measuredSteps(LADDER.rungs));
  return drawing(
    <InstarPlot
      rungs={LADDER.rungs}
      points={points}
      live={[]}
      bands={bands}
      living={living}
      widthPx={600}
      measure={measure}
      measureLabel=""
    />,
  );
}

describe('the instar living now in the charts', () => {
  it('stands after the last skin by its number, with what the forecast tells of its skin', () => {
    expect(byInstar(LIVING)).toMatch(/>9<.*>living now</);
    const legend = instarLegend({
      ...{ rungs: LADDER.rungs, measure: 'carapaceLengthMm', living: LIVING, bands: null, live: [], unplaced: 0, unusable: 0 },
      points: pointsOf(LADDER, 'carapaceLengthMm', []),
    });
    expect(legend).toContain('its skin, the next one: 9.0 to 11.0 mm with nine chances in ten');
  });

  it('has no place where no size is foretold', () => {
    expect(byInstar(livingNowOf('2024-08-01', { number: 9, certainty: 'known' }, null))).not.toContain('living now');
    expect(byInstar(null)).not.toContain('living now');
  });

  it('runs up to today by date, with the days on which its end is foretold', () => {
    const points = pointsOf(LADDER, 'carapaceLengthMm', []);
    const drawn = (living: typeof LIVING | null, today: string | null = living?.today ?? null) =>
      drawing(
        <DatePlot
          rungs={LADDER.rungs}
          points={points}
          live={[]}
          today={today}
          living={living}
          widthPx={600}
          measure="carapaceLengthMm"
          measureLabel=""
        />,
      );
    expect(drawn(LIVING)).toContain('>today<');
    expect(drawn(LIVING).match(/<rect/g)).toHaveLength(3);
    expect(drawn(null)).not.toContain('>today<');
    // Of an animal whose molt is under way nothing is foretold, and time goes on all the same.
    expect(drawn(null, '2024-12-31')).toContain('>today<');
    expect(drawn(null, '2024-12-31')).not.toContain('<rect');
  });

  it('counts the days it has lasted, and those at which the forecast has its end', () => {
    const last = LADDER.rungs.at(-1);
    if (!last) throw new Error('four molts are on record');
    const interval = runningInterval(last, LIVING);
    expect(interval).toEqual({ waited: { from: 31, to: 31 }, foretold: { low90: 62, low50: 76, middle: 92, high50: 106, high90: 123 } });
    if (!interval) throw new Error('days have gone by');
    const words = intervalLegend([], { living: LIVING, interval });
    expect(words).toMatch(/has lasted 31 days so far and has not ended.*1 Sep to 1 Nov 2024, nine chances in ten/);
    expect(runningInterval(last, { ...LIVING, today: '2024-07-01' })).toBeNull();
    expect(runningInterval({ ...last, presumed: true }, LIVING)).toBeNull();
  });
});
