import { expect } from 'vitest';
import { exuviaDraft, moltDraft, specimenDraft, unsexedDraft } from '../drafts.ts';
import { type Exchange, fails, type Memory, recall, succeeds } from '../exchange.ts';

const specimen = (memory: Memory) => ({ specimenId: recall(memory, 'specimen') });
const molt = (memory: Memory) => ({ moltId: recall(memory, 'molt') });
const exuvia = (memory: Memory) => ({ exuviaId: recall(memory, 'exuvia') });

export const specimenStory: readonly Exchange[] = [
  succeeds(
    'POST /api/specimens',
    'adds an animal',
    () => ({ body: specimenDraft }),
    (added, _, memory) => {
      expect(added).toMatchObject({ ...specimenDraft, version: 1, sample: false });
      memory.set('specimen', added.id);
    },
  ),
  fails('POST /api/specimens', 'refuses the same code again', 'code-taken', 409, () => ({ body: { ...specimenDraft, code: 't-01' } })),
  fails('POST /api/specimens', 'refuses an animal acquired tomorrow', 'date-in-future', 422, () => ({
    body: { ...specimenDraft, code: 'T-02', acquiredOn: '2026-06-18' },
  })),
  fails('POST /api/specimens', 'refuses an animal acquired before it hatched', 'hatched-after-acquired', 422, () => ({
    body: { ...specimenDraft, code: 'T-02', acquiredOn: '2023-05-31' },
  })),
  succeeds(
    'PUT /api/specimens/{specimenId}',
    'changes it',
    (memory) => ({
      path: specimen(memory),
      version: 1,
      body: { ...specimenDraft, notes: 'Digs at night.' },
    }),
    (changed) => expect(changed).toMatchObject({ version: 2, notes: 'Digs at night.' }),
  ),
  fails('PUT /api/specimens/{specimenId}', 'refuses a change based on an older version', 'changed-meanwhile', 412, (memory) => ({
    path: specimen(memory),
    version: 1,
    body: specimenDraft,
  })),
  fails('PUT /api/specimens/{specimenId}', 'refuses a change based on no version', 'version-missing', 428, (memory) => ({
    path: specimen(memory),
    body: specimenDraft,
  })),
  fails('PUT /api/specimens/{specimenId}', 'does not know another animal', 'not-found', 404, () => ({
    path: { specimenId: 'no such animal' },
    version: 1,
    body: { ...specimenDraft, code: 'T-03' },
  })),
  succeeds(
    'POST /api/specimens/{specimenId}/molts',
    'adds a molt',
    (memory) => ({ path: specimen(memory), body: moltDraft }),
    (added, _, memory) => {
      expect(added).toMatchObject(moltDraft);
      memory.set('molt', added.id);
    },
  ),
  fails('POST /api/specimens/{specimenId}/molts', 'refuses a molt whose dates are reversed', 'dates-reversed', 422, (memory) => ({
    path: specimen(memory),
    body: { ...moltDraft, happenedFrom: '2025-09-02', happenedTo: '2025-09-01', instarShed: 6 },
  })),
  fails('POST /api/specimens/{specimenId}/molts', 'refuses a molt of a slip in the year', 'date-too-early', 422, (memory) => ({
    path: specimen(memory),
    body: { ...moltDraft, happenedFrom: '1850-09-01', happenedTo: '1850-09-01', instarShed: null },
  })),
  fails('PUT /api/specimens/{specimenId}', 'refuses to hatch it after a molt', 'date-before-hatching', 422, (memory) => ({
    path: specimen(memory),
    version: 2,
    body: { ...specimenDraft, acquiredOn: null, hatchedOn: '2026-06-01' },
  })),
  fails('POST /api/specimens/{specimenId}/molts', 'refuses a later molt of an earlier instar', 'instars-out-of-order', 422, (memory) => ({
    path: specimen(memory),
    body: { ...moltDraft, happenedFrom: '2025-09-01', happenedTo: '2025-09-01', instarShed: 4 },
  })),
  fails('POST /api/specimens/{specimenId}/molts', 'refuses a molt both clean and slow', 'outcomes-contradict', 422, (memory) => ({
    path: specimen(memory),
    body: {
      ...moltDraft,
      happenedFrom: '2025-09-01',
      happenedTo: '2025-09-01',
      instarShed: 6,
      outcomes: ['clean' as const, 'slow' as const],
    },
  })),
  fails(
    'PUT /api/specimens/{specimenId}',
    'refuses an instar at the acquisition above one shed later',
    'acquired-instar-contradicted',
    422,
    (memory) => ({ path: specimen(memory), version: 2, body: { ...specimenDraft, acquiredInstar: 6 } }),
  ),
  succeeds(
    'PUT /api/molts/{moltId}',
    'changes the molt',
    (memory) => ({ path: molt(memory), version: 1, body: { ...moltDraft, outcomes: ['slow' as const] } }),
    (changed) => expect(changed).toMatchObject({ version: 2, outcomes: ['slow'] }),
  ),
  succeeds(
    'POST /api/molts/{moltId}/exuvia',
    'records the skin',
    (memory) => ({ path: molt(memory), body: exuviaDraft }),
    (added, _, memory) => {
      memory.set('exuvia', added.id);
    },
  ),
  fails('PUT /api/molts/{moltId}', 'refuses to have lost a skin that lies here', 'skin-recovered-or-not', 422, (memory) => ({
    path: molt(memory),
    version: 2,
    body: { ...moltDraft, outcomes: ['skin-not-recovered' as const] },
  })),
  fails('POST /api/molts/{moltId}/exuvia', 'refuses a second skin', 'skin-already-recorded', 409, (memory) => ({
    path: molt(memory),
    body: exuviaDraft,
  })),
  succeeds(
    'PUT /api/exuviae/{exuviaId}',
    'takes it that the skin was lost',
    (memory) => ({ path: exuvia(memory), version: 1, body: { ...exuviaDraft, recovered: false } }),
    (changed) => expect(changed).toMatchObject({ version: 2, recovered: false }),
  ),
  fails('POST /api/exuviae/{exuviaId}/determinations', 'refuses a reading of no skin', 'skin-not-recovered', 422, (memory) => ({
    path: exuvia(memory),
    body: { ...unsexedDraft, readingVersion: 0, gradeForSkin: null },
  })),
  succeeds(
    'PUT /api/exuviae/{exuviaId}',
    'changes what is known of the skin',
    (memory) => ({
      path: exuvia(memory),
      version: 2,
      body: { ...exuviaDraft, grade: 'A' as const },
    }),
    (changed) => expect(changed).toMatchObject({ version: 3, grade: 'A' }),
  ),
  succeeds(
    'GET /api/specimens',
    'lists the animal in the instar after the one it shed',
    () => ({}),
    (all) => {
      expect(all).toHaveLength(1);
      expect(all[0]).toMatchObject({
        instarNow: { number: 6, certainty: 'known' },
        recordedMolts: 1,
        lastMolt: { to: '2025-03-02' },
        sex: { sex: 'unsexed' },
        lastMeasuredSkin: null,
        nextMolt: { ownIntervals: 0, shares: { own: 0, prior: 1 }, since: { kind: 'molt', from: '2025-03-01', to: '2025-03-02' } },
      });
    },
  ),
  succeeds(
    'GET /api/specimens/{specimenId}',
    'shows the animal with its skins',
    (memory) => ({ path: specimen(memory) }),
    (page) => {
      expect(page.summary.specimen.code).toBe('T-01');
      expect(page.forecast?.due).toEqual(page.summary.nextMolt);
      expect(page.forecast?.facts).toContain('no-measured-skin');
      expect(page.molts.map(({ molt, exuvia }) => [molt.instarShed, exuvia?.grade])).toEqual([[5, 'A']]);
    },
  ),
];
