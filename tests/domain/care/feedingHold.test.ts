import { describe, expect, test } from 'vitest';
import { type FeedingHold, feedingHold, wasNeverLookedAt } from '../../../src/domain/care/feedingHold.ts';
import { CAUTIOUS_FEEDING_TABLE } from '../../../src/domain/care/feedingTable.ts';
import { lastMoltOf } from '../../../src/domain/care/lastMolt.ts';
import type { Seen } from '../../../src/domain/care/observation.ts';
import { type SpanNow, spanFromAnimal, spanFromSkins } from '../../../src/domain/care/spanNow.ts';
import { CARAPACE } from '../../../src/domain/growth/belief/foretoldSize.ts';
import type { GrowthBelief } from '../../../src/domain/growth/belief/growthBelief.ts';
import { type GroundOfSize, spanNow } from '../../../src/domain/growth/sizeNow.ts';
import { beliefOn } from '../../support/believedGrowth.ts';
import { lengthsOf, stepsOf } from '../growth/trend/sizes.ts';
import { molt, seen } from './seen.ts';

const FREE = seen('free-of-skin', '2026-01-31T23:30', '+01:00');

function hold(span: SpanNow | null, today: string, observations: readonly Seen[] = [], ended: Seen = FREE): FeedingHold {
  const all = [ended, ...observations];
  const lastMolt = lastMoltOf(all, []);
  if (!lastMolt) throw new Error('Expected a molt');
  return feedingHold({ lastMolt, span, observations: all, table: CAUTIOUS_FEEDING_TABLE, today });
}

const black = seen('fangs-black', '2026-02-10T08:00');
const exactly = (spanMm: number) => spanFromAnimal({ spanMm, plusMinusMm: 0 });

