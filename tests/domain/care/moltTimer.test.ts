import { describe, expect, test } from 'vitest';
import { isRecordOf, moltRunsOf, openRunOf } from '../../../src/domain/care/moltRun.ts';
import { MOLT_PACES, moltTimer, stateAfter } from '../../../src/domain/care/moltTimer.ts';
import { spanFromAnimal } from '../../../src/domain/care/spanNow.ts';
import { molt, seen } from './seen.ts';

const HOUR = 60;

function timerAt(now: string, observations = [seen('turned-over', '2026-03-28T22:00', '+01:00')], spanMm: number | null = 130) {
  const run = openRunOf(observations, []);
  if (!run) throw new Error('Expected a molt under way');
  return moltTimer(run, spanMm === null ? null : spanFromAnimal({ spanMm, plusMinusMm: 0 }), new Date(`${now}Z`).toISOString());
}

describe('the pace of a molt', () => {
  // Half an hour, 24 h and 48 h: common practice, no source. The rest: judgment.
  test.each([
    ['half an hour is usual for the smallest', 'smallest', 30, 'usual'],
    ['6 h are still usual for the smallest', 'smallest', 6 * HOUR, 'usual'],
    ['a minute more asks to look closer', 'smallest', 6 * HOUR + 1, 'look-closer'],
    ['12 h ask to look closer', 'smallest', 12 * HOUR, 'look-closer'],
    ['over 12 h concern', 'smallest', 12 * HOUR + 1, 'concern'],
    ['6 h are usual for juveniles', 'juvenile', 6 * HOUR, 'usual'],
    ['over 12 h ask to look closer', 'juvenile', 12 * HOUR + 1, 'look-closer'],
    ['24 h ask to look closer at juveniles', 'juvenile', 24 * HOUR, 'look-closer'],
    ['over 24 h concern', 'juvenile', 24 * HOUR + 1, 'concern'],
    ['24 h can be usual for large animals', 'large', 24 * HOUR, 'usual'],
    ['over 24 h ask to look closer', 'large', 24 * HOUR + 1, 'look-closer'],
    ['36 h ask to look closer', 'large', 36 * HOUR, 'look-closer'],
    ['over 36 h concern', 'large', 36 * HOUR + 1, 'concern'],
    ['48 h concern', 'large', 48 * HOUR, 'concern'],
  ] as const)('%s', (_, size, minutes, state) => expect(stateAfter(minutes, MOLT_PACES[size])).toBe(state));

  test.each(Object.keys(MOLT_PACES))('48 h concern whatever the size: %s', (size) => {
    expect(stateAfter(48 * HOUR, MOLT_PACES[size as keyof typeof MOLT_PACES])).toBe('concern');
  });

  test('a span that straddles two sizes takes the shorter limits, and none the shortest', () => {
    const sizeFrom = (lowMm: number) => timerAt('2026-03-28T23:00', undefined, lowMm).size;
    expect([sizeFrom(25.3), sizeFrom(25.4), sizeFrom(101.5), sizeFrom(101.6)]).toEqual(['smallest', 'juvenile', 'juvenile', 'large']);
    expect(timerAt('2026-03-28T23:00', undefined, null)).toMatchObject({ size: 'smallest', sizeKnown: false });
    expect(timerAt('2026-03-29T07:00', undefined, null)).toMatchObject({ elapsedMinutes: 9 * HOUR, state: 'look-closer' });
    expect(timerAt('2026-03-29T11:00', undefined, null).state).toBe('concern');
  });
});

describe('the time that has passed', () => {
  test('goes over the night the clocks go forward without an hour too many', () => {
    // Central Europe changed to summer time on 29 March 2026 at 01:00 UTC (Directive 2000/84/EC: last Sunday of March).
    const observations = [seen('turned-over', '2026-03-28T22:00', '+01:00'), seen('carapace-open', '2026-03-29T03:00', '+02:00')];
    expect(timerAt('2026-03-29T04:00', observations)).toMatchObject({
      elapsedMinutes: 6 * HOUR,
      lastStage: 'carapace-open',
      state: 'usual',
    });
  });

  test('is not changed by a keeper who travels between start and end', () => {
    const [run] = moltRunsOf([seen('turned-over', '2026-03-01T10:00', '+09:00'), seen('free-of-skin', '2026-03-01T16:00', '-07:00')], []);
    expect(run?.endedAt && Date.parse(run.endedAt.at) - Date.parse(run.startedAt.at)).toBe(6 * HOUR * 60_000);
  });

  test('is not told while the clock stands before the start', () => {
    expect(timerAt('2026-03-28T21:00')).toMatchObject({ elapsedMinutes: null, state: 'clock-set-back' });
  });

  test('is a lower bound for an animal found with its molt under way', () => {
    expect(timerAt('2026-03-28T23:00', [seen('legs-free', '2026-03-28T22:00')])).toMatchObject({ startSeen: false, elapsedMinutes: HOUR });
  });
});

describe('molts as they were watched', () => {
  test('end with the animal free of its skin, whatever the order of noting', () => {
    const end = seen('free-of-skin', '2026-03-02T04:00');
    const start = seen('turned-over', '2026-03-01T22:00');
    expect(moltRunsOf([end, start], [])).toMatchObject([{ startedAt: start.moment, endedAt: end.moment, startSeen: true }]);
    expect(openRunOf([end, start], [])).toBeNull();
  });

  test('an end alone is a molt nobody saw begin', () => {
    expect(moltRunsOf([seen('free-of-skin', '2026-03-02T04:00')], [])).toMatchObject([{ startSeen: false }]);
  });

  test('a molt on record from the first day on ends one that was never noted as ended', () => {
    const start = seen('turned-over', '2026-03-01T22:00', '+02:00');
    expect(openRunOf([start], [molt('m1', '2026-03-01')])).not.toBeNull();
    expect(openRunOf([start], [molt('m1', '2026-03-02')])).toBeNull();
  });

  test('is told from its record by the day, give or take a night', () => {
    const run = { endedAt: seen('free-of-skin', '2026-03-02T04:00').moment };
    const days = ['2026-02-28', '2026-03-01', '2026-03-02', '2026-03-03', '2026-03-04'];
    expect(days.map((day) => isRecordOf(molt('m', day), run))).toEqual([false, true, true, true, false]);
  });
});
