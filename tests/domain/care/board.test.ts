import { describe, expect, test } from 'vitest';
import { boardOf } from '../../../src/domain/care/board.ts';
import { calendarEntriesOf } from '../../../src/domain/care/calendar.ts';
import type { FeedingTable } from '../../../src/domain/care/feedingTable.ts';
import type { AnimalRecords, SkinState } from '../../../src/domain/care/followed.ts';
import type { Seen } from '../../../src/domain/care/observation.ts';
import { oneMoltFurther, spanNow } from '../../../src/domain/growth/sizeNow.ts';
import { estimateFrom } from '../../../src/domain/measuring/quantity.ts';
import { animal, behind, expected, FEMALE, growth, MALE, onSkins, TODAY } from './followedAnimal.ts';
import { molt, seen } from './seen.ts';

const boardOfOne = (part: Partial<AnimalRecords>) => boardOf([animal('a', part)], TODAY).map(({ need, action }) => [need.kind, action]);

const exuvia = { id: 'e1', recovered: true, grade: null, completeness: null };
const skin: SkinState = { moltId: 'm1', exuvia, photoId: 'p1', measured: true, sexed: true };

describe('who needs what today', () => {
  test('nobody of whom nothing is known', () => expect(boardOf([animal('a'), animal('b')], TODAY)).toEqual([]));

  test('light fangs of months ago do not hide signs of the next molt', () => {
    const signs = [seen('mat-laid', '2026-06-12T20:00'), seen('setae-on-mat', '2026-06-12T20:00'), seen('refused', '2026-06-10T20:00')];
    const stale = {
      molts: [molt('m1', '2026-01-01')],
      skins: [skin],
      observations: [seen('fangs-red-brown', '2026-01-05T08:00'), ...signs],
    };
    expect(animal('a', stale).suspicion.level).toBe('strongly-suspected');
    expect(boardOfOne(stale)).toEqual([['premolt', 'stop-offering-prey']]);
    expect(boardOf([animal('a', stale)], TODAY)[0]?.also.map(({ need }) => need.kind)).toContain('feeding-hold');
  });

  test('the most urgent stand first: concern, a molt, hardening, premolt, a skin, a molt that is due', () => {
    const items = boardOf(
      [
        animal('due', { forecast: expected('window') }),
        animal('unread', { molts: [molt('m1', '2026-01-01')], skins: [{ ...skin, measured: false }] }),
        animal('premolt', { observations: [seen('refused', '2026-06-10T20:00'), seen('mat-laid', '2026-06-12T20:00')] }),
        animal('hardening', { molts: [molt('m1', '2026-06-12')], skins: [skin] }),
        animal('molting', { observations: [seen('turned-over', '2026-06-15T11:00')] }),
        animal('stuck', { observations: [seen('turned-over', '2026-06-13T11:00')] }),
        animal('overdue', { forecast: expected('overdue') }),
      ],
      TODAY,
    );
    expect(items.map(({ specimenId, need, action }) => [specimenId, need.kind, action])).toEqual([
      ['stuck', 'molting', 'ask-a-veterinarian'],
      ['molting', 'molting', 'look-in'],
      ['hardening', 'hardening', 'note-fangs'],
      ['premolt', 'premolt', 'stop-offering-prey'],
      ['overdue', 'molt-overdue', 'watch-for-signs'],
      ['due', 'molt-due', 'watch-for-signs'],
      ['unread', 'skin-to-read', 'read-skin'],
    ]);
  });

  test('a molt whose end nobody noted is over once the animal ate: it is put on record by its days, and held as of the last of them', () => {
    const start = seen('turned-over', '2026-06-02T20:00');
    const part = { growth: growth({ span: behind(100) }), observations: [start, seen('ate', '2026-06-10T20:00')] };
    const [item] = boardOf([animal('a', part)], TODAY);
    expect(item).toMatchObject({
      action: 'record-molt',
      need: { kind: 'molt-end-unseen', startedOn: '2026-06-02', endedBy: '2026-06-04', ateOn: '2026-06-10' },
      also: [{ need: { kind: 'hardening', hold: { moltedOn: '2026-06-04', until: '2026-07-04', ateOn: '2026-06-10' } } }],
    });
    expect(animal('a', part).timer).toBeNull();
    const soon = [start, seen('ate', '2026-06-03T19:00')];
    expect(animal('a', { observations: soon })).toMatchObject({ endUnseen: null, timer: { state: 'concern' } });
    expect(boardOfOne({ ...part, molts: [molt('m1', '2026-06-02', '2026-06-04')] })).not.toContainEqual(['molt-end-unseen', 'record-molt']);
  });

  test('an animal that died in its last molt is held and awaited no more: it only asks for its status', () => {
    const died = { ...molt('m1', '2026-06-10'), outcomes: ['died' as const] };
    const observations = [
      seen('turned-over', '2026-06-12T20:00'),
      seen('mat-laid', '2026-06-13T20:00'),
      seen('refused', '2026-06-13T20:00'),
    ];
    const part = { molts: [molt('m0', '2026-01-01'), died], observations, forecast: expected('overdue') };
    expect(boardOf([animal('a', part)], TODAY)).toMatchObject([
      { action: 'record-death', need: { kind: 'died-in-molt', diedOn: '2026-06-10' }, also: [] },
    ]);
    expect(animal('a', part)).toMatchObject({ hold: null, timer: null, suspicion: { level: 'none' }, records: { forecast: null } });
    expect(calendarEntriesOf([animal('a', part)], TODAY)).toEqual([]);
    const before = { ...molt('m0', '2026-01-01'), outcomes: ['died' as const] };
    expect(animal('a', { molts: [before, molt('m1', '2026-06-10')] }).diedOn).toBeNull();
  });

  test('an animal stands once, however many reasons there are, the most urgent first', () => {
    const molts = [molt('m1', '2026-01-01')];
    const observations = [seen('ate', '2026-06-01T20:00'), seen('refused', '2026-06-10T20:00'), seen('mat-laid', '2026-06-12T20:00')];
    const items = boardOf(
      [
        animal('a', { forecast: expected('window'), observations, molts, skins: [{ ...skin, sexed: false }] }),
        animal('b', { forecast: expected('window') }),
      ],
      TODAY,
    );
    expect(items.map(({ specimenId, need, also }) => [specimenId, need.kind, also.map((other) => other.need.kind)])).toEqual([
      ['a', 'premolt', ['molt-due', 'skin-to-read']],
      ['b', 'molt-due', []],
    ]);
    expect(items[0]?.also.map(({ action }) => action)).toEqual(['watch-for-signs', 'read-skin']);
  });

  test('a hold goes from hardening by the date or by the fangs, and then waits for the other', () => {
    const small = { growth: growth({ span: behind(10) }), skins: [skin] };
    const black = seen('fangs-black', '2026-06-14T20:00');
    expect(boardOfOne({ ...small, molts: [molt('m1', '2026-06-12')] })).toEqual([['hardening', 'note-fangs']]);
    expect(boardOfOne({ ...small, molts: [molt('m1', '2026-06-12')], observations: [black] })).toEqual([['feeding-hold', 'wait']]);
    expect(boardOfOne({ ...small, molts: [molt('m1', '2026-06-11')] })).toEqual([['feeding-hold', 'note-fangs']]);
    expect(boardOfOne({ ...small, molts: [molt('m1', '2026-06-11')], observations: [black] })).toEqual([]);
  });

  test('a watched molt is first put on record, then its skin looked for, then read', () => {
    const ended = [seen('free-of-skin', '2026-05-01T20:00'), seen('ate', '2026-06-14T20:00')];
    const molts = [molt('m1', '2026-05-01')];
    expect(boardOfOne({ observations: ended })).toEqual([['molt-to-record', 'record-molt']]);
    expect(boardOfOne({ observations: ended, molts })).toEqual([['skin-to-recover', 'record-skin']]);
    expect(boardOfOne({ observations: ended, molts, skins: [{ ...skin, sexed: false }] })).toEqual([['skin-to-read', 'read-skin']]);
    expect(boardOfOne({ observations: ended, molts, skins: [skin] })).toEqual([]);
    expect(boardOfOne({ observations: ended, molts, skins: [{ ...skin, exuvia: { ...exuvia, recovered: false }, sexed: false }] })).toEqual(
      [],
    );
    expect(boardOfOne({ observations: ended, molts: [{ ...molt('m1', '2026-05-01'), outcomes: ['skin-not-recovered'] }] })).toEqual([]);
  });

  test.each<[string, Partial<SkinState['exuvia']>, Partial<SkinState>, string[] | null]>([
    ['of which nobody said how complete it is', {}, { photoId: null }, ['photo', 'measuring', 'sexing']],
    ['without an abdomen has its carapace', { completeness: 'abdomen-missing' }, {}, ['measuring']],
    ['that is a carapace alone has that', { completeness: 'carapace-only' }, {}, ['measuring']],
    ['of grade D has no strip to examine', { grade: 'D' }, {}, ['measuring']],
    ['graded for its strip has one, whatever else is gone', { grade: 'C', completeness: 'carapace-only' }, {}, ['measuring', 'sexing']],
    ['in fragments can be examined', { completeness: 'fragments' }, {}, ['sexing']],
    ['in fragments, whose reading is signed', { completeness: 'fragments' }, { sexed: true }, null],
    ['in fragments, whose reading is signed, without a photo', { completeness: 'fragments' }, { sexed: true, photoId: null }, null],
    ['in fragments of grade D', { grade: 'D', completeness: 'fragments' }, {}, null],
    ['whose reading is signed can still be measured', { grade: 'B', completeness: 'legs-missing' }, { sexed: true }, ['measuring']],
  ])('a skin %s', (_, left, part, missing) => {
    const skins = [{ ...skin, measured: false, sexed: false, ...part, exuvia: { ...exuvia, ...left } }];
    const eaten = [seen('ate', '2026-06-14T20:00')];
    const [item] = boardOf([animal('a', { molts: [molt('m1', '2026-01-01')], skins, observations: eaten })], TODAY);
    expect(item?.need ?? null).toEqual(missing && expect.objectContaining({ kind: 'skin-to-read', missing }));
  });

  test('fangs that nobody looked at are asked for after the hold too, by the wait of the animal itself', () => {
    const part = { growth: growth({ span: behind(10) }), molts: [molt('m1', '2026-03-10')], skins: [skin] };
    expect(boardOfOne(part)).toEqual([['fangs-unseen', 'note-fangs']]);
    expect(boardOfOne({ ...part, observations: [seen('fangs-black', '2026-04-10T20:00')] })).toEqual([]);
    expect(boardOfOne({ ...part, observations: [seen('fangs-white', '2026-04-10T20:00')] })).toEqual([['feeding-hold', 'note-fangs']]);
    const table: FeedingTable = [
      { fromMm: 0, fromIncluded: true, wait: { count: 7, unit: 'days' } },
      { fromMm: 100, fromIncluded: true, wait: { count: 4, unit: 'months' } },
    ];
    expect(animal('a', part, table)).toMatchObject({ hold: null, fangsUnseenSince: '2026-03-10' });
    expect(animal('a', { ...part, growth: growth({ span: behind(100) }) }, table)).toMatchObject({ hold: { missing: ['date', 'fangs'] } });
  });

  test('a skin is not looked for after three months', () => {
    const observations = [seen('ate', '2026-06-14T20:00')];
    expect(boardOfOne({ molts: [molt('m1', '2026-03-17')], observations })).toEqual([['skin-to-recover', 'record-skin']]);
    expect(boardOfOne({ molts: [molt('m1', '2026-03-16')], observations })).toEqual([]);
  });

  test('skins of earlier molts are not forgotten: each to recover for three months, the latest to read with how many after it', () => {
    const molts = [molt('m0', '2025-01-01'), molt('m1', '2026-03-20'), molt('m2', '2026-03-30')];
    const needsOf = (part: Partial<AnimalRecords>) =>
      boardOf([animal('a', { molts, observations: [seen('ate', '2026-06-14T20:00')], ...part })], TODAY).flatMap(({ need, also }) => [
        need,
        ...also.map((other) => other.need),
      ]);
    expect(needsOf({})).toEqual([
      { kind: 'skin-to-recover', moltId: 'm1', moltedOn: '2026-03-20' },
      { kind: 'skin-to-recover', moltId: 'm2', moltedOn: '2026-03-30' },
    ]);
    const skins = ['m0', 'm1', 'm2'].map((moltId) => ({ ...skin, moltId, exuvia: { ...exuvia, id: moltId }, sexed: false }));
    const latest = { kind: 'skin-to-read', exuviaId: 'm2', photoId: 'p1', moltedOn: '2026-03-30', missing: ['sexing'] };
    expect(needsOf({ skins })).toEqual([{ ...latest, others: 2 }]);
    expect(needsOf({ skins, sex: FEMALE })).toEqual([{ ...latest, others: 0 }]);
    const unmeasured = skins.map((one) => ({ ...one, measured: one.moltId !== 'm0', sexed: true }));
    expect(needsOf({ skins: unmeasured })).toMatchObject([{ exuviaId: 'm0', missing: ['measuring'] }]);
    const presumed = [{ ...molt('m1', '2026-05-01'), outcomes: ['presumed' as const] }];
    expect(needsOf({ molts: presumed })).toEqual([]);
  });

  test('nobody is told to watch for a molt too early, or by what is merely assumed of all tarantulas', () => {
    expect(boardOfOne({ forecast: expected('early') })).toEqual([]);
    for (const stage of ['window', 'past-likely', 'overdue'] as const) expect(boardOfOne({ forecast: expected(stage, true) })).toEqual([]);
  });

  test('nothing is foretold for a mature male', () => {
    const forecast = expected('window');
    const web = [seen('sperm-web', '2026-06-01T20:00')];
    expect(boardOfOne({ forecast, sex: MALE, observations: web })).toEqual([]);
    expect(boardOfOne({ forecast, observations: web })).toEqual([['molt-due', 'watch-for-signs']]);
    expect(boardOfOne({ forecast, sex: MALE, observations: [seen('mature', '2026-06-01T20:00')] })).toEqual([]);
    expect(boardOfOne({ forecast, sex: FEMALE, observations: [seen('mature', '2026-06-01T20:00')] })).toEqual([
      ['molt-due', 'watch-for-signs'],
    ]);
  });

  test('nothing is foretold from before a molt that nobody has put on record yet', () => {
    const forecast = expected('overdue');
    const ended = [seen('free-of-skin', '2026-05-10T20:00'), seen('ate', '2026-06-14T20:00')];
    expect(boardOfOne({ forecast, observations: ended })).toEqual([['molt-to-record', 'record-molt']]);
    expect(animal('a', { forecast, observations: [seen('turned-over', '2026-06-15T11:00')] }).suspicion.items).toEqual([]);
  });

  test('what was measured on the animal since its molt goes before what its skin foretells', () => {
    const skinOfBefore = growth({ span: behind(100) });
    const measured = { ...seen('span-measured', '2026-06-13T20:00'), span: { spanMm: 49, plusMinusMm: 1 } };
    const molts = [molt('m1', '2026-06-12')];
    expect(animal('a', { molts, growth: skinOfBefore }).hold?.wait).toEqual({ count: 1, unit: 'months' });
    expect(animal('a', { molts, growth: skinOfBefore, observations: [measured] }).hold?.wait).toEqual({ count: 7, unit: 'days' });
    const before = { ...measured, moment: { at: '2026-06-11T20:00:00.000Z', offset: '+00:00' } };
    expect(animal('a', { molts, growth: skinOfBefore, observations: [before] }).hold?.wait).toEqual({ count: 1, unit: 'months' });
  });

  test('a span measured on the day of the molt may be of the old animal: it counts only once light fangs or the end were seen before it', () => {
    const measured = { ...seen('span-measured', '2026-06-12T12:00'), span: { spanMm: 49, plusMinusMm: 1 } };
    const waitAfter = (...others: Seen[]) =>
      animal('a', { molts: [molt('m1', '2026-06-12')], growth: growth({ span: behind(100) }), observations: [measured, ...others] }).hold
        ?.wait;
    const month = { count: 1, unit: 'months' };
    const week = { count: 7, unit: 'days' };
    expect(waitAfter()).toEqual(month);
    expect(waitAfter(seen('fangs-white', '2026-06-12T20:00'))).toEqual(month);
    expect(waitAfter(seen('fangs-black', '2026-06-12T08:00'))).toEqual(month);
    expect(waitAfter(seen('free-of-skin', '2026-06-12T20:00'))).toEqual(month);
    expect(waitAfter(seen('fangs-white', '2026-06-12T08:00'))).toEqual(week);
    expect(waitAfter(seen('fangs-red-brown', '2026-06-12T12:00'))).toEqual(week);
    expect(waitAfter(seen('free-of-skin', '2026-06-12T08:00'))).toEqual(week);
  });

  test('a photo of the living animal measured since its last molt goes before its skin, unless a later molt was watched', () => {
    const known = () => ({
      onSkins: onSkins({ span: behind(100) }),
      liveSpanMm: estimateFrom(49, 0.5),
    });
    const molts = [molt('m1', '2026-06-12')];
    expect(animal('a', { molts, growth: known }).span).toMatchObject({ spanMm: 49, lowMm: 48, highMm: 50, from: { kind: 'animal' } });
    const watched = animal('a', {
      molts: [molt('m1', '2026-01-12')],
      growth: known,
      observations: [seen('free-of-skin', '2026-06-14T20:00')],
    });
    expect(watched.span?.from.kind).toBe('skin');
  });

  test('of a span taken by hand and one in a photo the larger counts: the animal waits longer by it', () => {
    const molts = [molt('m1', '2026-06-08')];
    const byHand = { ...seen('span-measured', '2026-06-12T08:00'), span: { spanMm: 40, plusMinusMm: 2 } };
    const spanBeside = (photoMm: number) =>
      animal('a', { molts, observations: [byHand], growth: () => ({ onSkins: null, liveSpanMm: estimateFrom(photoMm, 0.5) }) }).span
        ?.spanMm;
    expect([spanBeside(70), spanBeside(30)]).toEqual([70, 40]);
  });

  test('a sex that is a mere leaning does not narrow the span, and so not the wait', () => {
    const spanOf = (level: 'leaning' | 'probable') =>
      animal('a', {
        molts: [molt('m1', '2026-06-10')],
        growth: growth({ carapace: behind(10) }),
        sex: { sex: 'female', level, conflict: false },
      }).span;
    // Leg I and IV together are up to 7.5 carapace lengths in any sex, 5.6 in females (see the domain's source), and the body one more.
    expect((spanOf('leaning')?.highMm ?? 0) / (spanOf('probable')?.highMm ?? 1)).toBeCloseTo(8.5 / 6.6, 6);
  });

  test('a watched molt not yet on record puts the skin one molt further back', () => {
    const skinOfBefore = growth({ span: behind(40) });
    const span = animal('a', {
      molts: [molt('m1', '2025-06-12')],
      growth: skinOfBefore,
      observations: [seen('free-of-skin', '2026-06-14T20:00')],
    }).span;
    expect(span?.spanMm).toBe(spanNow(oneMoltFurther(onSkins({ span: behind(40) })))?.middleMm);
    expect((span?.spanMm ?? 0) / 40).toBeCloseTo(1.3 * 1.3, 1);
  });
});

describe('the sizes of skins', () => {
  test.each([
    ['is held', [molt('m1', '2026-06-12')], 1],
    ['molted long ago', [molt('m1', '2026-01-12')], 0],
    ['has not molted here', [], 0],
  ])('are asked for only where they decide something: an animal that %s', (_, molts, asked) => {
    let times = 0;
    const counted = () => {
      times += 1;
      return { onSkins: null, liveSpanMm: null };
    };
    animal('a', { molts, growth: counted });
    expect(times).toBe(asked);
  });
});
