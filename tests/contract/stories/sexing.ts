import { expect } from 'vitest';
import { unsexedDraft } from '../drafts.ts';
import { type Exchange, fails, type Memory, recall, succeeds } from '../exchange.ts';

const exuvia = (memory: Memory) => ({ exuviaId: recall(memory, 'exuvia') });
const determination = (memory: Memory) => ({ determinationId: recall(memory, 'determination') });

export const sexingStory: readonly Exchange[] = [
  succeeds(
    'GET /api/exuviae/{exuviaId}/examination',
    'lays out a skin whose grade is not the one that will be read',
    (memory) => ({ path: exuvia(memory) }),
    (sheet, _, memory) => {
      expect(sheet.exuvia.grade).toBe('A');
      expect(unsexedDraft.checklist.grade).toBe('B');
      memory.set('skin version', String(sheet.exuvia.version));
    },
  ),
  fails(
    'POST /api/exuviae/{exuviaId}/determinations',
    'writes no grade over a newer record of the skin',
    'changed-meanwhile',
    412,
    (memory) => ({ path: exuvia(memory), body: { ...unsexedDraft, readingVersion: 0, gradeForSkin: { version: 1 } } }),
  ),
  succeeds(
    'POST /api/exuviae/{exuviaId}/determinations',
    'takes a signature',
    (memory) => ({
      path: exuvia(memory),
      body: {
        ...unsexedDraft,
        evidencePhotoIds: [recall(memory, 'photo')],
        readingVersion: 0,
        gradeForSkin: { version: Number(recall(memory, 'skin version')) },
      },
    }),
    (signed, _, memory) => {
      expect(signed).toMatchObject({ sex: 'unsexed', withdrawn: null });
      memory.set('determination', signed.id);
    },
  ),
  fails('POST /api/exuviae/{exuviaId}/determinations', 'refuses more than the answers support', 'level-not-supported', 422, (memory) => ({
    path: exuvia(memory),
    body: { ...unsexedDraft, sex: 'female' as const, level: 'established' as const, readingVersion: 0, gradeForSkin: null },
  })),
  fails('POST /api/exuviae/{exuviaId}/determinations', 'refuses a day before the skin was shed', 'read-before-shed', 422, (memory) => ({
    path: exuvia(memory),
    body: { ...unsexedDraft, readOn: '2001-01-01', readingVersion: 0, gradeForSkin: null },
  })),
  fails(
    'POST /api/exuviae/{exuviaId}/determinations',
    'refuses evidence of another animal',
    'evidence-of-another-animal',
    422,
    (memory) => ({
      path: exuvia(memory),
      body: { ...unsexedDraft, evidencePhotoIds: ['no such photo'], readingVersion: 0, gradeForSkin: null },
    }),
  ),
  succeeds(
    'GET /api/exuviae/{exuviaId}/examination',
    'lays out the skin and its history',
    (memory) => ({ path: exuvia(memory) }),
    (sheet, _, memory) => {
      expect(sheet).toMatchObject({ specimen: { code: 'T-01' }, molt: { instarShed: 5 }, sign: { sex: 'unsexed', conflict: false } });
      // One alone: the refused signature left nothing behind.
      expect(sheet.determinations).toHaveLength(1);
      expect(sheet.exuvia).toMatchObject({ grade: 'B', completeness: 'complete', version: Number(recall(memory, 'skin version')) + 1 });
      expect(sheet.photos).toHaveLength(1);
      expect(sheet.genus).toMatchObject({ genus: 'Aphonopelma', known: true, version: 0 });
      memory.set('under way', String(sheet.underWay.version));
      expect(sheet).toMatchObject({ instar: { number: 5, certainty: 'known' }, legSpanMm: null });
    },
  ),
  succeeds(
    'GET /api/exuviae',
    'lists the skins that can be read',
    () => ({}),
    (skins, _, memory) => {
      expect(skins).toMatchObject([
        {
          specimen: { code: 'T-01' },
          instar: { number: 5, certainty: 'known' },
          recordedMolt: 1,
          coverPhotoId: recall(memory, 'photo'),
          standingDeterminations: 1,
          begun: false,
        },
      ]);
    },
  ),
  fails('DELETE /api/photos/{photoId}', 'keeps a photo that is evidence', 'photo-in-use', 409, (memory) => ({
    path: { photoId: recall(memory, 'photo') },
  })),
  succeeds(
    'POST /api/determinations/{determinationId}/withdrawal',
    'takes it back with the reason',
    (memory) => ({
      path: determination(memory),
      body: { reason: 'Read by poor light.' },
    }),
    (withdrawn) => expect(withdrawn.withdrawn?.reason).toBe('Read by poor light.'),
  ),
  fails('POST /api/determinations/{determinationId}/withdrawal', 'takes nothing back twice', 'already-withdrawn', 409, (memory) => ({
    path: determination(memory),
    body: { reason: 'Again.' },
  })),
];