describe('the hold after a molt', () => {
  test('ends by both, the date and the fangs; the day is that of the keeper, not of UTC', () => {
    // 23:30 UTC is half past midnight of 1 February an hour further east.
    expect(hold(exactly(120), '2026-02-12')).toMatchObject({ moltedOn: '2026-02-01', until: '2026-03-01', missing: ['date', 'fangs'] });
    expect(hold(exactly(120), '2026-02-28', [black]).missing).toEqual(['date']);
    expect(hold(exactly(120), '2026-03-01', [black])).toMatchObject({ missing: [] });
    expect(hold(exactly(120), '2026-03-01').missing).toEqual(['fangs']);
  });

  test('one month from 31 January ends on the last of February', () => {
    const ended = seen('free-of-skin', '2026-01-31T12:00');
    expect(hold(exactly(101.6), '2026-02-27', [black], ended)).toMatchObject({ until: '2026-02-28', missing: ['date'] });
    expect(hold(exactly(101.6), '2026-02-28', [black], ended).missing).toEqual([]);
  });

  test('red-brown fangs do not end it', () => {
    const brown = seen('fangs-red-brown', '2026-02-05T08:00');
    expect(hold(exactly(20), '2026-02-20', [brown])).toMatchObject({ fangs: { color: 'fangs-red-brown' }, missing: ['fangs'] });
  });

  test('black fangs from before the molt say nothing about the new ones', () => {
    expect(hold(exactly(20), '2026-02-20', [seen('fangs-black', '2026-01-20T08:00')])).toMatchObject({ fangs: null, missing: ['fangs'] });
  });

  test('an interval that straddles a limit takes the longer wait', () => {
    const straddling = hold(spanFromAnimal({ spanMm: 50, plusMinusMm: 3 }), '2026-02-03');
    expect(straddling).toMatchObject({ wait: { count: 21, unit: 'days' }, straddles: true });
    expect(hold(spanFromAnimal({ spanMm: 50, plusMinusMm: 0.8 }), '2026-02-03')).toMatchObject({ wait: { count: 7 }, straddles: false });
  });

  test('of 30 days and a month of 28, the longer one is the one that ends later', () => {
    const table = [
      { fromMm: 0, fromIncluded: true, wait: { count: 30, unit: 'days' as const } },
      { fromMm: 50, fromIncluded: true, wait: { count: 1, unit: 'months' as const } },
    ];
    const observations = [seen('free-of-skin', '2026-02-01T12:00')];
    const lastMolt = lastMoltOf(observations, []);
    const span = spanFromAnimal({ spanMm: 50, plusMinusMm: 5 });
    const held = lastMolt && feedingHold({ lastMolt, span, observations, table, today: '2026-02-02' });
    expect(held).toMatchObject({ wait: { count: 30, unit: 'days' }, until: '2026-03-03' });
  });

  test('an animal without any size waits as the longest row', () => {
    expect(hold(null, '2026-02-12')).toMatchObject({ span: null, straddles: false, wait: { count: 1, unit: 'months' } });
  });

  test('a meal shortens no wait, and stands for black fangs only when that was over, and where nobody noted lighter ones', () => {
    const meal = seen('ate', '2026-02-03T08:00');
    expect(hold(exactly(20), '2026-02-04', [meal])).toMatchObject({ missing: ['date', 'fangs'], ateOn: '2026-02-03' });
    expect(hold(exactly(20), '2026-02-05', [meal])).toMatchObject({ missing: ['fangs'], ateOn: '2026-02-03' });
    expect(hold(exactly(20), '2026-02-05', [seen('ate', '2026-02-05T08:00')])).toMatchObject({ missing: [], ateOn: '2026-02-05' });
    for (const color of ['fangs-white', 'fangs-red-brown'] as const) {
      const lighter = [seen(color, '2026-02-02T08:00'), meal];
      expect(hold(exactly(20), '2026-06-01', lighter)).toMatchObject({ missing: ['fangs'], ateOn: '2026-02-03' });
      expect(hold(exactly(20), '2026-06-01', [...lighter, black]).missing).toEqual([]);
    }
  });

  test.each([
    ['minutes', '2026-01-31T23:50', ['fangs']],
    ['a minute less than a day', '2026-02-01T23:29', ['fangs']],
    ['a day', '2026-02-01T23:30', []],
  ])(
    'black fangs %s after a watched end count by the minute: within a day they are a slip; prey so early says nothing',
    (_, at, missing) => {
      expect(hold(exactly(20), '2026-02-05', [seen('ate', at)])).toMatchObject({ missing: ['fangs'], ateOn: expect.any(String) });
      expect(hold(exactly(20), '2026-02-05', [seen('fangs-black', at)]).missing).toEqual(missing);
    },
  );

  test('of two notes of fangs that contradict each other the last counts, so that an animal is never fed by the earlier one', () => {
    const turned = [seen('fangs-black', '2026-02-04T08:00'), seen('fangs-red-brown', '2026-02-05T08:00')];
    expect(hold(exactly(20), '2026-02-20', turned)).toMatchObject({ missing: ['fangs'], fangs: { color: 'fangs-red-brown' } });
  });

  test('fangs nobody ever looked at hold an animal for twelve weeks, lighter ones until they are black', () => {
    const neverLookedAt = (today: string, observations: readonly Seen[] = []) =>
      wasNeverLookedAt(hold(exactly(20), today, observations), today);
    expect([neverLookedAt('2026-04-25'), neverLookedAt('2026-04-26')]).toEqual([false, true]);
    expect(neverLookedAt('2026-04-26', [seen('fangs-white', '2026-02-02T08:00')])).toBe(false);
    expect(neverLookedAt('2026-04-26', [seen('ate', '2026-02-20T08:00')])).toBe(false);
  });

  test('prey and black fangs on the day of a molt known by its day were before it; white fangs were after', () => {
    const observations = [
      seen('ate', '2026-02-01T06:00'),
      seen('fangs-black', '2026-02-01T06:00'),
      seen('fangs-white', '2026-02-01T18:00'),
    ];
    const lastMolt = lastMoltOf(observations, [molt('m1', '2026-02-01')]);
    if (!lastMolt) throw new Error('Expected a molt');
    const of = (part: readonly Seen[]) =>
      feedingHold({ lastMolt, span: exactly(20), observations: part, table: CAUTIOUS_FEEDING_TABLE, today: '2026-02-03' });
    expect(of(observations)).toMatchObject({ missing: ['date', 'fangs'], ateOn: null, fangs: { color: 'fangs-white' } });
    expect(of([seen('ate', '2026-02-02T06:00')])).toMatchObject({ missing: ['date', 'fangs'], ateOn: '2026-02-02' });
  });

  test('a molt known only as a span of days counts from its last', () => {
    const lastMolt = lastMoltOf([], [molt('m1', '2026-03-01', '2026-03-04')]);
    expect(lastMolt).toMatchObject({ on: '2026-03-04', moltId: 'm1' });
  });

  test('a watched molt that is put on record later stays one molt', () => {
    const night = seen('free-of-skin', '2026-03-02T22:30');
    expect(lastMoltOf([night], [molt('m1', '2026-03-03')])).toMatchObject({ on: '2026-03-02', moltId: 'm1' });
    expect(lastMoltOf([night], [molt('m1', '2025-09-03')])).toMatchObject({ on: '2026-03-02', moltId: null });
    expect(lastMoltOf([night], [molt('m2', '2026-06-01')])).toMatchObject({ on: '2026-06-01', moltId: 'm2', run: null });
  });
});

