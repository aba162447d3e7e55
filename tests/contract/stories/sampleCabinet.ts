import { expect } from 'vitest';
import { type Exchange, fails, recall, succeeds } from '../exchange.ts';

export const sampleStory: readonly Exchange[] = [
  succeeds(
    'POST /api/sample-cabinet',
    'fills in the sample cabinet as a task',
    () => ({}),
    (snapshot, _, memory) => {
      expect(snapshot).toMatchObject({ kind: 'sample-cabinet', total: 1 });
      memory.set('sample task', snapshot.id);
    },
  ),
  fails('POST /api/sample-cabinet', 'fills it in once', 'sample-already-here', 409, () => ({})),
  succeeds(
    'GET /api/tasks/{taskId}/events',
    'waits until it is there',
    (memory) => ({ path: { taskId: recall(memory, 'sample task') } }),
    async (_, response) => {
      expect(await response.text()).toContain('"state":"done"');
    },
  ),
  succeeds(
    'GET /api/about',
    'counts it apart',
    () => ({}),
    (about) => expect(about.samples).toBe(1),
  ),
  succeeds(
    'GET /api/specimens',
    'lists its animal',
    () => ({}),
    (all) => {
      expect(
        all.filter(({ specimen }) => specimen.sample).map(({ specimen, coverPhotoId }) => [specimen.code, coverPhotoId !== null]),
      ).toEqual([['S-1', true]]);
    },
  ),
  succeeds(
    'DELETE /api/sample-cabinet',
    'takes it away again',
    () => ({}),
    (removal) => expect(removal).toMatchObject({ specimens: 1, photos: 1 }),
  ),
  succeeds(
    'GET /api/about',
    'has none of it left',
    () => ({}),
    (about) => expect(about.samples).toBe(0),
  ),
];
