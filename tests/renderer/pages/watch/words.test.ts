import { describe, expect, test } from 'vitest';
import { FeedingTable } from '../../../../src/domain/care/feedingTable.ts';
import { differenceOf } from '../../../../src/domain/care/tableDifference.ts';
import { nextStepOf } from '../../../../src/domain/care/watchItem.ts';
import { holdInWords, spanInWordsOf, spansInWords } from '../../../../src/renderer/pages/watch/holdWords.ts';
import { needInWords, stepOf, whyInWords } from '../../../../src/renderer/pages/watch/needWords.ts';
import { momentOfCamera, momentTyped, typedOf } from '../../../../src/renderer/pages/watch/wallClock.ts';
import { clockOf, durationInWords, momentInWords } from '../../../../src/words/dates.ts';

describe('moments', () => {
  const evening = { at: '2026-03-05T22:30:00.000Z', offset: '+02:00' };

  test('stand on the clock they were read on, and name its offset to a reader on another one', () => {
    expect([momentInWords(evening), clockOf(evening)]).toEqual(['6 Mar 2026, 00:30', '00:30']);
    expect(momentInWords(evening, '-05:00')).toBe('6 Mar 2026, 00:30 (UTC+02:00)');
    expect(momentInWords({ at: '2026-03-05T02:00:00.000Z', offset: '-03:30' })).toBe('4 Mar 2026, 22:30');
  });

  test('go into fields of day and time and come back the same to the minute', () => {
    expect(momentTyped(typedOf('2026-07-01T10:20:00.000Z'))?.at).toBe('2026-07-01T10:20:00.000Z');
  });

  test('are typed with 24 hours, and what is no time is none', () => {
    const typed = (time: string, day = '2026-07-01') => momentTyped({ day, time });
    expect(typed('9:05')).toEqual(typed('09:05'));
    expect(typed('21.05')).toEqual(typed(' 21:05 '));
    expect(typed('21:05')).not.toBeNull();
    for (const time of ['', '9', '24:00', '9:60', '9:05 PM']) expect(typed(time)).toBeNull();
    expect(typed('9:05', '')).toBeNull();
  });

  test('of a camera are exact with an offset and assumed without one', () => {
    expect(momentOfCamera({ local: '2026-03-05T23:10:00', offset: '+01:00' })).toEqual({
      moment: { at: '2026-03-05T22:10:00.000Z', offset: '+01:00' },
      offsetAssumed: false,
    });
    expect(momentOfCamera({ local: '2026-03-05T23:10:00', offset: null })?.offsetAssumed).toBe(true);
  });

  test.each([
    [0.9, '0 min'],
    [59.9, '59 min'],
    [60, '1 h'],
    [130, '2 h 10 min'],
    [1_450, '24 h'],
  ])('%d minutes are %s', (minutes, words) => expect(durationInWords(minutes)).toBe(words));
});

describe('a need', () => {
  test('in a molt found under way says that the time is a lower bound, and of unknown size so', () => {
    const timer = {
      observationId: 'o1',
      startedAt: { at: '2026-03-05T20:00:00.000Z', offset: '+00:00' },
      startSeen: false,
      lastStage: 'carapace-open' as const,
      elapsedMinutes: 130,
      state: 'usual' as const,
      size: 'juvenile' as const,
      sizeKnown: false,
      usualMinutes: { from: 60, to: 360 },
      lookCloserAfterMinutes: 720,
      concernAfterMinutes: 1_440,
    };
    expect(needInWords({ kind: 'molting', timer })).toEqual({
      title: 'Molting now',
      why: 'Found molting 5 Mar 2026, 20:00, at least 2 h 10 min ago. Its size is not known, so the shortest limits count: look closer after 6 h, concern after 12 h. Last seen: carapace open.',
    });
    expect(needInWords({ kind: 'molting', timer }, () => '-07:00').why).toMatch(/^Found molting 5 Mar 2026, 20:00 \(UTC\+00:00\), /);
  });

  test('for a molt without an end says why it is over', () => {
    expect(needInWords({ kind: 'molt-end-unseen', startedOn: '2026-06-02', endedBy: '2026-06-04', ateOn: '2026-06-10' })).toEqual({
      title: 'A molt without an end',
      why: 'Molting since 2 Jun 2026, it ate on 10 Jun 2026: the molt is over, and nobody noted when. Its days are enough.',
    });
  });

  test('for a skin names what is to be done, and how one leaves the board that gives no size', () => {
    const skin = { kind: 'skin-to-read' as const, exuviaId: 'e1', photoId: 'p1', moltedOn: '2026-03-05', others: 0 };
    expect(needInWords({ ...skin, missing: ['measuring', 'sexing'] })).toEqual({
      title: 'A skin to measure and examine',
      why: 'Of the molt on 5 Mar 2026; still missing: its sizes and an examination.',
    });
    expect(needInWords({ ...skin, missing: ['measuring'] })).toEqual({
      title: 'A skin to measure',
      why: 'Of the molt on 5 Mar 2026; still missing: its sizes. If nothing of it can be measured, record on its page that only fragments are left.',
    });
  });

  test('for a skin leads to the room of the first thing missing', () => {
    const item = (missing: ('photo' | 'measuring' | 'sexing')[]) =>
      stepOf(
        { action: 'read-skin', need: { kind: 'skin-to-read', exuviaId: 'e1', photoId: 'p1', moltedOn: '2026-03-05', missing, others: 0 } },
        's1',
      ).to;
    expect([item(['photo', 'measuring', 'sexing']), item(['measuring', 'sexing']), item(['sexing'])]).toEqual([
      '/intake/s1',
      '/bench/p1',
      '/examination/e1',
    ]);
  });
});

