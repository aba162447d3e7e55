import { describe, expect, it } from 'vitest';
import type { GrowthForecast } from '../../src/domain/growth/forecast/forecast.ts';
import { coverageInWords, dueInWords, forecastInWords, matureMaleInWords } from '../../src/words/forecast.ts';

const SHARES = { own: 0.6, siblings: 0.4, species: 0, genus: 0, family: 0, prior: 0.001 };
const SIZE = { middleMm: 19.6, low50Mm: 19, high50Mm: 20.2, low90Mm: 18.2, high90Mm: 21 };

const FORECAST: GrowthForecast = {
  model: 1,
  madeOn: '2026-01-01',
  due: {
    since: { kind: 'molt', moltId: 'm', from: '2025-05-01', to: '2025-05-01' },
    middle: '2026-03-20',
    window50: { from: '2026-03-01', to: '2026-04-10' },
    window90: { from: '2026-02-12', to: '2026-05-09' },
    chanceOfLasting: 0.6,
    ownIntervals: 5,
    shares: SHARES,
  },
  size: { nextSkin: SIZE, afterMolt: SIZE, ownRatios: 4, shares: SHARES },
  facts: [],
};

describe('matureMaleInWords', () => {
  it('says why nothing is foretold', () => {
    expect(matureMaleInWords('palpal-bulbs')).toBe(
      'No next molt is foretold: a mature male seldom molts again, and he was seen with palpal bulbs.',
    );
  });
});

describe('forecastInWords', () => {
  it('tells day and size in one sentence, and what they rest on', () => {
    const words = forecastInWords(FORECAST, null);
    expect(words.headline).toBe('Next molt: likely 12 Feb to 9 May 2026; carapace then 18.2 to 21.0 mm.');
    expect(words.why).toContain('the day from 5 intervals of its own (its own 60 %, siblings 40 %)');
  });

  it('says that the change from instar to instar is not its own where only the level is', () => {
    const { due, size } = FORECAST;
    const withTrends = (days: number, ratios: number) =>
      forecastInWords({ ...FORECAST, due: due && { ...due, ownTrend: days }, size: size && { ...size, ownTrend: ratios } }, null).why;
    expect(withTrends(0.1, 0.9)).toContain('How intervals lengthen from instar to instar rests mostly on others');
    expect(withTrends(0.1, 0.1)).toContain('How intervals lengthen from instar to instar and how ratios fall rest mostly on others');
    expect(withTrends(0.9, 0.9)).not.toContain('mostly on others');
  });

  it('does not say twice that a number holds if no molt was missed', () => {
    expect(forecastInWords(FORECAST, { number: 11, certainty: 'inferred' }).skin).toMatch(
      /^The skin it leaves then shows the instar living now: /,
    );
  });

  it('names what is assumed of all tarantulas among what a forecast rests on', () => {
    const shares = { ...SHARES, own: 0, siblings: 0, prior: 1 };
    const { due, size } = FORECAST;
    const words = forecastInWords(
      { ...FORECAST, due: due && { ...due, ownIntervals: 0, shares }, size: size && { ...size, shares } },
      null,
    );
    expect(words.why).toContain('the day from no interval of its own (what is assumed of all tarantulas 100 %)');
  });

  it('says so where no day can be told', () => {
    const words = forecastInWords({ ...FORECAST, due: null, size: null, facts: ['nothing-to-count-from'] }, null);
    expect(words.headline).toBe('No day can be foretold.');
    expect(words.closer).toBeNull();
    expect(words.missing[0]).toMatch(/no day to count from/);
  });

  it('keeps the skin that the molt leaves apart from the animal after it', () => {
    const size = FORECAST.size && { ...FORECAST.size, nextSkin: { ...SIZE, low90Mm: 15.1, high90Mm: 16.9 } };
    expect(forecastInWords({ ...FORECAST, size }, { number: 11, certainty: 'known' }).skin).toBe(
      'The skin it leaves then shows instar 11, the one living now: 15.1 to 16.9 mm; the animal itself is then in instar 12.',
    );
    expect(forecastInWords({ ...FORECAST, size }, null).skin).toMatch(/shows the instar living now: .* one instar further/);
    expect(forecastInWords({ ...FORECAST, size: null }, null).skin).toBeNull();
  });

  it('calls an animal overdue', () => {
    expect(forecastInWords({ ...FORECAST, facts: ['overdue'] }, null).headline).toMatch(
      /^Next molt: overdue; if it still comes, likely 12 Feb/,
    );
  });
});

describe('an animal that has waited too long', () => {
  it('is told no day, neither on its page nor in a list', () => {
    const due = FORECAST.due && { ...FORECAST.due, chanceOfLasting: 0.001 };
    const words = forecastInWords({ ...FORECAST, due, facts: ['overdue'] }, null);
    expect(words.headline).toBe('It has waited for its next molt too long to foretell a day; carapace then 18.2 to 21.0 mm, if it comes.');
    expect(words.closer).toBeNull();
    expect(due && dueInWords(due)).toBe('no day can be told');
    expect(FORECAST.due && dueInWords(FORECAST.due)).toBe('12 Feb to 9 May 2026');
  });
});

describe('coverageInWords', () => {
  it('sets what came within the windows beside what should have', () => {
    expect(
      coverageInWords({
        due: { scored: 20, within50: 11, within90: 18 },
        size: { scored: 0, within50: 0, within90: 0 },
        overrun: 0,
        open: 1,
      }),
    ).toEqual([
      'Of 20 foretold days, 18 came within the wide window (right if about 18) and 11 within the narrow one (about 10).',
      '1 molt dated as a span could not be judged.',
    ]);
  });

  it('has words for nothing to judge', () => {
    const none = { scored: 0, within50: 0, within90: 0 };
    expect(coverageInWords({ due: none, size: none, overrun: 0, open: 0 })).toEqual([
      expect.stringMatching(/^No forecast can be judged yet/),
    ]);
  });
});
