import ICAL from 'ical.js';
import { describe, expect, test } from 'vitest';
import type { CalendarEntry, CanceledEntry } from '../../../src/domain/care/calendar.ts';
import { writeCalendar } from '../../../src/exchange/calendar/writeCalendar.ts';

const ENTRIES: readonly CalendarEntry[] = [
  { uid: 'feeding-hold.s1.3@exuviary', specimenId: 's1', kind: 'feeding-hold', from: '2026-01-31', until: '2026-02-28' },
  { uid: 'fang-check.s1.3@exuviary', specimenId: 's1', kind: 'fang-check', on: '2026-02-28' },
  {
    uid: 'molt-expected.s2.7@exuviary',
    specimenId: 's2',
    kind: 'molt-expected',
    from: '2026-12-20',
    to: '2026-12-31',
    likely: '2026-12-24',
  },
  { uid: 'molt-concern.o1@exuviary', specimenId: 's2', kind: 'molt-check', at: '2026-03-29T01:30:00.000Z', state: 'concern' },
  { uid: 'skin-check.s3.1@exuviary', specimenId: 's3', kind: 'skin-check', on: '2028-02-29' },
];
const NAMES = new Map([
  ['s1', 'G-012 Ember; the "old", dark one'],
  ['s2', 'Å-7'],
  ['s3', `Ö${'ö'.repeat(90)}`],
]);

function written(
  entries: readonly (CalendarEntry | CanceledEntry)[] = ENTRIES,
  now = '2026-02-01T12:00:00.000Z',
  lastRecordedAt: string | null = null,
): string {
  return writeCalendar(entries, { nameOf: (id) => NAMES.get(id) ?? '', now, lastRecordedAt });
}

/** The stream as another library reads it: ical.js. */
function parsed(text: string) {
  const calendar = new ICAL.Component(ICAL.parse(text));
  return { calendar, events: calendar.getAllSubcomponents('vevent').map((component) => new ICAL.Event(component)) };
}

describe('the calendar feed, read back by another library', () => {
  test('is a calendar of version 2.0 that publishes (RFC 5545, 3.7)', () => {
    const { calendar, events } = parsed(written());
    expect([calendar.name, calendar.getFirstPropertyValue('version'), calendar.getFirstPropertyValue('method')]).toEqual([
      'vcalendar',
      '2.0',
      'PUBLISH',
    ]);
    expect(events.map(({ uid }) => uid)).toEqual(ENTRIES.map(({ uid }) => uid));
  });

  test('has days as dates whose end is the day after the last (RFC 5545, 3.6.1)', () => {
    const days = parsed(written()).events.map(({ startDate, endDate }) => [startDate.isDate, startDate.toString(), endDate.toString()]);
    expect(days).toEqual([
      [true, '2026-01-31', '2026-02-28'],
      [true, '2026-02-28', '2026-03-01'],
      [true, '2026-12-20', '2027-01-01'],
      [false, '2026-03-29T01:30:00Z', '2026-03-29T01:45:00Z'],
      [true, '2028-02-29', '2028-03-01'],
    ]);
  });

  test('keeps commas, semicolons, quotes and letters beyond ASCII (RFC 5545, 3.3.11)', () => {
    const summaries = parsed(written()).events.map(({ summary }) => summary);
    expect(summaries[0]).toBe('G-012 Ember; the "old", dark one: no prey yet');
    expect(summaries[4]).toBe(`Ö${'ö'.repeat(90)}: recover the skin`);
  });

  test('folds lines at 75 octets and ends them with CRLF (RFC 5545, 3.1)', () => {
    const lines = written().split('\r\n');
    expect(lines.length).toBeGreaterThan(40);
    expect(lines.filter((line) => new TextEncoder().encode(line).length > 75)).toEqual([]);
    expect(written().replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
  });

  test('moves an entry by the same name and a higher sequence (RFC 5545, 3.8.7.4)', () => {
    const [before] = parsed(written(ENTRIES.slice(0, 1))).events;
    const later = parsed(
      written([{ ...(ENTRIES[0] as CalendarEntry & { kind: 'feeding-hold' }), until: '2026-03-01' }], '2026-02-01T12:00:01.000Z'),
    );
    expect(later.events[0]?.uid).toBe(before?.uid);
    expect(later.events[0]?.sequence).toBe((before?.sequence ?? 0) + 1);
    expect(later.events[0]?.endDate.toString()).toBe('2026-03-01');
  });

  test('calls off what is not due any more, by its name and a higher sequence (RFC 5545, 3.8.1.11)', () => {
    const uid = 'molt-concern.o1@exuviary';
    const before = parsed(written()).events.find((event) => event.uid === uid);
    const later = parsed(written([{ uid, specimenId: 's2', kind: 'not-due', was: 'molt-concern' }], '2026-02-02T12:00:00.000Z'));
    const [event] = later.events;
    expect([event?.uid, event?.summary]).toEqual([uid, 'Canceled: Å-7: still molting?']);
    expect(event?.component.getFirstPropertyValue('status')).toBe('CANCELLED');
    expect(event?.sequence).toBe((before?.sequence ?? 0) + 86_400);
    expect(event?.endDate.toString()).toBe('2020-01-02');
    expect(before?.component.getFirstPropertyValue('status')).toBeNull();
  });

  test('has no lower sequence after the clock was set back than the records that were made before', () => {
    const ahead = parsed(written(ENTRIES, '2026-02-09T12:00:00.000Z', '2026-02-09T12:00:00.000Z')).events[0]?.sequence ?? Number.NaN;
    expect(parsed(written(ENTRIES, '2026-02-01T12:00:00.000Z', '2026-02-09T12:00:00.000Z')).events[0]?.sequence).toBe(ahead);
    expect(parsed(written(ENTRIES, '2026-02-09T12:00:01.000Z', '2026-02-09T12:00:00.000Z')).events[0]?.sequence).toBe(ahead + 1);
  });

  test('a hold of no days is still one day in a calendar', () => {
    const none = parsed(written([{ uid: 'u', specimenId: 's1', kind: 'feeding-hold', from: '2026-02-28', until: '2026-02-28' }]));
    expect(none.events[0]?.endDate.toString()).toBe('2026-03-01');
  });

  test('without entries it is still a calendar', () => expect(parsed(written([])).events).toEqual([]));
});
