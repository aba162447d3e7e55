import { expect } from 'vitest';
import type { ObservationDraft } from '../../../src/domain/care/observation.ts';
import { type Exchange, fails, type Memory, recall, succeeds } from '../exchange.ts';

const specimen = (memory: Memory) => ({ specimenId: recall(memory, 'specimen') });

function draft(kind: ObservationDraft['kind'], at: string): ObservationDraft {
  return { kind, moment: { at, offset: '+02:00' }, observer: 'R. Reader', note: '', source: { kind: 'hand' }, span: null };
}

export const watchStory: readonly Exchange[] = [
  succeeds(
    'POST /api/specimens/{specimenId}/observations',
    'notes what was seen',
    (memory) => ({ path: specimen(memory), body: draft('turned-over', '2026-06-15T08:00:00.000Z') }),
    (observation, _, memory) => {
      expect(observation).toMatchObject({ kind: 'turned-over', specimenId: recall(memory, 'specimen') });
      memory.set('observation', observation.id);
    },
  ),
  fails('POST /api/specimens/{specimenId}/observations', 'begins no second molt', 'molt-under-way', 409, (memory) => ({
    path: specimen(memory),
    body: draft('turned-over', '2026-06-15T09:00:00.000Z'),
  })),
  fails('POST /api/specimens/{specimenId}/observations', 'ends no molt before it began', 'molt-ends-before-start', 422, (memory) => ({
    path: specimen(memory),
    body: draft('free-of-skin', '2026-06-15T07:00:00.000Z'),
  })),
  fails('POST /api/specimens/{specimenId}/observations', 'takes nothing from the future', 'seen-in-future', 422, (memory) => ({
    path: specimen(memory),
    body: draft('ate', '2026-06-16T07:00:00.000Z'),
  })),
  fails('POST /api/specimens/{specimenId}/observations', 'takes no time from a photo that is not there', 'not-found', 404, (memory) => ({
    path: specimen(memory),
    body: {
      ...draft('legs-free', '2026-06-15T09:00:00.000Z'),
      source: { kind: 'photo' as const, photoId: 'no such photo', offsetAssumed: true },
    },
  })),
  fails('POST /api/specimens/{specimenId}/observations', 'takes no time from a photo of a skin', 'photo-not-of-animal', 422, (memory) => ({
    path: specimen(memory),
    body: {
      ...draft('legs-free', '2026-06-15T09:00:00.000Z'),
      source: { kind: 'photo' as const, photoId: recall(memory, 'photo'), offsetAssumed: true },
    },
  })),
  fails('POST /api/specimens/{specimenId}/observations', 'wants a span exactly where one was measured', 'input-invalid', 400, (memory) => ({
    path: specimen(memory),
    body: draft('span-measured', '2026-06-15T09:00:00.000Z'),
  })),
  succeeds(
    'GET /api/watch',
    'has the molt under way first',
    () => ({}),
    (board, _, memory) => {
      expect(board.items[0]).toMatchObject({
        specimenId: recall(memory, 'specimen'),
        action: 'look-in',
        need: { kind: 'molting', timer: { elapsedMinutes: expect.closeTo(240, 0), state: 'usual' } },
      });
      expect(board.animals.map(({ specimen: { code } }) => code)).toContain('T-01');
    },
  ),
  succeeds('POST /api/specimens/{specimenId}/observations', 'ends the molt', (memory) => ({
    path: specimen(memory),
    body: draft('free-of-skin', '2026-06-15T11:00:00.000Z'),
  })),
  succeeds('POST /api/specimens/{specimenId}/observations', 'notes a sperm web', (memory) => ({
    path: specimen(memory),
    body: draft('sperm-web', '2026-06-15T11:30:00.000Z'),
  })),
  succeeds(
    'GET /api/watch/calendar.ics',
    'sends holds and checks as a calendar',
    () => ({}),
    async (_, response, memory) => {
      expect(response.headers.get('content-type')).toBe('text/calendar; charset=utf-8');
      const text = await response.text();
      expect(text).toMatch(/^BEGIN:VCALENDAR\r\n/);
      expect(text).toContain(`UID:feeding-hold.${recall(memory, 'specimen')}@exuviary`.slice(0, 60));
      const events = text.replaceAll('\r\n ', '').split('BEGIN:VEVENT');
      const concern = events.find((event) => event.includes(`UID:molt-concern.${recall(memory, 'specimen')}@exuviary`));
      expect(concern).toContain('STATUS:CANCELLED');
    },
  ),
  succeeds(
    'GET /api/watch/pairing',
    'makes no male of a web that was merely noted',
    () => ({}),
    (pairing, _, memory) => {
      expect(pairing).toMatchObject({
        males: [],
        unconfirmed: [{ specimenId: recall(memory, 'specimen'), why: 'web-noted', spermWebsOn: ['2026-06-15'] }],
      });
    },
  ),
  succeeds(
    'DELETE /api/observations/{observationId}',
    'removes what was noted wrongly',
    (memory) => ({ path: { observationId: recall(memory, 'observation') } }),
    (removal, _, memory) => {
      expect(removal.observations).toBe(1);
      memory.set('removed observation', removal.id);
    },
  ),
  succeeds(
    'GET /api/removals',
    'says what it was',
    () => ({}),
    (pending) => {
      expect(pending[0]?.thing).toEqual({
        kind: 'observation',
        code: 'T-01',
        seen: 'turned-over',
        at: '2026-06-15T08:00:00.000Z',
        utcOffset: '+02:00',
      });
    },
  ),
  succeeds('POST /api/removals/{removalId}/restoration', 'puts it back', (memory) => ({
    path: { removalId: recall(memory, 'removed observation') },
  })),
  succeeds(
    'GET /api/specimens/{specimenId}/observations',
    'lists them by the time they were seen',
    (memory) => ({ path: specimen(memory) }),
    (observations) => expect(observations.map(({ kind }) => kind)).toEqual(['turned-over', 'free-of-skin', 'sperm-web']),
  ),
  succeeds(
    'GET /api/specimens/{specimenId}',
    'has them on the line of its life',
    (memory) => ({ path: specimen(memory) }),
    (page) => {
      expect(page.observations).toHaveLength(3);
      expect(page.lifeLine.map(({ on }) => on)).toEqual(page.lifeLine.map(({ on }) => on).toSorted());
      expect(page.lifeLine.filter(({ kind }) => kind === 'observation')).toHaveLength(3);
    },
  ),
];
