import { expect } from 'vitest';
import type { z } from 'zod';
import type { RoughScale } from '../../../src/domain/finding/refinement.ts';
import { TaskSnapshot } from '../../../src/domain/intake/task.ts';
import { CARD_CAMERA, CARD_LAYOUT, cardPhoto } from '../../support/cardPhoto.ts';
import { cardMarks } from '../drafts.ts';
import { type Exchange, fails, type Memory, recall, succeeds } from '../exchange.ts';

/** As sent: the compiler widens literals on the way through the exchange. */
const rough = (sent: z.input<typeof RoughScale>) => sent;
const picture = await cardPhoto();
const card = (memory: Memory) => ({ photoId: recall(memory, 'photo of the card') });
const printCheck = { printer: 'Study', barAMm: 49.6, barBMm: 49.8, readingStandardUncertaintyMm: 0.03, checkedOn: '2026-05-01' };
/** On the ticks of the rule along the upper edge, at a millimeter of it. */
const onRule = (mm: number) => CARD_CAMERA.see(CARD_LAYOUT.frameLeftMm + 10 + mm, CARD_LAYOUT.frameTopMm + 1);
/** Plain ground. */
const BESIDE_THE_CARD: typeof cardMarks.corners = [
  { xPx: 10, yPx: 8 },
  { xPx: 120, yPx: 8 },
  { xPx: 120, yPx: 78 },
  { xPx: 10, yPx: 78 },
];
const nowhere = { xPx: -20, yPx: 30 };

