import { expect } from 'vitest';
import type { LiveSignDraft } from '../../../src/domain/sexing/live/liveSign.ts';
import { unsexedDraft } from '../drafts.ts';
import { type Exchange, fails, type Memory, recall, succeeds } from '../exchange.ts';

const exuvia = (memory: Memory) => ({ exuviaId: recall(memory, 'exuvia') });
const specimen = (memory: Memory) => ({ specimenId: recall(memory, 'specimen') });

const bulbs = (memory: Memory): LiveSignDraft => ({
  finding: { kind: 'palpal-bulbs', seen: true, ultimateMoltId: recall(memory, 'molt') },
  seenOn: '2025-03-20',
  observer: 'R. Reader',
  photoIds: [],
  notes: '',
});

const begun = { ...unsexedDraft, sex: null, reader: null, step: 'look' as const };

const underWayStory: readonly Exchange[] = [
  succeeds(
    'PUT /api/exuviae/{exuviaId}/examination',
    'keeps a reading that was left',
    (memory) => ({ path: exuvia(memory), body: { reading: begun }, version: Number(recall(memory, 'under way')) }),
    (kept, _, memory) => {
      expect(kept).toMatchObject({ reading: { step: 'look', sex: null }, photosGone: [] });
      memory.set('kept', String(kept.version));
    },
  ),
  fails('PUT /api/exuviae/{exuviaId}/examination', 'writes over no newer one', 'changed-meanwhile', 412, (memory) => ({
    path: exuvia(memory),
    body: { reading: null },
    version: Number(recall(memory, 'under way')),
  })),
  fails('PUT /api/exuviae/{exuviaId}/examination', 'asks which version is changed', 'version-missing', 428, (memory) => ({
    path: exuvia(memory),
    body: { reading: null },
  })),
  fails('POST /api/exuviae/{exuviaId}/determinations', 'refuses a pin on a photo that is no evidence', 'pin-misplaced', 422, (memory) => ({
    path: exuvia(memory),
    body: {
      ...unsexedDraft,
      pins: [{ question: 'receptaclesSeen' as const, photoId: recall(memory, 'photo'), mark: null }],
      readingVersion: 0,
      gradeForSkin: null,
    },
  })),
  fails('POST /api/exuviae/{exuviaId}/determinations', 'ends no reading that was answered since', 'changed-meanwhile', 412, (memory) => ({
    path: exuvia(memory),
    body: { ...unsexedDraft, readingVersion: Number(recall(memory, 'under way')), gradeForSkin: null },
  })),
  succeeds(
    'POST /api/exuviae/{exuviaId}/determinations',
    'signs "anomalous" by hand, with a place on the picture',
    (memory) => ({
      path: exuvia(memory),
      body: {
        ...unsexedDraft,
        sex: 'anomalous' as const,
        evidencePhotoIds: [recall(memory, 'photo')],
        pins: [
          {
            question: 'receptaclesSeen' as const,
            photoId: recall(memory, 'photo'),
            mark: { kind: 'point' as const, at: { xPx: 12.5, yPx: 40 } },
          },
        ],
        readingVersion: Number(recall(memory, 'kept')),
        gradeForSkin: null,
      },
    }),
    (signed, _, memory) => {
      expect(signed).toMatchObject({ sex: 'anomalous', level: null, pins: [{ mark: { at: { xPx: 12.5 } } }] });
      expect(signed.assessment).toMatchObject({ modelVersion: '5.0', band: 'unsexed', genus: { genus: 'Aphonopelma', profileVersion: 0 } });
      memory.set('anomalous', signed.id);
    },
  ),
  succeeds(
    'GET /api/exuviae/{exuviaId}/examination',
    'has no reading under way once it is signed',
    (memory) => ({ path: exuvia(memory) }),
    (sheet) => {
      expect(sheet.underWay.reading).toBeNull();
      expect(sheet.sign).toEqual({ sex: 'anomalous', level: null, conflict: false });
      expect(sheet.fates.map(({ fate }) => fate)).toEqual(['withdrawn', 'stands']);
    },
  ),
  succeeds('POST /api/determinations/{determinationId}/withdrawal', 'takes "anomalous" back', (memory) => ({
    path: { determinationId: recall(memory, 'anomalous') },
    body: { reason: 'Only one odd skin.' },
  })),
];

