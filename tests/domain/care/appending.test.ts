import { describe, expect, test } from 'vitest';
import { type AppendingContext, checkObservation, contradictionAmong } from '../../../src/domain/care/appending.ts';
import { moltRunsOf, openRunOf } from '../../../src/domain/care/moltRun.ts';
import type { ObservationKind, Seen } from '../../../src/domain/care/observation.ts';
import { molt, seen } from './seen.ts';

const now = (at: string) => ({ now: new Date(`${at}Z`).toISOString() });
const NOW = '2026-03-10T12:00:00.000Z';

function outcome(kind: ObservationKind, at: string, observations: readonly Seen[] = [], context: Partial<AppendingContext> = {}) {
  const { moment } = seen(kind, at);
  const result = checkObservation(
    { kind, moment, observer: '', note: '', source: { kind: 'hand' }, span: null },
    { specimen: { hatchedOn: null }, observations, molts: [], now: NOW, ...context },
  );
  return result.ok ? 'fits' : result.failure;
}

describe('an observation', () => {
  test('may be made long after it was seen, but not before', () => {
    expect(outcome('ate', '2025-01-01T10:00')).toBe('fits');
    expect(outcome('ate', '2026-03-10T12:02')).toBe('fits');
    expect(outcome('ate', '2026-03-10T12:03')).toMatchObject({ code: 'seen-in-future', now: NOW });
  });

  test('is not of an animal that had not hatched', () => {
    const context = { specimen: { hatchedOn: '2026-03-01' } };
    expect(outcome('ate', '2026-02-28T23:00', [], context)).toMatchObject({ code: 'seen-before-hatching' });
    expect(outcome('ate', '2026-03-01T01:00', [], context)).toBe('fits');
  });

  test('is not of a year in which no animal of today lived', () => {
    expect(outcome('ate', '1850-02-28T23:00')).toMatchObject({ code: 'date-too-early', date: '1850-02-28' });
    expect(outcome('ate', '1950-01-01T00:00')).toBe('fits');
  });
});