describe('the span a hold rests on', () => {
  const wordsOf = (moltsSince: { fewest: number; most: number }) =>
    spanInWordsOf({
      moltedOn: '2026-03-05',
      until: '2026-04-05',
      wait: { count: 1, unit: 'months' },
      span: {
        spanMm: 104,
        lowMm: 86,
        highMm: 127,
        from: { kind: 'skin', measured: 'leg-span', lengthMm: 80, moltsSince, grownBy: 'any-tarantula' },
      },
      straddles: false,
      fangs: null,
      missing: ['date', 'fangs'],
      ateOn: null,
    });

  test.each([
    [{ fewest: 1, most: 1 }, 'foretold from its last measured skin and usual growth.'],
    [{ fewest: 4, most: 4 }, 'foretold from its last measured skin, 4 molts back, and usual growth.'],
    [{ fewest: 2, most: 3 }, 'foretold from its last measured skin, 2 to 3 molts back, and usual growth.'],
  ])('says how far back its skin lies: %o', (moltsSince, words) => {
    expect(wordsOf(moltsSince)).toBe(`Leg span about 104 mm (86 to 127), ${words}`);
  });
});

test('the hold of the animal under the thumb says its day and what is missing', () => {
  const until = '2026-04-05';
  const white = { color: 'fangs-white' as const, moment: { at: '2026-03-06T08:00:00.000Z', offset: '+00:00' } };
  expect(holdInWords({ until, fangs: null, missing: ['date', 'fangs'] })).toBe(
    'No prey before 5 Apr 2026, nor until its fangs are black (not noted yet).',
  );
  expect(holdInWords({ until, fangs: white, missing: ['fangs'] })).toBe(
    'No prey until its fangs are black (last noted white). Its wait ended on 5 Apr 2026.',
  );
  expect(holdInWords({ until, fangs: null, missing: ['date'] })).toBe('No prey before 5 Apr 2026. Its fangs are hard.');
});

test('suspected premolt asks to leave the animal alone', () => {
  const suspicion = { level: 'suspected' as const, points: 3, unknown: [], lastMealOn: null, daysSinceMeal: null, items: [] };
  expect(stepOf({ action: 'stop-offering-prey', need: { kind: 'premolt', suspicion } }, 's1').words).toMatch(/^Leave it alone/);
});

test('a span told from a carapace alone is a range without a middle', () => {
  const moltsSince = { fewest: 1, most: 1 };
  const words = spanInWordsOf({
    ...{ moltedOn: '2026-03-05', until: '2026-04-05', wait: { count: 1, unit: 'months' }, straddles: true, fangs: null, ateOn: null },
    span: {
      spanMm: 183,
      lowMm: 106,
      highMm: 280,
      from: { kind: 'skin', measured: 'carapace-length', lengthMm: 20, moltsSince, grownBy: 'any-tarantula' },
    },
    missing: ['date', 'fangs'],
  });
  expect(words).toBe(
    'Leg span not measured, somewhere from 106 to 280 mm, foretold from the carapace alone of its last measured skin and usual growth: this meets more than one wait, and the longest counts.',
  );
});

