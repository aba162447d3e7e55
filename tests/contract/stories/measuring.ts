import { expect } from 'vitest';
import { cardMarks, readingDraft } from '../drafts.ts';
import { type Exchange, fails, type Memory, recall, succeeds } from '../exchange.ts';

const photo = (memory: Memory) => ({ photoId: recall(memory, 'photo') });
const reading = (memory: Memory) => ({ readingId: recall(memory, 'reading') });

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
  fails('PUT /api/readings/{readingId}', 'refuses a landmark it does not know', 'input-invalid', 400, (memory) => ({
    path: reading(memory),
    version: 2,
    body: { ...readingDraft, landmarks: { antenna: { state: 'missing' } } as object },
  })),
  succeeds(
    'GET /api/photos/{photoId}/bench',
    'lays all of it out',
    (memory) => ({ path: photo(memory) }),
    (sheet) => {
      expect(sheet).toMatchObject({ instarShed: 5, specimen: { code: 'T-01' }, calibration: { version: 1 } });
      expect(sheet.readings).toHaveLength(1);
    },
  ),
  succeeds(
    'GET /api/bench',
    'tells the measured photos from the others',
    () => ({}),
    (candidates, _, memory) => {
      const ours = candidates.find((candidate) => candidate.photo.id === recall(memory, 'photo'));
      expect(ours).toMatchObject({ instarShed: 5, specimen: { code: 'T-01' }, measured: true });
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
      expect(page.summary.lastCarapaceLengthMm?.value).toBeCloseTo(10.7, 0);
      expect(page.molts[0]?.measurement?.quantities.map(({ name }) => name)).toContain('carapace-length');
    },
  ),
];