describe('the new span', () => {
  const once = { fewest: 1, most: 1 };
  const { growth } = beliefOn([]);
  const behind = (lengthMm: number, uncertaintyMm: number, moltsSince = once) => ({
    moltId: 'm1',
    lengthMm,
    uncertaintyMm,
    instar: 6,
    moltsSince,
  });
  const ground = (part: Partial<GroundOfSize> = {}): GroundOfSize => ({ growth, carapace: null, span: null, spanPower: CARAPACE, ...part });

  test('is the span the Ladder foretells', () => {
    const onSkin = ground({ span: behind(80, 12), carapace: behind(15, 0.1) });
    const now = spanNow(onSkin);
    expect(spanFromSkins(onSkin, 'unsexed')).toMatchObject({
      spanMm: now?.middleMm,
      lowMm: now?.low90Mm,
      highMm: now?.high90Mm,
      from: { kind: 'skin', measured: 'leg-span', lengthMm: 80, moltsSince: once, grownBy: 'any-tarantula' },
    });
  });

  test('from a carapace alone is rough, and rougher where the sex is open', () => {
    const carapace = ground({ carapace: behind(15, 0.1) });
    const female = spanFromSkins(carapace, 'female');
    const unsexed = spanFromSkins(carapace, 'unsexed');
    expect(female?.from).toMatchObject({ kind: 'skin', measured: 'carapace-length', lengthMm: 15 });
    expect(unsexed?.highMm).toBeGreaterThan(female?.highMm ?? Number.POSITIVE_INFINITY);
    // Means of described specimens of Aphonopelma madera, leg I + IV over carapace: 5.544 in females (Hamilton et al. 2016, ZooKeys 560, doi:10.3897/zookeys.560.6264).
    expect(female && female.lowMm < 15 * 5.544 * 1.3 && 15 * 5.544 * 1.3 < female.highMm).toBe(true);
  });

  test('from a carapace counts the body between the legs, up to one more length of it', () => {
    const grown = (sex: 'female' | 'male') => {
      const carapace = spanFromSkins(ground({ carapace: behind(14, 0.1) }), sex);
      const same = spanFromSkins(ground({ span: behind(14, 0.1) }), sex);
      return (carapace?.highMm ?? 0) / (same?.highMm ?? 1);
    };
    // Legs alone are up to 5.6 carapace lengths in females and 7.5 in males (see the domain's source).
    expect([grown('female'), grown('male')]).toEqual([expect.closeTo(6.6, 10), expect.closeTo(8.5, 10)]);
  });

  test('is not told by skins without sizes', () => {
    expect(spanFromSkins(ground(), 'male')).toBeNull();
  });

  test('says whose growth it rests on for the most part', () => {
    const row = stepsOf(lengthsOf(2, [1.25, 1.25, 1.25, 1.25, 1.25, 1.25]));
    const grownBy = (belief: GrowthBelief) => {
      const from = spanFromSkins(ground({ growth: belief.growth, span: behind(80, 12) }), 'female')?.from;
      return from?.kind === 'skin' && from.grownBy;
    };
    expect(grownBy(beliefOn([]))).toBe('any-tarantula');
    expect(grownBy(beliefOn([], { kin: [row, row, row, row] }))).toBe('kin');
    expect(grownBy(beliefOn(row))).toBe('own-skins');
  });
});
