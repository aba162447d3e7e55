import { createHash } from 'node:crypto';
import { mkdir, readdir, readFile, rm, stat, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { Files } from '../../../src/archive/originals/files.ts';
import { nodeFiles } from '../../../src/archive/originals/nodeFiles.ts';
import type { TaskSnapshot } from '../../../src/domain/intake/task.ts';
import { unwrap } from '../../../src/domain/result.ts';
import { createImporter, type Importer } from '../../../src/tasks/importing/importer.ts';
import { createTasks, type Tasks } from '../../../src/tasks/registry.ts';
import { smallPicture } from '../../support/smallPictures.ts';
import { countingAmbient, TestArchive } from '../../support/testArchive.ts';

let test: TestArchive;
let tasks: Tasks;
let importer: Importer;
let defects: unknown[];

async function start(files?: Files): Promise<void> {
  await test.reopen(files);
  defects = [];
  const reportDefect = (error: unknown): string => `reference ${defects.push(error)}`;
  tasks = createTasks({ ambient: countingAmbient(), elapsedMs: () => performance.now(), reportDefect });
  importer = createImporter({ archive: test.archive, tasks, reportDefect });
}

beforeEach(async () => {
  test = await TestArchive.open();
  await start();
});
afterEach(async () => {
  await tasks.close();
  expect(defects).toEqual([]);
  await test.remove();
});

/** Files of this machine, outside the archive. */
async function filesNamed(contents: Readonly<Record<string, Uint8Array>>): Promise<string[]> {
  const folder = join(test.folder, 'somewhere else');
  await mkdir(folder, { recursive: true });
  const paths = Object.keys(contents).map((name) => join(folder, name));
  await Promise.all(Object.entries(contents).map(([name, bytes]) => writeFile(join(folder, name), bytes)));
  return paths;
}

function ended({ id }: TaskSnapshot): Promise<TaskSnapshot> {
  return new Promise((resolve) => {
    const look = (snapshot: TaskSnapshot): void => {
      if (snapshot.state !== 'running') resolve(snapshot);
    };
    tasks.subscribe(id, look);
    look(unwrap(tasks.get(id)).snapshot);
  });
}

async function importOf(paths: readonly string[]): Promise<TaskSnapshot> {
  return ended(unwrap(importer.start(await importer.grant(paths))));
}

async function* inPieces(bytes: Uint8Array, pieceBytes = 1_000): AsyncGenerator<Uint8Array> {
  for (let at = 0; at < bytes.byteLength; at += pieceBytes) yield bytes.subarray(at, at + pieceBytes);
}

const outcomesOf = (snapshot: TaskSnapshot) => Object.fromEntries(snapshot.files.map(({ name, outcome }) => [name, outcome]));

describe('an import', () => {
  it('adds what is a photo, knows what is here, and refuses the rest with the reason', async () => {
    const [photo, other] = [await smallPicture(1, 'jpeg'), await smallPicture(2, 'webp')];
    const snapshot = await importOf(
      await filesNamed({
        'a photo.jpg': photo,
        'empty.jpg': new Uint8Array(),
        'cut off.jpg': photo.subarray(0, photo.byteLength / 2),
        'words.png': new TextEncoder().encode('Not a picture.'),
        'wrongly named.txt': other,
      }),
    );
    expect(snapshot).toMatchObject({ state: 'done', done: 5, total: 5 });
    expect(outcomesOf(snapshot)).toMatchObject({
      'a photo.jpg': { kind: 'added' },
      'empty.jpg': { kind: 'refused', failure: { code: 'file-empty', file: 'empty.jpg' } },
      'cut off.jpg': { kind: 'refused', failure: { code: 'file-truncated', file: 'cut off.jpg' } },
      'words.png': { kind: 'refused', failure: { code: 'file-not-an-image', file: 'words.png', kind: null } },
      'wrongly named.txt': { kind: 'added' },
    });
    expect(test.archive.photos.count()).toBe(2);
    const again = await importOf(await filesNamed({ 'the same.jpg': photo }));
    expect(again.files[0]?.outcome).toEqual({ ...outcomesOf(snapshot)['a photo.jpg'], kind: 'already-here' });
  });
  it.each([
    ['gone', (path: string) => rm(path)],
    ['changed', (path: string) => rm(path).then(() => writeFile(path, 'not what it was'))],
  ])('heals an original that is %s, of a photo that is on record', async (_, harm) => {
    const photo = await smallPicture(1, 'jpeg');
    const paths = await filesNamed({ 'a photo.jpg': photo });
    await importOf(paths);
    const sha256 = createHash('sha256').update(photo).digest('hex');
    await harm(join(test.folder, 'originals', sha256.slice(0, 2), sha256.slice(2)));
    expect(await test.archive.originals.check()).toMatchObject({ sound: 0, harm: [{}] });
    expect((await importOf(paths)).files[0]?.outcome.kind).toBe('already-here');
    expect(await test.archive.originals.check()).toEqual({ sound: 1, harm: [] });
    expect(test.archive.photos.count()).toBe(1);
  });
  it('keeps the very bytes, read-only, and leaves the source as it was', async () => {
    const bytes = await smallPicture(3, 'png');
    const [path = ''] = await filesNamed({ 'skin.png': bytes });
    await importOf([path]);
    const [photo] = test.archive.photos.list({ unassigned: true });
    const kept = await test.archive.originals.pathOf(photo?.sha256 ?? '');
    expect(photo?.sha256).toBe(createHash('sha256').update(bytes).digest('hex'));
    expect(new Uint8Array(await readFile(kept ?? ''))).toEqual(bytes);
    expect((await stat(kept ?? '')).mode & 0o777).toBe(0o444);
    expect(new Uint8Array(await readFile(path))).toEqual(bytes);
  });
  it('has the small copies ready', async () => {
    await importOf(await filesNamed({ 'skin.png': await smallPicture(4, 'png') }));
    const [photo] = test.archive.photos.list({ unassigned: true });
    expect(await test.archive.renditions.missing(photo?.sha256 ?? '', ['thumbnail', 'screen'])).toEqual([]);
  });
  it('adds one photo of two files with the same content, at the same time', async () => {
    const bytes = await smallPicture(5, 'jpeg');
    const snapshot = await importOf(await filesNamed({ 'one.jpg': bytes, 'two.jpg': bytes, 'three.jpg': bytes, 'four.jpg': bytes }));
    const kinds = snapshot.files.map(({ outcome }) => outcome.kind).toSorted();
    expect(kinds).toEqual(['added', 'already-here', 'already-here', 'already-here']);
    expect(new Set(snapshot.files.map(({ outcome }) => ('photoId' in outcome ? outcome.photoId : null))).size).toBe(1);
    expect(test.archive.photos.count()).toBe(1);
  });
  it('leaves nothing in incoming, whatever became of the files', async () => {
    const photo = await smallPicture(6, 'jpeg');
    await importOf(
      await filesNamed({ 'one.jpg': photo, 'two.jpg': photo, 'bad.jpg': photo.subarray(0, 2_000), 'none.jpg': new Uint8Array() }),
    );
    expect(await readdir(join(test.folder, 'incoming'))).toEqual([]);
  });
  it('refuses a file that has gone meanwhile', async () => {
    const intakeId = await importer.grant([join(test.folder, 'gone.jpg')]);
    const snapshot = await ended(unwrap(importer.start(intakeId)));
    expect(snapshot.files[0]?.outcome).toMatchObject({ kind: 'refused', failure: { code: 'file-unreadable', file: 'gone.jpg' } });
  });
  it('asked for again while it runs is the same import', async () => {
    const intakeId = await importer.grant(await filesNamed({ 'one.jpg': await smallPicture(7, 'jpeg') }));
    const [first, second] = [unwrap(importer.start(intakeId)), unwrap(importer.start(intakeId))];
    expect(second.id).toBe(first.id);
    await ended(first);
  });
  it('asked for again when it is over tells what became of each file, and adds nothing', async () => {
    const intakeId = await importer.grant(await filesNamed({ 'one.jpg': await smallPicture(8, 'jpeg') }));
    const first = await ended(unwrap(importer.start(intakeId)));
    const second = await ended(unwrap(importer.start(intakeId)));
    expect(second.files).toEqual(first.files);
    expect(test.archive.photos.count()).toBe(1);
  });
});

describe('a file that is sent', () => {
  const announce = (name: string, bytes: Uint8Array): string => importer.announce([{ name, byteLength: bytes.byteLength }]);

  it('goes to the disk piece by piece, and no photo is there before it is imported', async () => {
    const bytes = await smallPicture(11, 'png');
    const intakeId = announce('sent.png', bytes);
    const seen: number[] = [];
    const watched = async function* () {
      for await (const piece of inPieces(bytes, 50_000)) {
        const [name = ''] = await readdir(join(test.folder, 'incoming'));
        seen.push((await stat(join(test.folder, 'incoming', name))).size);
        yield piece;
      }
    };
    expect(await importer.receive(intakeId, 0, watched())).toMatchObject({ ok: true });
    expect(seen.length).toBeGreaterThan(3);
    expect(seen).toEqual(seen.map((_, index) => index * 50_000));
    expect(test.archive.photos.count()).toBe(0);
    await ended(unwrap(importer.start(intakeId)));
    expect(test.archive.photos.count()).toBe(1);
  });
  it('may be sent again when it did not arrive whole', async () => {
    const bytes = await smallPicture(12, 'png');
    const intakeId = announce('sent.png', bytes);
    const missing = await importer.receive(intakeId, 0, inPieces(bytes.subarray(1)));
    expect(missing).toMatchObject({ ok: false, failure: { code: 'file-not-arrived' } });
    expect(await importer.receive(intakeId, 0, inPieces(bytes))).toMatchObject({ ok: true });
    expect(await importer.receive(intakeId, 0, inPieces(bytes))).toMatchObject({ ok: true });
    expect(await readdir(join(test.folder, 'incoming'))).toHaveLength(1);
    expect((await ended(unwrap(importer.start(intakeId)))).files[0]?.outcome.kind).toBe('added');
  });
  it('ends at the first piece beyond what was announced', async () => {
    const intakeId = announce('endless.png', new Uint8Array(3_000));
    let given = 0;
    const endless = async function* () {
      for (;;) {
        given += 1_000;
        yield new Uint8Array(1_000);
      }
    };
    expect(await importer.receive(intakeId, 0, endless())).toMatchObject({ ok: false, failure: { code: 'file-not-arrived' } });
    expect(given).toBe(4_000);
    expect(await readdir(join(test.folder, 'incoming'))).toEqual([]);
  });
  it('that is empty is refused in the import too, with that reason', async () => {
    const intakeId = announce('empty.png', new Uint8Array());
    expect(await importer.receive(intakeId, 0, inPieces(new Uint8Array()))).toMatchObject({ failure: { code: 'file-empty' } });
    const snapshot = await ended(unwrap(importer.start(intakeId)));
    expect(snapshot.files[0]?.outcome).toMatchObject({ kind: 'refused', failure: { code: 'file-empty' } });
  });
});

describe('an import that did not get to its end', () => {
  const pictures = async (count: number) =>
    Object.fromEntries(await Promise.all(Array.from({ length: count }, async (_, i) => [`${i}.jpg`, await smallPicture(20 + i, 'jpeg')])));

  /** Imports, and asks for a stop as soon as the third file, or a later one, begins to come in. */
  async function stopFromThirdOn(contents: Readonly<Record<string, Uint8Array>>): Promise<TaskSnapshot> {
    const real = nodeFiles(process.platform);
    let begun = 0;
    let stop = (): void => undefined;
    await start({
      ...real,
      createNew(path) {
        if (path.includes('incoming')) begun += 1;
        if (begun >= 3) stop();
        return real.createNew(path);
      },
    });
    const snapshot = unwrap(importer.start(await importer.grant(await filesNamed(contents))));
    stop = () => void tasks.stop(snapshot.id);
    return ended(snapshot);
  }

  it('was stopped between two files, and goes on where it was', async () => {
    const stopped = await stopFromThirdOn(await pictures(12));
    expect(stopped.state).toBe('stopped');
    const before = test.archive.photos.count();
    expect(before).toBeGreaterThanOrEqual(3);
    expect(before).toBe(stopped.files.filter(({ outcome }) => outcome.kind === 'added').length);
    expect(before).toBeLessThan(12);
    expect(importer.unfinishedCount()).toBe(12 - before);
    const resumed = await ended(importer.resume());
    expect(resumed).toMatchObject({ state: 'done', total: 12 - before });
    expect(test.archive.photos.count()).toBe(12);
    expect(importer.unfinishedCount()).toBe(0);
  });
  it('goes on at the next start, with bytes that were sent and with files that were named', async () => {
    const sent = await smallPicture(40, 'png');
    const intakeId = importer.announce([
      { name: 'sent.png', byteLength: sent.byteLength },
      { name: 'never sent.png', byteLength: 5 },
    ]);
    await importer.receive(intakeId, 0, inPieces(sent));
    await importer.grant(await filesNamed({ 'named.jpg': await smallPicture(41, 'jpeg') }));
    expect(importer.unfinishedCount()).toBe(0);
    await start();
    expect(importer.unfinishedCount()).toBe(2);
    const resumed = await ended(importer.resume());
    expect(outcomesOf(resumed)).toMatchObject({ 'sent.png': { kind: 'added' }, 'named.jpg': { kind: 'added' } });
    await start();
    expect(importer.unfinishedCount()).toBe(0);
    expect(await readdir(join(test.folder, 'incoming'))).toEqual([]);
  });
  it('is given up for good, and what was added stays', async () => {
    await stopFromThirdOn(await pictures(12));
    const added = test.archive.photos.count();
    const sent = await smallPicture(43, 'png');
    await importer.receive(importer.announce([{ name: 'sent.png', byteLength: sent.byteLength }]), 0, inPieces(sent));
    await start();
    expect(await importer.giveUp()).toBe(12 - added + 1);
    expect(importer.unfinishedCount()).toBe(0);
    expect(await readdir(join(test.folder, 'incoming'))).toEqual([]);
    expect((await ended(importer.resume())).total).toBe(0);
    expect(test.archive.photos.count()).toBe(added);
  });
  it('finds a photo again that was published but not recorded', async () => {
    const bytes = await smallPicture(42, 'jpeg');
    const intakeId = importer.announce([{ name: 'sent.jpg', byteLength: bytes.byteLength }]);
    await importer.receive(intakeId, 0, inPieces(bytes));
    const [file] = unwrap(test.archive.imports.files(intakeId));
    if (!file?.staged) throw new Error('Expected the bytes to be staged');
    unwrap(await test.archive.originals.publish(file.staged));
    await start();
    const resumed = await ended(importer.resume());
    expect(resumed.files[0]?.outcome.kind).toBe('added');
    expect(test.archive.photos.count()).toBe(1);
  });
});

describe('a full disk', () => {
  /** The archive's files, where writing of originals has no room from the nth on until it is given some. */
  function crampedFiles(roomFor: number) {
    const real = nodeFiles(process.platform);
    let created = 0;
    const disk = { full: true };
    const files: Files = {
      ...real,
      async createNew(path) {
        const file = await real.createNew(path);
        if (!path.includes('incoming')) return file;
        created += 1;
        const noRoom = disk.full && created > roomFor;
        const write = async (): Promise<never> => {
          throw Object.assign(new Error('no space left on device'), { code: 'ENOSPC' });
        };
        return noRoom ? { ...file, write } : file;
      },
    };
    return { files, disk };
  }

  it('refuses what it has no room for and keeps what was added; trying again works when there is room', async () => {
    const { files, disk } = crampedFiles(2);
    await start(files);
    const paths = await filesNamed({
      'one.jpg': await smallPicture(50, 'jpeg'),
      'two.jpg': await smallPicture(51, 'jpeg'),
      'three.jpg': await smallPicture(52, 'jpeg'),
      'four.jpg': await smallPicture(53, 'jpeg'),
    });
    const snapshot = await importOf(paths);
    const refused = snapshot.files.filter(({ outcome }) => outcome.kind === 'refused');
    expect(refused).toHaveLength(2);
    for (const { outcome } of refused) expect(outcome).toMatchObject({ failure: { code: 'disk-full' } });
    expect(test.archive.photos.count()).toBe(2);
    expect(await readdir(join(test.folder, 'incoming'))).toEqual([]);
    disk.full = false;
    const again = await importOf(paths);
    expect(again.files.map(({ outcome }) => outcome.kind).toSorted()).toEqual(['added', 'added', 'already-here', 'already-here']);
  });
});
