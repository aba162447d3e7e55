import { expect } from 'vitest';
import type { TwoPointScale } from '../../../src/domain/measuring/calibration.ts';
import { cardMarks, readingDraft } from '../drafts.ts';
import { type Exchange, fails, type Memory, recall, succeeds } from '../exchange.ts';

const photo = (memory: Memory) => ({ photoId: recall(memory, 'photo') });
const reading = (memory: Memory) => ({ readingId: recall(memory, 'reading') });

const secondPass = {
  ...readingDraft,
  pass: 2,
  landmarks: { ...readingDraft.landmarks, 'carapace-rear': { state: 'placed' as const, at: { xPx: 220, yPx: 81 } } },
};

const outside = {
  ...readingDraft,
  landmarks: { ...readingDraft.landmarks, 'carapace-rear': { state: 'placed' as const, at: { xPx: -3, yPx: 81 } } },
};

/** A length on the card's own scale, about 1.87 px for a millimeter. */
const checkMarks: TwoPointScale = {
  kind: 'two-points',
  ends: [
    { xPx: 20, yPx: 140 },
    { xPx: 113.5, yPx: 140 },
  ],
  distanceMm: 50,
  distanceStandardUncertaintyMm: 0.1,
  pointingPx: 0.5,
  heightMm: 0,
};

