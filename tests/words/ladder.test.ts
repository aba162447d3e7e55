import { describe, expect, it } from 'vitest';
import { fitGrowth } from '../../src/domain/growth/growthFit.ts';
import { buildLadder, type MoltOnRecord } from '../../src/domain/growth/ladder.ts';
import { measuredSteps } from '../../src/domain/growth/measuredStep.ts';
import { fitWeighted } from '../../src/domain/growth/trend/weightedFit.ts';
import {
  daysSinceInWords,
  fitInWords,
  gapInWords,
  missingSizeInWords,
  noRatioInWords,
  pastInWords,
  rungMark,
  rungName,
  unmeasuredInWords,
} from '../../src/words/ladder.ts';
import { moltOn } from '../domain/growth/skins.ts';

function rungsOf(...molts: MoltOnRecord[]) {
  const { rungs } = buildLadder(molts);
  return rungs.map((rung, index) => ({ rung, previous: rungs[index - 1] }));
}

function lastOf(...molts: MoltOnRecord[]) {
  const last = rungsOf(...molts).at(-1);
  if (!last) throw new Error('expected a rung');
  return last;
}

describe('names of rungs', () => {
  it('uses the instar where it is known, else the place among the molts', () => {
    const [known, unknown] = rungsOf(moltOn('2024-01-01', 5, 4), moltOn('2024-06-01', null, 5));
    expect(known && rungName(known.rung)).toBe('Instar 5');
    expect(unknown && rungName(unknown.rung)).toBe('Instar 6 if no molt was missed');
    expect(unknown && rungMark(unknown.rung)).toBe('6?');
    const [, nameless] = rungsOf(moltOn('2024-01-01', null, 4), moltOn('2024-06-01', null, 5));
    expect(nameless && rungName(nameless.rung)).toBe('Molt 2 on record');
    expect(nameless && rungMark(nameless.rung)).toBe('molt 2');
  });
});

describe('gaps in words', () => {
  it.each([
    [6, null],
    [7, 'Instar 6 has no molt on record.'],
    [8, 'Instars 6 and 7 have no molt on record.'],
    [9, 'Instars 6 to 8 have no molt on record.'],
  ])('after instar 5 comes %i: %s', (instar, words) => {
    const { rung, previous } = lastOf(moltOn('2024-01-01', 5, 4), moltOn('2024-06-01', instar, 6));
    expect(gapInWords(rung, previous)).toBe(words);
  });

  it('says it of the instars between the acquisition and the first molt on record', () => {
    const { rungs } = buildLadder([moltOn('2024-06-01', 9, 6)], { acquiredOn: '2024-01-01', acquiredInstar: 7 });
    const [first] = rungs;
    expect(first && gapInWords(first, undefined)).toBe('Instars 7 and 8 have no molt on record.');
  });

  it('names no instar where it is open which one is missing', () => {
    const { rung, previous } = lastOf(moltOn('2024-01-01', 5, 4), moltOn('2024-03-01', null, 5), moltOn('2024-06-01', 8, 7));
    expect(gapInWords(rung, previous)).toContain('1 instar before this one has no molt on record');
    expect(gapInWords(rung, previous)).toContain('not known');
  });
});

describe('what is missing, in words', () => {
  it('says why there is no ratio', () => {
    const reasons = rungsOf(
      moltOn('2024-01-01', 5, 4),
      moltOn('2024-03-01', 6, null),
      moltOn('2024-06-01', 7, 6),
      moltOn('2024-09-01', 9, 9),
    ).map(({ rung, previous }) => noRatioInWords(rung, previous));
    expect(reasons).toEqual(['first on record', 'not both measured', 'not both measured', 'gap before it']);
  });

  it('says why there is no size', () => {
    const base = moltOn('2024-01-01', 5, null);
    const words = (record: MoltOnRecord) => unmeasuredInWords(lastOf(record).rung);
    expect(words(base)).toBe('not measured yet');
    expect(words({ ...base, photos: [] })).toBe('skin not photographed yet');
    expect(words({ ...base, exuvia: null, photos: [] })).toBe('nothing on record about the skin');
    expect(words({ ...base, exuvia: { id: 'skin-2024-01-01', recovered: false }, photos: [] })).toBe('skin not recovered');
  });
});

describe('days since the molt before, in words', () => {
  it('say when they hold more than one instar', () => {
    const { rung, previous } = lastOf(moltOn('2024-01-01', 7, 4), moltOn('2025-04-26', 9, 6));
    expect(daysSinceInWords(rung, previous)).toBe('481 days in 2 instars');
    const next = lastOf(moltOn('2024-01-01', 7, 4), moltOn('2024-04-10', 8, 6));
    expect(daysSinceInWords(next.rung, next.previous)).toBe('100 days');
    const open = lastOf(moltOn('2024-01-01', 5, 4), moltOn('2024-03-01', null, 5), moltOn('2024-03-11', 8, 7));
    expect(daysSinceInWords(open.rung, open.previous)).toBe('10 days, perhaps across a gap');
  });
});

describe('a place in the row without a point', () => {
  it('says which size is not there where the skin has others, else why it has none', () => {
    expect(missingSizeInWords(lastOf(moltOn('2024-01-01', 5, 4)).rung, 'legFirstMm')).toBe('leg I not measured');
    expect(missingSizeInWords(lastOf(moltOn('2024-01-01', 5, null)).rung, 'legFirstMm')).toBe('not measured yet');
    expect(missingSizeInWords(undefined, 'legFirstMm')).toBe('no molt on record');
    expect(missingSizeInWords(lastOf(moltOn('2024-01-01', 5, 4, 1.2)).rung, 'carapaceLengthMm')).toBe('no usable length');
  });
});

describe('fitInWords', () => {
  it('tells ratio, interval and what it rests on', () => {
    // Female Centruroides gracilis, instars 2 to 7 (Francke OF, Jones SK 1982, J. Arachnol. 10:223-239): exp(b) 1.2989, R2 0.99687.
    const lengths = [2.25, 2.96, 3.93, 5.21, 6.65, 8.16];
    const { rungs } = buildLadder(lengths.map((length, index) => moltOn(`2024-0${index + 1}-01`, index + 2, length)));
    const [fit, classical] = [fitWeighted(measuredSteps(rungs)), fitGrowth(measuredSteps(rungs))];
    if (!fit || !classical) throw new Error('expected a fit');
    const words = fitInWords(fit, classical);
    expect(words.ratio).toBe('1.29');
    expect(words.explanation).toContain('exp(b), ln L = a + b n by least squares (L the length, n the instar), is 1.30,');
    expect(words.interval).toMatch(/^1\.2\d to 1\.3\d$/);
    expect(words.explanation).toContain('6 measured skins');
    expect(words.explanation).toContain('0.997');
  });
});

describe('pastInWords', () => {
  it('says that a living animal is one instar further than its last skin', () => {
    expect(pastInWords('Juniper', { number: 10, certainty: 'known' })).toContain('Juniper is already in instar 10, and larger');
    expect(pastInWords('Juniper', { number: 10, certainty: 'inferred' })).toContain('in instar 10 if no molt was missed, and larger');
    expect(pastInWords('Juniper', null)).toContain('one instar further');
    expect(pastInWords('Juniper', undefined)).toBe('Each skin shows the instar that ended with its molt.');
  });
});
