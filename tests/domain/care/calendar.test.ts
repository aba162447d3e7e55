import { describe, expect, test } from 'vitest';
import { calendarEntriesOf, canceledEntriesOf } from '../../../src/domain/care/calendar.ts';
import type { AnimalRecords } from '../../../src/domain/care/followed.ts';
import type { ExpectedMolt } from '../../../src/domain/growth/forecast/expectedMolt.ts';
import { animal, expected, TODAY } from './followedAnimal.ts';
import { molt, seen } from './seen.ts';

describe('what goes into a calendar', () => {
  const entriesOf = (part: Partial<AnimalRecords>) => calendarEntriesOf([animal('a', part)], TODAY);
  const uids = (part: Partial<AnimalRecords>) => entriesOf(part).map(({ uid }) => uid);

  test('keeps its names when dates are corrected, a watched molt is put on record and earlier ones are added', () => {
    const observations = [seen('free-of-skin', '2026-06-12T20:00')];
    const watched = uids({ observations });
    expect(watched).toEqual(['feeding-hold.a@exuviary', 'fang-check.a@exuviary', 'skin-check.a@exuviary']);
    expect(uids({ molts: [molt('m1', '2026-06-12')], observations })).toEqual(watched);
    expect(uids({ molts: [molt('m1', '2026-06-10')] })).toEqual(watched);
    expect(uids({ molts: [molt('m0', '2024-06-10'), molt('m1', '2026-06-12')], observations })).toEqual(watched);
  });

  test('keeps the skins that are still looked for, that of the last molt on its day', () => {
    const molts = [molt('m0', '2026-04-10'), molt('m1', '2026-06-10')];
    expect(entriesOf({ molts }).filter(({ kind }) => kind === 'skin-check')).toEqual([
      { uid: 'skin-check.a@exuviary', specimenId: 'a', kind: 'skin-check', on: '2026-06-10' },
      { uid: 'skin-check.a.m0@exuviary', specimenId: 'a', kind: 'skin-check', on: '2026-04-10' },
    ]);
  });

  test('has the days of the forecast under a name that outlasts them, none that are merely assumed', () => {
    const molts = [molt('m1', '2026-01-12')];
    const foretold = (forecast: ExpectedMolt) => entriesOf({ molts, forecast });
    expect(foretold(expected('window'))).toEqual([
      {
        uid: 'molt-expected.a@exuviary',
        specimenId: 'a',
        kind: 'molt-expected',
        from: '2026-06-16',
        likely: '2026-06-20',
        to: '2026-07-01',
      },
    ]);
    expect(foretold({ ...expected('overdue'), to: '2026-08-01' })).toMatchObject([{ uid: 'molt-expected.a@exuviary', to: '2026-08-01' }]);
    expect(foretold(expected('window', true))).toEqual([]);
  });

  test('calls off all other names that an animal can have had, also when it is not kept any more', () => {
    const molts = [molt('m0', '2024-04-10'), molt('m1', '2026-02-10'), molt('m2', '2026-06-10')];
    const due = entriesOf({ molts });
    expect(due.map(({ uid }) => uid)).toEqual(['feeding-hold.a@exuviary', 'fang-check.a@exuviary', 'skin-check.a@exuviary']);
    const all = [
      { specimenId: 'a', molts },
      { specimenId: 'sold', molts: [] },
    ];
    const canceled = canceledEntriesOf(all, due, TODAY);
    expect(canceled.filter(({ specimenId }) => specimenId === 'a').map(({ uid }) => uid)).toEqual([
      'molt-expected.a@exuviary',
      'molt-look-closer.a@exuviary',
      'molt-concern.a@exuviary',
      'skin-check.a.m1@exuviary',
      'skin-check.a.m2@exuviary',
    ]);
    expect(canceled.filter(({ specimenId }) => specimenId === 'sold')).toHaveLength(6);
    const molting = entriesOf({ observations: [seen('turned-over', '2026-06-15T11:00')] });
    const names = (entries: readonly { readonly uid: string }[]) => entries.map(({ uid }) => uid);
    expect(names(canceledEntriesOf([{ specimenId: 'a', molts: [] }], molting, TODAY))).not.toContain('molt-concern.a@exuviary');
  });

  test('has the two limits of a molt under way, at their moments', () => {
    const checks = entriesOf({ observations: [seen('turned-over', '2026-06-15T11:00')] });
    const earlier = entriesOf({ observations: [seen('turned-over', '2026-06-15T11:00'), seen('carapace-open', '2026-06-15T12:00')] });
    expect(earlier.map(({ uid }) => uid)).toEqual(checks.map(({ uid }) => uid));
    expect(checks).toMatchObject([
      { kind: 'molt-check', state: 'look-closer', at: '2026-06-15T17:00:00.000Z' },
      { kind: 'molt-check', state: 'concern', at: '2026-06-15T23:00:00.000Z' },
    ]);
  });
});