describe('the one line of an animal', () => {
  const skin = { kind: 'skin-to-recover' as const, moltId: 'm1', moltedOn: '2026-03-05' };
  const unread = {
    kind: 'skin-to-read' as const,
    exuviaId: 'e1',
    photoId: null,
    moltedOn: '2026-02-05',
    missing: ['photo' as const, 'sexing' as const],
    others: 2,
  };
  const forecast = { from: '2026-06-16', likely: '2026-06-20', to: '2026-07-01', stage: 'window' as const, told: true, assumed: false };
  const due = { kind: 'molt-due' as const, forecast };

  test('tells the most urgent reason first, and the others in its last sentence', () => {
    expect(whyInWords({ need: skin, also: [] })).toBe(
      'Molted on 5 Mar 2026; nothing is on record about the skin. Take the skin only when the animal is well away from it, and without touching the animal.',
    );
    expect(whyInWords({ need: skin, also: [{ action: 'watch-for-signs', need: due }] })).toMatch(
      /^Molted on 5 Mar 2026; .* Also: molt expected, likely 16 Jun to 1 Jul 2026\.$/,
    );
    expect(
      whyInWords({
        need: due,
        also: [
          { action: 'record-skin', need: skin },
          { action: 'read-skin', need: unread },
        ],
      }),
    ).toMatch(/ Also: a skin to recover, shed on 5 Mar 2026; a skin to photograph and examine, shed on 5 Feb 2026 and 2 earlier ones\.$/);
  });

  test('asks for the step of the next reason where the first one only asks to wait', () => {
    const also = [{ action: 'record-skin' as const, need: skin }];
    expect(nextStepOf({ action: 'watch-for-signs', need: due, also }).action).toBe('watch-for-signs');
    expect(nextStepOf({ action: 'wait', need: due, also })).toEqual(also[0]);
    expect(nextStepOf({ action: 'wait', need: due, also: [] }).action).toBe('wait');
  });

  test('of premolt says what speaks against it too', () => {
    const suspicion = {
      ...{ level: 'suspected' as const, points: 4, unknown: [], lastMealOn: '2026-06-10', daysSinceMeal: 5 },
      items: [
        { kind: 'sign' as const, sign: 'mat-laid' as const, seenOn: '2026-06-08', points: 3 },
        { kind: 'sign' as const, sign: 'setae-on-mat' as const, seenOn: '2026-06-08', points: 3 },
        { kind: 'ate-after-signs' as const, on: '2026-06-10', points: -3 },
      ],
    };
    expect(needInWords({ kind: 'premolt', suspicion }).why).toMatch(
      /^Laid a silk mat and setae shed over the mat \(4 points; .*\)\. Against it: ate on 10 Jun 2026, after signs were noted\. Last meal 5 days ago\./,
    );
  });

  test('counts a single point in the singular', () => {
    const suspicion = (points: number) => ({
      ...{ level: 'suspected' as const, points, unknown: [], lastMealOn: null, daysSinceMeal: null },
      items: [{ kind: 'refused' as const, times: 1, since: '2026-03-01', points }],
    });
    expect(needInWords({ kind: 'premolt', suspicion: suspicion(1) }).why).toContain('(1 point; suspected from 3, strongly from 6)');
    expect(needInWords({ kind: 'premolt', suspicion: suspicion(3) }).why).toContain('(3 points; suspected from 3, strongly from 6)');
  });
});

test('the spans for which two tables differ are said with their limits on the right side', () => {
  const table = (fromIncluded: boolean): FeedingTable =>
    FeedingTable.parse([
      { fromMm: 0, fromIncluded: true, wait: { count: 4, unit: 'days' } },
      { fromMm: 50.8, fromIncluded, wait: { count: 7, unit: 'days' } },
    ]);
  expect(differenceOf(table(true), table(false)).map(spansInWords)).toEqual(['exactly 50.8 mm (2 in)']);
  const one = FeedingTable.parse([{ fromMm: 0, fromIncluded: true, wait: { count: 9, unit: 'days' } }]);
  expect(differenceOf(table(false), one).map(spansInWords)).toEqual(['up to 50.8 mm (2 in)', 'over 50.8 mm (2 in)']);
});