describe('a molt', () => {
  const start = seen('turned-over', '2026-03-09T20:00');
  const end = seen('free-of-skin', '2026-03-10T02:00');

  test('does not begin while another is under way', () => {
    expect(outcome('turned-over', '2026-03-10T08:00', [start])).toEqual({ code: 'molt-under-way', startedAt: start.moment });
    expect(outcome('turned-over', '2026-03-09T18:00', [start])).toEqual({ code: 'molt-under-way', startedAt: start.moment });
    expect(outcome('turned-over', '2026-03-10T08:00', [start, end])).toMatchObject({ code: 'stages-out-of-order', later: 'turned-over' });
  });

  test('that was watched but not to its end, and put on record, does not stand in the way of the one a year later', () => {
    const firstYear = seen('turned-over', '2025-03-01T20:00');
    const context = { molts: [molt('m1', '2025-03-02')] };
    expect(outcome('turned-over', '2026-03-09T20:00', [firstYear], context)).toBe('fits');
    expect(outcome('legs-free', '2026-03-10T01:00', [firstYear, start], context)).toBe('fits');
    expect(outcome('turned-over', '2026-03-10T08:00', [firstYear, start], context)).toEqual({
      code: 'molt-under-way',
      startedAt: start.moment,
    });
    expect(moltRunsOf([firstYear, start, end], context.molts)).toMatchObject([
      { startedAt: firstYear.moment, endedAt: null },
      { startedAt: start.moment, endedAt: end.moment },
    ]);
    expect(openRunOf([firstYear, start], context.molts)).toMatchObject({ startedAt: start.moment });
  });

  test('on record the evening it began still takes the end that was seen after midnight', () => {
    const context = { molts: [molt('m1', '2026-03-09')] };
    expect(moltRunsOf([start, end], context.molts)).toMatchObject([{ startedAt: start.moment, endedAt: end.moment, startSeen: true }]);
    expect(outcome('free-of-skin', '2026-03-10T02:00', [start], context)).toBe('fits');
  });

  test('does not end before it began', () => {
    expect(outcome('free-of-skin', '2026-03-09T19:00', [start])).toMatchObject({ code: 'molt-ends-before-start', startedAt: start.moment });
    expect(outcome('free-of-skin', '2026-03-09T20:00', [start])).toBe('fits');
  });

  test('ends once: what is seen within two days after its end is of the same molt', () => {
    const again = { code: 'molt-already-ended', endedAt: end.moment };
    expect(outcome('free-of-skin', '2026-03-10T02:05', [start, end])).toMatchObject(again);
    expect(outcome('free-of-skin', '2026-03-10T01:55', [start, end])).toMatchObject(again);
    expect(outcome('legs-free', '2026-03-10T02:05', [start, end])).toMatchObject({ code: 'stages-out-of-order', earlier: 'free-of-skin' });
    expect(moltRunsOf([end, seen('free-of-skin', '2026-03-10T02:05')], [])).toMatchObject([
      { endedAt: { at: '2026-03-10T02:05:00.000Z' } },
    ]);
    expect(openRunOf([end, seen('legs-free', '2026-03-10T02:05')], [])).toBeNull();
    const later = { now: '2026-03-20T12:00:00.000Z' };
    expect(outcome('turned-over', '2026-03-12T02:00', [start, end], later)).toMatchObject({ code: 'stages-out-of-order' });
    expect(outcome('turned-over', '2026-03-12T02:01', [start, end], later)).toMatchObject({ code: 'molts-too-close' });
    expect(outcome('turned-over', '2026-03-17T02:00', [start, end], later)).toBe('fits');
  });

  test('that would end before it began is told alike, whichever of the two is noted last', () => {
    const early = seen('free-of-skin', '2026-03-09T19:00');
    const slip = { code: 'molt-ends-before-start', startedAt: start.moment, endedAt: early.moment };
    expect(outcome('free-of-skin', '2026-03-09T19:00', [start])).toEqual(slip);
    expect(outcome('turned-over', '2026-03-09T20:00', [early])).toEqual(slip);
    expect(contradictionAmong([start, early])).toEqual(slip);
  });

  test('does not end days before it began either: that would be a molt nobody saw', () => {
    expect(outcome('free-of-skin', '2026-03-06T19:00', [start])).toEqual({
      code: 'molt-ends-before-start',
      startedAt: start.moment,
      endedAt: seen('free-of-skin', '2026-03-06T19:00').moment,
    });
    expect(outcome('free-of-skin', '2026-03-01T19:00', [start])).toBe('fits');
  });

  test('does not come within five days of another, watched or on record', () => {
    const later = { now: '2026-03-30T12:00:00.000Z' };
    const close = { code: 'molts-too-close', neighbourDate: '2026-03-10', apartDays: 5 };
    expect(outcome('turned-over', '2026-03-14T20:00', [start, end], later)).toEqual({ ...close, date: '2026-03-14' });
    expect(outcome('free-of-skin', '2026-03-14T20:00', [start, end], later)).toEqual({ ...close, date: '2026-03-14' });
    expect(outcome('free-of-skin', '2026-03-07T20:00', [end], later)).toEqual({ ...close, date: '2026-03-07' });
    const onRecord = { ...later, molts: [molt('m1', '2026-03-10')] };
    expect(outcome('turned-over', '2026-03-14T20:00', [], onRecord)).toEqual({ ...close, date: '2026-03-14' });
    expect(outcome('turned-over', '2026-03-11T01:00', [], onRecord)).toBe('fits');
    expect(outcome('turned-over', '2026-03-17T20:00', [], onRecord)).toBe('fits');
    // Between 1 and 10 March it can be nine days apart.
    expect(outcome('turned-over', '2026-03-14T20:00', [], { ...later, molts: [molt('m1', '2026-03-01', '2026-03-10')] })).toBe('fits');
  });

  test('put on record on an evening, its end noted two days later is not a second molt', () => {
    expect(
      outcome('free-of-skin', '2026-03-12T02:00', [start], { molts: [molt('m1', '2026-03-09')], now: '2026-03-12T12:00:00.000Z' }),
    ).toMatchObject({
      code: 'molts-too-close',
      neighbourDate: '2026-03-09',
    });
  });

  test('of an earlier year can be noted while another is under way', () => {
    expect(outcome('free-of-skin', '2025-03-09T19:00', [start])).toBe('fits');
    expect(openRunOf([seen('free-of-skin', '2025-03-09T19:00'), start], [])).toMatchObject({ startedAt: start.moment });
  });

  test('cannot be taken from photos whose times run against it', () => {
    expect(contradictionAmong([seen('turned-over', '2026-03-09T23:55'), seen('free-of-skin', '2026-03-09T20:00')])).toEqual({
      code: 'molt-ends-before-start',
      startedAt: seen('turned-over', '2026-03-09T23:55').moment,
      endedAt: seen('free-of-skin', '2026-03-09T20:00').moment,
    });
    expect(contradictionAmong([start, end])).toBeNull();
    expect(contradictionAmong([start, end, seen('free-of-skin', '2025-03-09T20:00')])).toBeNull();
  });

  test('whose start was set by a clock that was then set back can be ended once the time is past it', () => {
    const ahead = seen('turned-over', '2026-03-10T14:00');
    expect(outcome('free-of-skin', '2026-03-10T12:00', [ahead])).toMatchObject({ code: 'molt-ends-before-start' });
    expect(outcome('free-of-skin', '2026-03-10T15:00', [ahead], { now: '2026-03-10T15:00:00.000Z' })).toBe('fits');
  });

  test('takes its stages in their order', () => {
    const legs = seen('legs-free', '2026-03-09T23:00');
    expect(outcome('carapace-open', '2026-03-09T22:00', [start, legs])).toBe('fits');
    expect(outcome('carapace-open', '2026-03-10T01:00', [start, legs])).toMatchObject({
      code: 'stages-out-of-order',
      earlier: 'legs-free',
      later: 'carapace-open',
    });
    expect(outcome('turned-over', '2026-03-09T23:30', [legs])).toMatchObject({ code: 'stages-out-of-order' });
    expect(outcome('turned-over', '2026-03-09T22:30', [legs, end])).toBe('fits');
  });
});

