import { describe, expect, test } from 'vitest';
import { CAUTIOUS_FEEDING_TABLE, FeedingTable, rowsFor, tooShortRows, waitEnds } from '../../../src/domain/care/feedingTable.ts';
import { differenceOf } from '../../../src/domain/care/tableDifference.ts';
import { addMonths } from '../../../src/domain/dates.ts';
import { mmFromInches } from '../../../src/domain/units.ts';

const HAIR_MM = 1e-9;

/** The wait by the cautious table, as "4 days". */
function waitOf(spanMm: number): string {
  const rows = rowsFor(CAUTIOUS_FEEDING_TABLE, spanMm, spanMm);
  expect(rows).toHaveLength(1);
  return `${rows[0]?.wait.count} ${rows[0]?.wait.unit}`;
}

describe('the cautious table', () => {
  // Over 2 in three weeks, 4 in and more a month: common practice, no source. The rows below: judgment.
  test.each([
    ['under 1 in', mmFromInches(1) - HAIR_MM, '4 days'],
    ['exactly 1 in', mmFromInches(1), '7 days'],
    ['exactly 2 in', mmFromInches(2), '7 days'],
    ['a hair over 2 in', mmFromInches(2) + HAIR_MM, '21 days'],
    ['a hair under 4 in', mmFromInches(4) - HAIR_MM, '21 days'],
    ['exactly 4 in', mmFromInches(4), '1 months'],
    ['8 in', mmFromInches(8), '1 months'],
  ])('%s', (_, spanMm, wait) => expect(waitOf(spanMm)).toBe(wait));

  test('its limits in millimeters are those of the inch of exactly 25.4 mm (international yard and pound agreement, 1959)', () => {
    expect(CAUTIOUS_FEEDING_TABLE.map(({ fromMm }) => fromMm)).toEqual([0, 25.4, 50.8, 101.6]);
  });

  test('an interval takes every row it touches', () => {
    expect(rowsFor(CAUTIOUS_FEEDING_TABLE, 45, 60).map(({ wait }) => wait.count)).toEqual([7, 21]);
    expect(rowsFor(CAUTIOUS_FEEDING_TABLE, 45, 50.8).map(({ wait }) => wait.count)).toEqual([7]);
    expect(rowsFor(CAUTIOUS_FEEDING_TABLE, 45, 101.6).map(({ wait }) => wait)).toEqual(
      CAUTIOUS_FEEDING_TABLE.slice(1).map(({ wait }) => wait),
    );
  });
});

describe('one calendar month', () => {
  // Days of the Gregorian calendar (ISO 8601-1).
  test.each([
    ['2026-01-31', '2026-02-28'],
    ['2028-01-31', '2028-02-29'],
    ['2100-01-31', '2100-02-28'],
    ['2000-01-31', '2000-02-29'],
    ['2026-03-31', '2026-04-30'],
    ['2026-02-28', '2026-03-28'],
    ['2026-12-31', '2027-01-31'],
    ['2026-11-15', '2026-12-15'],
  ])('from %s ends on %s', (from, to) => expect(waitEnds(from, { count: 1, unit: 'months' })).toBe(to));

  test('two months from the end of December meet February', () => expect(addMonths('2026-12-31', 2)).toBe('2027-02-28'));
  test('21 days pass over the end of a leap February', () => {
    expect(waitEnds('2028-02-20', { count: 21, unit: 'days' })).toBe('2028-03-12');
  });
});

describe("the keeper's own table", () => {
  test.each([
    ['begins above 0 mm', [{ fromMm: 10, fromIncluded: true, wait: { count: 4, unit: 'days' } }]],
    ['has no row', []],
    [
      'goes back',
      [
        { fromMm: 0, fromIncluded: true, wait: { count: 4, unit: 'days' } },
        { fromMm: 50, fromIncluded: true, wait: { count: 7, unit: 'days' } },
        { fromMm: 50, fromIncluded: false, wait: { count: 9, unit: 'days' } },
      ],
    ],
  ])('is refused when it %s', (_, rows) => expect(FeedingTable.safeParse(rows).success).toBe(false));

  test('differs from the cautious one where its waits or limits do, and nowhere else', () => {
    const own: FeedingTable = [
      { fromMm: 0, fromIncluded: true, wait: { count: 4, unit: 'days' } },
      { fromMm: 25.4, fromIncluded: true, wait: { count: 7, unit: 'days' } },
      { fromMm: 60, fromIncluded: true, wait: { count: 14, unit: 'days' } },
    ];
    const days = (count: number) => ({ count, unit: 'days' });
    expect(differenceOf(CAUTIOUS_FEEDING_TABLE, own)).toEqual([
      { fromMm: 50.8, fromIncluded: false, to: { mm: 60, included: false }, before: days(21), after: days(7), change: 'shorter' },
      { fromMm: 60, fromIncluded: true, to: { mm: 101.6, included: false }, before: days(21), after: days(14), change: 'shorter' },
      { fromMm: 101.6, fromIncluded: true, to: null, before: { count: 1, unit: 'months' }, after: days(14), change: 'shorter' },
    ]);
    expect(differenceOf(own, CAUTIOUS_FEEDING_TABLE).map(({ change }) => change)).toEqual(['longer', 'longer', 'longer']);
  });

  test('differs at one very length where only the side of a limit moves', () => {
    const own = CAUTIOUS_FEEDING_TABLE.map((row) => (row.fromMm === 50.8 ? { ...row, fromIncluded: true } : row));
    expect(differenceOf(CAUTIOUS_FEEDING_TABLE, own)).toMatchObject([
      { fromMm: 50.8, fromIncluded: true, to: { mm: 50.8, included: true }, before: { count: 7 }, after: { count: 21 }, change: 'longer' },
    ]);
  });

  test('is no different from itself', () => expect(differenceOf(CAUTIOUS_FEEDING_TABLE, CAUTIOUS_FEEDING_TABLE)).toEqual([]));

  test('thirty days in place of a month are about the same', () => {
    const own = CAUTIOUS_FEEDING_TABLE.map((row) =>
      row.wait.unit === 'months' ? { ...row, wait: { count: 30, unit: 'days' as const } } : row,
    );
    expect(differenceOf(CAUTIOUS_FEEDING_TABLE, own)).toMatchObject([{ fromMm: 101.6, change: 'same-or-a-few-days' }]);
  });
});

test('waits shorter than anybody’s custom are found, for adults those under a week', () => {
  expect(tooShortRows(CAUTIOUS_FEEDING_TABLE)).toEqual([]);
  const row = (fromMm: number, count: number, unit: 'days' | 'months' = 'days') => ({ fromMm, fromIncluded: true, wait: { count, unit } });
  const short = (...rows: ReturnType<typeof row>[]) => tooShortRows(rows).map(({ fromMm }) => fromMm);
  expect(short(row(0, 2), row(50.8, 7), row(101.6, 1, 'months'))).toEqual([]);
  expect(short(row(0, 1), row(50.8, 6), row(101.6, 0, 'months'))).toEqual([0, 50.8, 101.6]);
  // The first row holds for adults too where no other begins by 2 in.
  expect(short(row(0, 4))).toEqual([0]);
  expect(short(row(0, 4), row(60, 21))).toEqual([0]);
});
