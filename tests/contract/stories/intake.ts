import { expect } from 'vitest';
import { TaskSnapshot } from '../../../src/domain/intake/task.ts';
import { smallPicture } from '../../support/smallPictures.ts';
import { exuviaDraft, skinPhotoDraft } from '../drafts.ts';
import { type Exchange, fails, type Memory, recall, succeeds } from '../exchange.ts';

const skin = await smallPicture(1, 'jpeg');
const animal = await smallPicture(2, 'png');
const words = new TextEncoder().encode('not a picture at all');
const files = [
  { name: 'skin.jpg', byteLength: skin.byteLength },
  { name: 'skin again.jpeg', byteLength: skin.byteLength },
  { name: 'animal.png', byteLength: animal.byteLength },
  { name: 'words.jpg', byteLength: words.byteLength },
  { name: 'never sent.jpg', byteLength: 10 },
];

const task = (memory: Memory) => ({ taskId: recall(memory, 'task') });
const photo = (memory: Memory) => ({ photoId: recall(memory, 'photo') });
const file = (index: number, bytes: Uint8Array<ArrayBuffer>) => (memory: Memory) => ({
  path: { intakeId: recall(memory, 'intake'), index: String(index) },
  body: bytes,
});

/** The snapshots of a whole event stream. */
function snapshotsIn(text: string): TaskSnapshot[] {
  return [...text.matchAll(/^data: (.*)$/gm)].map(([, data = '']) => TaskSnapshot.parse(JSON.parse(data)));
}

async function learnLast(response: Response, memory: Memory): Promise<TaskSnapshot> {
  const text = await response.text();
  const last = snapshotsIn(text).at(-1);
  if (!last) throw new Error('Expected at least one snapshot');
  memory.set('last event', /^id: (.*)$/m.exec(text.slice(text.lastIndexOf('id: ')))?.[1] ?? '');
  return last;
}