/** On a photo of the scale card of its own. */
export const findingStory: readonly Exchange[] = [
  succeeds(
    'POST /api/intakes',
    'hears of a photo of the scale card',
    () => ({ body: { files: [{ name: 'card.png', byteLength: picture.byteLength }] } }),
    ({ intakeId }, _, memory) => {
      memory.set('intake of the card', intakeId);
    },
  ),
  succeeds('PUT /api/intakes/{intakeId}/files/{index}', 'takes it', (memory) => ({
    path: { intakeId: recall(memory, 'intake of the card'), index: '0' },
    body: picture,
  })),
  succeeds(
    'POST /api/imports',
    'imports it',
    (memory) => ({ body: { intakeId: recall(memory, 'intake of the card') } }),
    (snapshot, _, memory) => {
      memory.set('import of the card', snapshot.id);
    },
  ),
  succeeds(
    'GET /api/tasks/{taskId}/events',
    'tells its photo',
    (memory) => ({ path: { taskId: recall(memory, 'import of the card') } }),
    async (_, response, memory) => {
      const last = [...(await response.text()).matchAll(/^data: (.*)$/gm)].at(-1)?.[1] ?? '';
      const outcome = TaskSnapshot.parse(JSON.parse(last)).files[0]?.outcome;
      if (outcome?.kind !== 'added') throw new Error(`Expected the card to be added but it is ${outcome?.kind}`);
      memory.set('photo of the card', outcome.photoId);
    },
  ),
  succeeds(
    'GET /api/photos/{photoId}/proposals',
    'sees the card without a click',
    (memory) => ({ path: card(memory) }),
    (proposals, _, memory) => {
      const [first] = proposals;
      expect(first).toMatchObject({
        // No printer was measured yet: as uncertain as any.
        marks: { kind: 'points', object: 'scale-card', print: { xFactor: 1, yFactor: 1 }, printCheck: null },
        evidence: { kind: 'markers', points: 60, sizeAssumed: false },
      });
      // The rules printed on the card are no rules of their own.
      expect(proposals.map(({ marks }) => marks.kind)).not.toContain('rule-ticks');
      memory.set('proposals', JSON.stringify(proposals));
    },
  ),
  succeeds(
    'GET /api/photos/{photoId}/proposals',
    'tells the same again',
    (memory) => ({ path: card(memory) }),
    (proposals, _, memory) => expect(proposals).toEqual(JSON.parse(recall(memory, 'proposals'))),
  ),
  fails('GET /api/photos/{photoId}/proposals', 'does not know another photo', 'not-found', 404, () => ({ path: { photoId: 'none' } })),
  succeeds(
    'PUT /api/photos/{photoId}/calibration',
    'takes the proposal over as it is',
    (memory) => ({
      path: card(memory),
      version: 0,
      body: { marks: JSON.parse(recall(memory, 'proposals'))[0].marks },
    }),
    (kept) => expect(kept).toMatchObject({ version: 1, marks: { kind: 'points' } }),
  ),
  succeeds(
    'POST /api/print-checks',
    'keeps what a caliper read on a printed card',
    () => ({ body: printCheck }),
    (kept, _, memory) => {
      expect(kept).toMatchObject(printCheck);
      memory.set('print check', kept.id);
    },
  ),
  fails('POST /api/print-checks', 'refuses a bar read in centimeters', 'input-invalid', 400, () => ({
    body: { ...printCheck, barBMm: 5 },
  })),
  fails('POST /api/print-checks', 'refuses one from tomorrow', 'date-in-future', 422, () => ({
    body: { ...printCheck, checkedOn: '2026-06-18' },
  })),
  succeeds(
    'GET /api/print-checks',
    'lists it',
    () => ({}),
    (checks, _, memory) => expect(checks).toEqual([{ ...printCheck, id: recall(memory, 'print check') }]),
  ),
  succeeds(
    'GET /api/photos/{photoId}/proposals',
    'takes the true size of the card from it, and says so',
    (memory) => ({ path: card(memory) }),
    ([first], _, memory) => {
      expect(first?.marks).toMatchObject({
        print: { xFactor: 49.6 / 50, yFactor: 49.8 / 50 },
        printCheck: { id: recall(memory, 'print check'), printer: 'Study', checkedOn: '2026-05-01' },
      });
    },
  ),
  succeeds(
    'DELETE /api/print-checks/{printCheckId}',
    'removes it',
    (memory) => ({ path: { printCheckId: recall(memory, 'print check') } }),
    (removal, _, memory) => {
      memory.set('removal of the print check', removal.id);
    },
  ),
  succeeds(
    'GET /api/removals',
    'can put it back, by its name',
    () => ({}),
    ([first]) => expect(first?.thing).toEqual({ kind: 'print-check', printer: 'Study', checkedOn: '2026-05-01' }),
  ),
  succeeds('POST /api/removals/{removalId}/restoration', 'puts it back', (memory) => ({
    path: { removalId: recall(memory, 'removal of the print check') },
  })),
  succeeds(
    'GET /api/print-checks',
    'has it again as it was',
    () => ({}),
    (checks, _, memory) => expect(checks).toEqual([{ ...printCheck, id: recall(memory, 'print check') }]),
  ),
  succeeds('DELETE /api/print-checks/{printCheckId}', 'removes it again', (memory) => ({
    path: { printCheckId: recall(memory, 'print check') },
  })),
  fails('DELETE /api/print-checks/{printCheckId}', 'does not know it any more', 'not-found', 404, (memory) => ({
    path: { printCheckId: recall(memory, 'print check') },
  })),
  succeeds(
    'POST /api/photos/{photoId}/refinement',
    'finds all ticks between two clicks on a rule',
    (memory) => ({ path: card(memory), body: rough({ kind: 'rule', ends: [onRule(0), onRule(170)], graduation: 'millimeter' }) }),
    ({ marks, evidence }) => {
      expect(marks).toMatchObject({ kind: 'rule-ticks', graduationMm: 1, heightMm: 0 });
      if (evidence.kind !== 'ticks') throw new Error(`Expected ticks but received ${evidence.kind}`);
      // Some are too faint at this distance; none is numbered beyond the 171 drawn.
      expect(evidence.found).toBeGreaterThan(150);
      expect(evidence.found + evidence.missing.length).toBe(171);
      expect(evidence).toMatchObject({ graduationAssumed: false });
    },
  ),
  fails('POST /api/photos/{photoId}/refinement', 'refuses two clicks on one place', 'scale-points-coincide', 422, (memory) => ({
    path: card(memory),
    body: rough({ kind: 'rule', ends: [onRule(30), onRule(30)], graduation: 'millimeter' }),
  })),
  fails('POST /api/photos/{photoId}/refinement', 'finds no card where there is none', 'sides-not-found', 422, (memory) => ({
    path: card(memory),
    body: rough({ kind: 'rectangle', marks: { ...cardMarks, corners: BESIDE_THE_CARD } }),
  })),
  fails('POST /api/photos/{photoId}/refinement', 'refuses a click beside the picture', 'points-outside-picture', 422, (memory) => ({
    path: card(memory),
    body: rough({ kind: 'coin', disk: { coin: 'us-cent' }, at: [nowhere] }),
  })),
  fails('POST /api/photos/{photoId}/refinement', 'refuses three clicks on one line', 'points-on-a-line', 422, (memory) => ({
    path: card(memory),
    body: rough({ kind: 'coin', disk: { coin: 'euro-2' }, at: [onRule(0), onRule(10), onRule(20)] }),
  })),
  fails('POST /api/photos/{photoId}/refinement', 'refuses corners that run the wrong way', 'corners-mirrored', 422, (memory) => ({
    path: card(memory),
    body: rough({
      kind: 'rectangle',
      marks: { ...cardMarks, corners: cardMarks.corners.toReversed() as unknown as typeof cardMarks.corners },
    }),
  })),
  fails('POST /api/photos/{photoId}/refinement', 'refuses a coin it does not know', 'input-invalid', 400, (memory) => ({
    path: card(memory),
    body: rough({ kind: 'coin', disk: { coin: 'doubloon' as 'us-cent' }, at: [onRule(0)] }),
  })),
  fails('POST /api/photos/{photoId}/refinement', 'does not know another photo', 'not-found', 404, () => ({
    path: { photoId: 'none' },
    body: rough({ kind: 'coin', disk: { coin: 'us-cent' }, at: [onRule(0)] }),
  })),
  succeeds(
    'GET /api/scale-card.pdf',
    'prints the scale card',
    () => ({ query: { sheet: 'letter' as const } }),
    async (_, response) => {
      expect(response.headers.get('content-type')).toBe('application/pdf');
      // ISO 32000-2:2020, 7.5.2.
      expect((await response.text()).slice(0, 5)).toBe('%PDF-');
    },
  ),
  fails('GET /api/scale-card.pdf', 'knows no other sheets', 'input-invalid', 400, () => ({ query: { sheet: 'a0' as 'a4' } })),
];
