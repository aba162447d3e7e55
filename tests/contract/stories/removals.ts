import { expect } from 'vitest';
import { moltDraft, readingDraft, specimenDraft } from '../drafts.ts';
import { type Exchange, fails, recall, succeeds } from '../exchange.ts';

export const removalStory: readonly Exchange[] = [
  succeeds(
    'GET /api/removals/preview',
    'says what a removal would take',
    (memory) => ({ query: { kind: 'specimen' as const, id: recall(memory, 'specimen') } }),
    (counts) => {
      expect(counts).toMatchObject({ specimens: 1, molts: 1, exuviae: 1, determinations: 2, photosUnassigned: 1 });
    },
  ),
  succeeds(
    'DELETE /api/readings/{readingId}',
    'removes a reading',
    (memory) => ({ path: { readingId: recall(memory, 'reading') } }),
    (removal, _, memory) => {
      memory.set('removal', removal.id);
    },
  ),
  succeeds(
    'GET /api/removals',
    'lists what can be put back',
    () => ({}),
    (pending, _, memory) => {
      expect(pending[0]).toMatchObject({
        id: recall(memory, 'removal'),
        thing: { kind: 'reading', originalName: expect.any(String), pass: 1 },
        readings: 1,
      });
    },
  ),
  succeeds('POST /api/removals/{removalId}/restoration', 'puts it back', (memory) => ({ path: { removalId: recall(memory, 'removal') } })),
  fails('POST /api/removals/{removalId}/restoration', 'puts nothing back twice', 'removal-gone', 410, (memory) => ({
    path: { removalId: recall(memory, 'removal') },
  })),
  succeeds(
    'GET /api/photos/{photoId}/bench',
    'has the reading again',
    (memory) => ({ path: { photoId: recall(memory, 'photo') } }),
    (sheet) => {
      expect(sheet.readings).toMatchObject([{ ...readingDraft, pointingPx: 0.5 }, { pass: 2 }]);
    },
  ),
  succeeds(
    'DELETE /api/exuviae/{exuviaId}',
    'removes a skin with its determinations',
    (memory) => ({ path: { exuviaId: recall(memory, 'exuvia') } }),
    (removal) => {
      expect(removal).toMatchObject({ exuviae: 1, determinations: 2, photos: 0, photosUnassigned: 1 });
    },
  ),
  succeeds(
    'DELETE /api/molts/{moltId}',
    'removes a molt',
    (memory) => ({ path: { moltId: recall(memory, 'molt') } }),
    (removal) => expect(removal.molts).toBe(1),
  ),
  succeeds(
    'DELETE /api/photos/{photoId}',
    'removes a photo',
    (memory) => ({ path: { photoId: recall(memory, 'photo') } }),
    (removal) => expect(removal.photos).toBe(1),
  ),
  succeeds(
    'DELETE /api/specimens/{specimenId}',
    'removes an animal',
    (memory) => ({ path: { specimenId: recall(memory, 'specimen') } }),
    (removal) => expect(removal).toMatchObject({ specimens: 1, molts: 0 }),
  ),
  fails('POST /api/specimens/{specimenId}/molts', 'adds nothing to an animal that is gone', 'not-found', 404, (memory) => ({
    path: { specimenId: recall(memory, 'specimen') },
    body: moltDraft,
  })),
  succeeds(
    'GET /api/removals',
    'lists every one of them, newest first',
    () => ({}),
    (pending) => {
      const days = { code: 'T-01', happenedFrom: '2025-03-01', happenedTo: '2025-03-02' };
      expect(pending.slice(0, 4).map(({ thing }) => thing)).toEqual([
        { kind: 'specimen', code: 'T-01' },
        { kind: 'photo', originalName: expect.any(String) },
        { kind: 'molt', ...days },
        { kind: 'exuvia', ...days },
      ]);
    },
  ),
  succeeds('POST /api/specimens', 'lets its code be used again', () => ({ body: specimenDraft })),
];
