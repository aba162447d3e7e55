import { describe, expect, test } from 'vitest';
import {
  cameraTimeInWords,
  dayInWords,
  dayOnAxis,
  dayOrderInWords,
  daysInWords,
  remainingInWords,
  spanInWords,
} from '../../src/words/dates.ts';

describe('days in words', () => {
  test('carry the month in letters', () => {
    expect(dayInWords('2026-03-05')).toBe('5 Mar 2026');
  });

  // The short dates of Unicode CLDR: M/d/yy, dd/MM/yyyy, y. M. d., y-MM-dd.
  test.each([
    ['en-US', 'month, day, year'],
    ['fr-FR', 'day, month, year'],
    ['hu-HU', 'year, month, day'],
    ['sv-SE', 'year, month, day'],
  ])('say in which order %s writes their numbers', (place, order) => {
    expect(dayOrderInWords(new Intl.DateTimeFormat(place))).toBe(order);
  });

  test('say what the ends of a span share only once', () => {
    expect(spanInWords('2026-03-05', '2026-03-05')).toBe('5 Mar 2026');
    expect(spanInWords('2026-03-03', '2026-03-05')).toBe('3 to 5 Mar 2026');
    expect(spanInWords('2026-02-27', '2026-03-05')).toBe('27 Feb to 5 Mar 2026');
    expect(spanInWords('2025-12-30', '2026-01-02')).toBe('30 Dec 2025 to 2 Jan 2026');
  });

  test('show the clock of the camera as it stood, with its offset only where it wrote one', () => {
    expect(cameraTimeInWords({ local: '2026-03-05T14:02:11', offset: '+01:00' })).toBe('5 Mar 2026, 14:02 (UTC+01:00)');
    expect(cameraTimeInWords({ local: '2026-03-05T04:02:11', offset: null })).toBe('5 Mar 2026, 04:02');
  });

  test('count days', () => {
    expect(daysInWords(1)).toBe('1 day');
    expect(daysInWords(10, 14)).toBe('10 to 14 days');
  });

  test('promise no more than can be told about the time left', () => {
    expect(remainingInWords(3)).toBe('a few seconds');
    expect(remainingInWords(44)).toBe('about 40 seconds');
    expect(remainingInWords(200)).toBe('about 3 minutes');
    expect(remainingInWords(3 * 3600)).toBe('about 3 hours');
  });

  test('a day on an axis says no more than the mark needs', () => {
    expect(['2026-03-12', '2026-03-01', '2026-01-01', '2026-01-02'].map(dayOnAxis)).toEqual(['12 Mar', 'Mar', '2026', '2 Jan']);
  });
});