describe('fangs', () => {
  const end = seen('free-of-skin', '2026-03-01T02:00');
  const white = seen('fangs-white', '2026-03-02T08:00');
  const blackOfBefore = seen('fangs-black', '2026-02-01T08:00');

  test('do not grow lighter after one molt', () => {
    expect(outcome('fangs-black', '2026-03-02T07:00', [end, white])).toMatchObject({
      code: 'fangs-out-of-order',
      earlier: 'fangs-black',
      later: 'fangs-white',
    });
    expect(outcome('fangs-white', '2026-03-05T08:00', [end, seen('fangs-red-brown', '2026-03-04T08:00')])).toMatchObject({
      code: 'fangs-out-of-order',
    });
    expect(outcome('fangs-black', '2026-03-05T08:00', [end, white])).toBe('fits');
    expect(outcome('fangs-white', '2026-03-04T08:00', [end, white])).toBe('fits');
  });

  test('are not black within a day of a watched end', () => {
    expect(outcome('fangs-black', '2026-03-01T03:39', [end])).toMatchObject({ code: 'fangs-black-too-soon', endedAt: end.moment });
    expect(outcome('fangs-black', '2026-03-02T01:59', [end])).toMatchObject({ code: 'fangs-black-too-soon' });
    expect(outcome('fangs-black', '2026-03-02T02:00', [end])).toBe('fits');
    expect(outcome('fangs-black', '2026-03-01T01:59', [end])).toBe('fits');
  });

  test('begin again with each molt, watched or on record', () => {
    expect(outcome('fangs-white', '2026-03-02T08:00', [blackOfBefore, end])).toBe('fits');
    const molts = [molt('m0', '2025-06-01'), molt('m1', '2026-03-01')];
    expect(outcome('fangs-white', '2026-03-02T08:00', [blackOfBefore], { molts })).toBe('fits');
    expect(outcome('fangs-black', '2026-02-02T08:00', [white], { molts })).toBe('fits');
    expect(outcome('fangs-white', '2026-02-02T08:00', [blackOfBefore, white], { molts })).toMatchObject({ code: 'fangs-out-of-order' });
  });
});

describe('in the middle of a molt', () => {
  const start = seen('turned-over', '2026-03-09T20:00');
  const end = seen('free-of-skin', '2026-03-10T02:00');
  const while_ = { code: 'not-while-molting', startedAt: start.moment };

  test.each(['ate', 'fangs-white', 'fangs-black', 'mature', 'egg-sac', 'sperm-web'] as const)('nobody sees "%s"', (kind) => {
    expect(outcome(kind, '2026-03-09T23:00', [start])).toMatchObject({ ...while_, kind });
    expect(outcome(kind, '2026-03-09T23:00', [start, end])).toMatchObject({ ...while_, kind });
    expect(outcome(kind, '2026-03-09T20:00', [start])).toMatchObject({ ...while_, kind });
  });

  test('a limb is lost, and what was seen before it began or after its end is noted', () => {
    expect(outcome('limb-lost', '2026-03-09T23:00', [start])).toBe('fits');
    expect(outcome('water-changed', '2026-03-09T23:00', [start])).toBe('fits');
    expect(outcome('ate', '2026-03-09T19:59', [start])).toBe('fits');
    expect(outcome('fangs-black', '2026-03-09T19:59', [start])).toBe('fits');
    expect(outcome('fangs-white', '2026-03-10T02:00', [start, end])).toBe('fits');
  });

  test('of which nobody noted the end, a meal after two days tells that it is over', () => {
    expect(outcome('ate', '2026-03-11T19:59', [start], now('2026-03-20T12:00'))).toMatchObject(while_);
    expect(outcome('ate', '2026-03-11T20:00', [start], now('2026-03-20T12:00'))).toBe('fits');
    expect(outcome('fangs-black', '2026-03-15T20:00', [start], now('2026-03-20T12:00'))).toMatchObject(while_);
    expect(outcome('fangs-black', '2026-03-15T20:00', [start], { ...now('2026-03-20T12:00'), molts: [molt('m1', '2026-03-10')] })).toBe(
      'fits',
    );
  });

  test('fangs are not light shortly before it, whichever is noted first', () => {
    const white = seen('fangs-white', '2026-03-09T18:00');
    const light = { code: 'fangs-light-before-molt', color: 'fangs-white', moment: white.moment, startedAt: start.moment };
    expect(outcome('fangs-white', '2026-03-09T18:00', [start])).toEqual(light);
    expect(outcome('turned-over', '2026-03-09T20:00', [white])).toEqual(light);
    expect(outcome('fangs-red-brown', '2026-03-02T19:59', [start])).toBe('fits');
  });
});