export const intakeStory: readonly Exchange[] = [
  succeeds(
    'POST /api/intakes',
    'hears which files will be sent',
    () => ({ body: { files } }),
    ({ intakeId }, _, memory) => {
      memory.set('intake', intakeId);
    },
  ),
  succeeds('PUT /api/intakes/{intakeId}/files/{index}', 'takes a photo', file(0, skin)),
  succeeds('PUT /api/intakes/{intakeId}/files/{index}', 'takes it again', file(1, skin)),
  succeeds('PUT /api/intakes/{intakeId}/files/{index}', 'takes another', file(2, animal)),
  succeeds('PUT /api/intakes/{intakeId}/files/{index}', 'takes what is none', file(3, words)),
  fails(
    'PUT /api/intakes/{intakeId}/files/{index}',
    'refuses a file that lost bytes on the way',
    'file-not-arrived',
    422,
    file(4, words.slice(0, 5)),
  ),
  fails('PUT /api/intakes/{intakeId}/files/{index}', 'refuses a file that was not announced', 'not-found', 404, file(5, words)),
  fails('PUT /api/intakes/{intakeId}/files/{index}', 'refuses what is no number', 'input-invalid', 400, (memory) => ({
    path: { intakeId: recall(memory, 'intake'), index: 'first' },
    body: words,
  })),
  fails('PUT /api/intakes/{intakeId}/files/{index}', 'does not know another intake', 'intake-gone', 410, () => ({
    path: { intakeId: 'no such intake', index: '0' },
    body: words,
  })),
  succeeds(
    'POST /api/imports',
    'imports them as a task',
    (memory) => ({ body: { intakeId: recall(memory, 'intake') } }),
    (snapshot, _, memory) => {
      expect(snapshot).toMatchObject({ kind: 'import', total: 5 });
      memory.set('task', snapshot.id);
    },
  ),
  succeeds(
    'GET /api/tasks/{taskId}/events',
    'tells what becomes of each file',
    (memory) => ({ path: task(memory) }),
    async (_, response, memory) => {
      const last = await learnLast(response, memory);
      expect(last).toMatchObject({ state: 'done', done: 5, total: 5 });
      const outcomes = Object.fromEntries(last.files.map(({ name, outcome }) => [name, outcome]));
      // Two files of one content: whichever came first was added.
      expect([outcomes['skin.jpg']?.kind, outcomes['skin again.jpeg']?.kind].toSorted()).toEqual(['added', 'already-here']);
      expect(outcomes['animal.png']?.kind).toBe('added');
      expect(outcomes['words.jpg']).toMatchObject({ kind: 'refused', failure: { code: 'file-not-an-image', file: 'words.jpg' } });
      expect(outcomes['never sent.jpg']).toMatchObject({ kind: 'refused', failure: { code: 'file-not-arrived' } });
      const [first, again] = [outcomes['skin.jpg'], outcomes['skin again.jpeg']];
      if (first === undefined || !('photoId' in first)) throw new Error('Expected the photo to be here');
      expect(again).toMatchObject({ photoId: first.photoId });
      memory.set('photo', first.photoId);
    },
  ),
  succeeds(
    'GET /api/tasks/{taskId}',
    'remembers the task',
    (memory) => ({ path: task(memory) }),
    (snapshot) => expect(snapshot.state).toBe('done'),
  ),
  succeeds(
    'GET /api/tasks',
    'lists it',
    () => ({}),
    (all) => expect(all.map(({ state }) => state)).toEqual(['done']),
  ),
  succeeds(
    'DELETE /api/tasks/{taskId}',
    'has nothing to stop in a task that has ended',
    (memory) => ({ path: task(memory) }),
    (snapshot) => expect(snapshot.state).toBe('done'),
  ),
  fails('GET /api/tasks/{taskId}/events', 'does not know another task', 'task-not-found', 404, () => ({
    path: { taskId: 'no such task' },
  })),
  succeeds(
    'POST /api/imports',
    'has nothing left over to go on with',
    () => ({ body: { intakeId: null } }),
    (snapshot) => {
      expect(snapshot).toMatchObject({ total: 0, files: [] });
    },
  ),
  succeeds(
    'DELETE /api/imports',
    'has nothing left over to give up',
    () => ({}),
    (given) => expect(given).toEqual({ files: 0 }),
  ),
  fails('POST /api/imports', 'imports no intake that is not there', 'intake-gone', 410, () => ({ body: { intakeId: 'no such intake' } })),
  succeeds(
    'GET /api/photos',
    'lists the photos',
    () => ({ query: { unassigned: 'true' } }),
    (photos) => {
      expect(photos.map(({ mediaType }) => mediaType).toSorted()).toEqual(['image/jpeg', 'image/png']);
    },
  ),
  succeeds(
    'GET /api/photos/{photoId}',
    'knows one of them',
    (memory) => ({ path: photo(memory) }),
    (found) => {
      expect(found).toMatchObject({ widthPx: 320, heightPx: 240, byteLength: skin.byteLength, version: 1, subject: { kind: 'none' } });
    },
  ),
  succeeds(
    'PUT /api/photos/{photoId}',
    'learns what it shows',
    (memory) => ({
      path: photo(memory),
      version: 1,
      body: skinPhotoDraft(recall(memory, 'exuvia')),
    }),
    (changed) => expect(changed).toMatchObject({ version: 2, view: 'dorsal' }),
  ),
  fails('PUT /api/photos/{photoId}', 'refuses a photo from tomorrow', 'date-in-future', 422, (memory) => ({
    path: photo(memory),
    version: 2,
    body: { ...skinPhotoDraft(recall(memory, 'exuvia')), takenOn: '2026-06-18' },
  })),
  fails('PUT /api/photos/{photoId}', 'refuses the inner side of a living animal', 'view-not-of-animal', 422, (memory) => ({
    path: photo(memory),
    version: 2,
    body: {
      ...skinPhotoDraft(recall(memory, 'exuvia')),
      subject: { kind: 'animal' as const, specimenId: recall(memory, 'specimen') },
      view: 'abdomen-inside' as const,
    },
  })),
  fails('PUT /api/exuviae/{exuviaId}', 'refuses to have lost a photographed skin', 'skin-photographed', 409, (memory) => ({
    path: { exuviaId: recall(memory, 'exuvia') },
    version: 3,
    body: { ...exuviaDraft, recovered: false },
  })),
  succeeds(
    'GET /api/photos/{photoId}/original',
    'gives back the very same bytes',
    (memory) => ({ path: photo(memory) }),
    async (_, response, memory) => {
      expect(response.headers.get('content-type')).toBe('image/jpeg');
      expect(new Uint8Array(await response.arrayBuffer())).toEqual(skin);
      memory.set('etag', response.headers.get('etag') ?? '');
    },
  ),
  succeeds(
    'GET /api/photos/{photoId}/renditions/{kind}',
    'shows it small',
    (memory) => ({ path: { ...photo(memory), kind: 'thumbnail' } }),
    async (_, response) => {
      expect(response.headers.get('content-type')).toBe('image/jpeg');
      // JPEG File Interchange Format: every file begins with the marker SOI (ISO/IEC 10918-1, B.1.1.3).
      expect([...new Uint8Array(await response.arrayBuffer()).slice(0, 2)]).toEqual([0xff, 0xd8]);
    },
  ),
  succeeds('GET /api/photos/{photoId}/renditions/{kind}', 'makes a copy that was not made before', (memory) => ({
    path: { ...photo(memory), kind: 'full' },
  })),
  fails('GET /api/photos/{photoId}/renditions/{kind}', 'knows no other copies', 'not-found', 404, (memory) => ({
    path: { ...photo(memory), kind: 'huge' },
  })),
  fails('GET /api/photos/{photoId}/original', 'does not know another photo', 'not-found', 404, () => ({
    path: { photoId: '../../etc/passwd' },
  })),
];