const liveStory: readonly Exchange[] = [
  succeeds(
    'POST /api/specimens/{specimenId}/live-signs',
    'records bulbs with the ultimate molt',
    (memory) => ({ path: specimen(memory), body: bulbs(memory) }),
    (sign, _, memory) => void memory.set('live sign', sign.id),
  ),
  fails('POST /api/specimens/{specimenId}/live-signs', 'takes no bulbs from before that molt', 'bulbs-before-molt', 422, (memory) => ({
    path: specimen(memory),
    body: { ...bulbs(memory), seenOn: '2024-12-31' },
  })),
  fails('POST /api/specimens/{specimenId}/live-signs', 'takes none from before it hatched', 'date-before-hatching', 422, (memory) => ({
    path: specimen(memory),
    body: { ...bulbs(memory), seenOn: '1990-12-31' },
  })),
  fails('POST /api/specimens/{specimenId}/live-signs', 'takes no photo of a skin', 'photo-not-of-animal', 422, (memory) => ({
    path: specimen(memory),
    body: { ...bulbs(memory), photoIds: [recall(memory, 'photo')] },
  })),
  fails('POST /api/specimens/{specimenId}/live-signs', 'takes no ultimate molt without bulbs', 'input-invalid', 400, (memory) => ({
    path: specimen(memory),
    body: { ...bulbs(memory), finding: { kind: 'palpal-bulbs' as const, seen: false, ultimateMoltId: recall(memory, 'molt') } },
  })),
  succeeds(
    'GET /api/specimens/{specimenId}/live-signs',
    'lists it',
    (memory) => ({ path: specimen(memory) }),
    (signs) => expect(signs).toHaveLength(1),
  ),
  succeeds(
    'GET /api/exuviae/{exuviaId}/examination',
    'carries it in the evidence, as bands and not as decimals',
    (memory) => ({ path: exuvia(memory) }),
    (sheet) => {
      // Without a photo of them, bulbs are no more than strong.
      expect(sheet.sign).toEqual({ sex: 'male', level: 'strong', conflict: false });
      expect(sheet.evidence).toMatchObject({
        towards: 'male',
        items: [{ kind: 'palpal-bulbs', weight: 'decisive', numbers: ['bulbs.told'] }],
      });
      expect(JSON.stringify(sheet.evidence)).not.toMatch(/\d\.\d/);
    },
  ),
  succeeds('POST /api/live-signs/{liveSignId}/withdrawal', 'takes it back with the reason', (memory) => ({
    path: { liveSignId: recall(memory, 'live sign') },
    body: { reason: 'Swollen palps, no bulbs.' },
  })),
  fails('POST /api/live-signs/{liveSignId}/withdrawal', 'takes nothing back twice', 'already-withdrawn', 409, (memory) => ({
    path: { liveSignId: recall(memory, 'live sign') },
    body: { reason: 'Again.' },
  })),
];

const profileStory: readonly Exchange[] = [
  succeeds(
    'GET /api/genera',
    'lists the profiles',
    () => ({}),
    (profiles) => expect(profiles.length).toBeGreaterThan(48),
  ),
  succeeds(
    'PUT /api/genera/{genus}',
    'goes back to the shipped profile, with a note',
    () => ({ path: { genus: 'haplopelma' }, body: { profile: null, note: 'No skins of my own yet', by: 'R. Reader' }, version: 0 }),
    ({ profile, edits }) => {
      expect(profile).toMatchObject({ genus: 'Cyriopagopus', known: true, version: 1 });
      expect(edits).toMatchObject([{ genus: 'Cyriopagopus', note: 'No skins of my own yet' }]);
    },
  ),
  fails('PUT /api/genera/{genus}', 'writes over no newer edit', 'changed-meanwhile', 412, () => ({
    path: { genus: 'Cyriopagopus' },
    body: { profile: null, note: 'Again', by: 'R. Reader' },
    version: 0,
  })),
  succeeds(
    'GET /api/genera/{genus}',
    'tells a genus it does not know',
    () => ({ path: { genus: 'Nonsensia' } }),
    ({ profile, shipped }) => expect([profile.known, shipped]).toEqual([false, null]),
  ),
  fails('GET /api/genera/{genus}', 'knows no genus of two words', 'not-found', 404, () => ({ path: { genus: 'two words' } })),
];

const modelStory: readonly Exchange[] = [
  succeeds(
    'GET /api/evidence-model',
    'shows every number with its standing',
    () => ({}),
    ({ version, numbers, changes }) => {
      expect([version, changes]).toEqual(['5.0', []]);
      expect(numbers.find(({ id }) => id === 'seen.C')).toMatchObject({ value: 0.85, basis: 'judgement' });
    },
  ),
  succeeds(
    'PUT /api/evidence-model',
    'changes a number and keeps the reason',
    () => ({ body: { adjustments: { 'seen.C': 0.8 }, by: 'R. Reader', note: 'Own skins' }, version: 0 }),
    ({ version, numbers, changes }) => {
      expect([version, changes.length]).toEqual(['5.1', 1]);
      expect(numbers.find(({ id }) => id === 'seen.C')).toMatchObject({ value: 0.8, shipped: 0.85, basis: 'keeper' });
    },
  ),
  fails('PUT /api/evidence-model', 'takes no chance above one', 'number-out-of-range', 422, () => ({
    body: { adjustments: { 'seen.C': 1.2 }, by: 'R. Reader', note: 'Surely' },
    version: 1,
  })),
  fails('PUT /api/evidence-model', 'writes over no newer change', 'changed-meanwhile', 412, () => ({
    body: { adjustments: {}, by: 'R. Reader', note: 'Back' },
    version: 0,
  })),
];

const statementStory: readonly Exchange[] = [
  succeeds(
    'GET /api/specimens/{specimenId}/sex-statement',
    'says "unsexed" of an animal whose readings were withdrawn',
    (memory) => ({ path: specimen(memory), query: { ifWrong: 'refund' as const, until: '2026-12-31' } }),
    (statement) => {
      expect(statement).toMatchObject({ claim: 'Sex: unsexed.', facts: { leading: null, carrying: [], shown: [] } });
      expect(statement.text).toContain('If it proves wrong: Refund, until 31 Dec 2026');
    },
  ),
  succeeds(
    'GET /api/specimens/{specimenId}/sex-statement.pdf',
    'says it on one page',
    (memory) => ({ path: specimen(memory) }),
    (_, response) => expect(response.headers.get('content-type')).toBe('application/pdf'),
  ),
  succeeds(
    'GET /api/outcomes',
    'has nothing to score before a proof',
    () => ({}),
    (log) => expect(log).toEqual({ counts: [], provedAnimals: 0, contradictoryProofs: [] }),
  ),
];

export const evidenceStory: readonly Exchange[] = [...underWayStory, ...liveStory, ...profileStory, ...modelStory, ...statementStory];