export const measuringStory: readonly Exchange[] = [
  succeeds(
    'PUT /api/photos/{photoId}/calibration',
    'takes the first marks',
    (memory) => ({ path: photo(memory), version: 0, body: { marks: cardMarks } }),
    (kept) => expect(kept).toMatchObject({ marks: cardMarks, version: 1 }),
  ),
  fails('PUT /api/photos/{photoId}/calibration', 'refuses marks based on older ones', 'changed-meanwhile', 412, (memory) => ({
    path: photo(memory),
    version: 0,
    body: { marks: cardMarks },
  })),
  fails('PUT /api/photos/{photoId}/calibration', 'refuses corners that give no scale', 'corners-collinear', 422, (memory) => ({
    path: photo(memory),
    version: 1,
    body: { marks: { ...cardMarks, corners: [10, 20, 30, 40].map((at) => ({ xPx: at, yPx: at })) as unknown as typeof cardMarks.corners } },
  })),
  fails('PUT /api/photos/{photoId}/calibration', 'refuses marks outside of the picture', 'points-outside-picture', 422, (memory) => ({
    path: photo(memory),
    version: 1,
    body: {
      marks: {
        ...cardMarks,
        corners: cardMarks.corners.map(({ xPx, yPx }) => ({ xPx: xPx + 9_000, yPx })) as unknown as typeof cardMarks.corners,
      },
    },
  })),
  fails('PUT /api/photos/{photoId}/calibration', 'refuses a check that gives no scale', 'corners-collinear', 422, (memory) => ({
    path: photo(memory),
    version: 1,
    body: {
      marks: cardMarks,
      check: { ...cardMarks, corners: [10, 20, 30, 40].map((at) => ({ xPx: at, yPx: at })) as unknown as typeof cardMarks.corners },
    },
  })),
  succeeds(
    'PUT /api/photos/{photoId}/calibration',
    'keeps a second object beside the first',
    (memory) => ({ path: photo(memory), version: 1, body: { marks: cardMarks, check: checkMarks } }),
    (kept) => expect(kept).toMatchObject({ marks: cardMarks, check: checkMarks, version: 2 }),
  ),
  succeeds(
    'PUT /api/photos/{photoId}/calibration',
    'lets go of the second object where none is sent',
    (memory) => ({ path: photo(memory), version: 2, body: { marks: cardMarks } }),
    (kept) => {
      expect(kept).toMatchObject({ marks: cardMarks, version: 3 });
      expect(kept.check).toBeUndefined();
    },
  ),
  fails('POST /api/photos/{photoId}/readings', 'refuses a point outside of the picture', 'points-outside-picture', 422, (memory) => ({
    path: photo(memory),
    body: outside,
  })),
  succeeds(
    'POST /api/photos/{photoId}/readings',
    'takes a reading',
    (memory) => ({ path: photo(memory), body: readingDraft }),
    (added, _, memory) => {
      expect(added).toMatchObject({ ...readingDraft, version: 1 });
      memory.set('reading', added.id);
    },
  ),
  succeeds(
    'PUT /api/readings/{readingId}',
    'takes its settled changes',
    (memory) => ({ path: reading(memory), version: 1, body: { ...readingDraft, pointingPx: 0.5 } }),
    (kept) => expect(kept).toMatchObject({ version: 2, pointingPx: 0.5 }),
  ),
  fails('PUT /api/readings/{readingId}', 'refuses a point outside of the picture', 'points-outside-picture', 422, (memory) => ({
    path: reading(memory),
    version: 2,
    body: outside,
  })),
  fails('PUT /api/readings/{readingId}', 'refuses a landmark it does not know', 'input-invalid', 400, (memory) => ({
    path: reading(memory),
    version: 2,
    body: { ...readingDraft, landmarks: { antenna: { state: 'missing' } } as object },
  })),
  succeeds(
    'GET /api/agreement',
    'says nothing while no photo was read twice',
    () => ({}),
    (agreement) => expect(agreement).toEqual({ within: [], between: [] }),
  ),
  succeeds(
    'GET /api/photos/{photoId}/bench',
    'lays all of it out',
    (memory) => ({ path: photo(memory) }),
    (sheet) => {
      expect(sheet).toMatchObject({ instar: { number: 5, certainty: 'known' }, specimen: { code: 'T-01' }, calibration: { version: 3 } });
      expect(sheet.readings).toHaveLength(1);
    },
  ),
  succeeds(
    'GET /api/bench',
    'tells the measured photos from the others',
    () => ({}),
    (candidates, _, memory) => {
      const ours = candidates.find((candidate) => candidate.photo.id === recall(memory, 'photo'));
      expect(ours).toMatchObject({ instar: { number: 5, certainty: 'known' }, specimen: { code: 'T-01' }, measured: true });
    },
  ),
  succeeds(
    'GET /api/specimens/{specimenId}/ladder',
    'lines the skin up',
    (memory) => ({ path: { specimenId: recall(memory, 'specimen') } }),
    (page) => {
      // 20 pixels of 85.60 mm / 160: 10.70 mm on the card's face.
      expect(page.ladder.rungs).toHaveLength(1);
      expect(page.ladder.rungs[0]?.carapaceLengthMm?.value).toBeCloseTo(10.7, 0);
      expect(page.gallery).toHaveLength(1);
    },
  ),
  succeeds(
    'GET /api/specimens/{specimenId}',
    'shows the size on the page of the animal',
    (memory) => ({ path: { specimenId: recall(memory, 'specimen') } }),
    (page) => {
      expect(page.summary.lastMeasuredSkin).toMatchObject({ instar: { number: 5 }, recordedMolt: 1, isOfLastMolt: true });
      expect(page.molts[0]?.sizes.carapaceLengthMm?.value).toBeCloseTo(10.7, 0);
    },
  ),
  succeeds(
    'POST /api/photos/{photoId}/readings',
    'takes a second pass, a pixel longer',
    (memory) => ({ path: photo(memory), body: secondPass }),
    (added, _, memory) => {
      memory.set('second pass', added.id);
    },
  ),
  succeeds(
    'GET /api/specimens/{specimenId}',
    'combines both passes on the page of the animal',
    (memory) => ({ path: { specimenId: recall(memory, 'specimen') } }),
    (page, _, memory) => {
      const combined = page.molts[0]?.sizes.carapaceLengthMm;
      if (!combined) throw new Error('Expected a carapace length');
      // Half a pixel of 0.535 mm longer than the first pass alone.
      expect(combined.value).toBeCloseTo(20.5 * 0.535, 0);
      expect(page.summary.lastMeasuredSkin?.carapaceLengthMm).toEqual(combined);
      memory.set('combined', JSON.stringify(combined));
    },
  ),
  succeeds(
    'GET /api/specimens',
    'lists the same size',
    () => ({}),
    (all, _, memory) => expect(all[0]?.lastMeasuredSkin?.carapaceLengthMm).toEqual(JSON.parse(recall(memory, 'combined'))),
  ),
  succeeds(
    'GET /api/specimens/{specimenId}/ladder',
    'has the same size on its rung, and the same instar',
    (memory) => ({ path: { specimenId: recall(memory, 'specimen') } }),
    (page, _, memory) => {
      expect(page.ladder.rungs[0]?.carapaceLengthMm).toEqual(JSON.parse(recall(memory, 'combined')));
      expect(page).toMatchObject({ instarNow: { number: 6, certainty: 'known' } });
    },
  ),
  succeeds(
    'GET /api/exuviae/{exuviaId}/sizes',
    'tells the Bench the same size of the skin',
    (memory) => ({ path: { exuviaId: recall(memory, 'exuvia') } }),
    (sizes, _, memory) => expect(sizes.carapaceLengthMm).toEqual(JSON.parse(recall(memory, 'combined'))),
  ),
];
