import { readdir, rm, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import type { Archive } from '../../src/archive/archive.ts';
import { fail, unwrap } from '../../src/domain/result.ts';
import { TestArchive } from '../support/testArchive.ts';

describe('planned imports', () => {
  let test_: TestArchive;
  let archive: Archive;

  beforeEach(async () => {
    test_ = await TestArchive.open();
    archive = test_.archive;
  });
  afterEach(() => test_.remove());

  async function stage(text: string) {
    async function* bytes(): AsyncGenerator<Uint8Array> {
      yield Buffer.from(text);
    }
    return unwrap(await archive.originals.stage({ kind: 'stream', stream: bytes(), byteLength: text.length }, 'x.jpg'));
  }

  const incoming = () => readdir(join(test_.folder, 'incoming'));

  test('are kept in order with what became of each file', () => {
    const { intakeId, files } = archive.imports.plan([
      { name: 'b.jpg', byteLength: 2 },
      { name: 'a.jpg', byteLength: 1, sourcePath: '/photos/a.jpg' },
    ]);
    expect(files).toMatchObject([
      { position: 0, name: 'b.jpg', byteLength: 2, sourcePath: null, staged: null, outcome: { kind: 'waiting' } },
      { position: 1, name: 'a.jpg', byteLength: 1, sourcePath: '/photos/a.jpg', staged: null, outcome: { kind: 'waiting' } },
    ]);
    const refused = { kind: 'refused', failure: { code: 'file-empty', file: 'b.jpg' } } as const;
    archive.imports.settle(files[0]?.id ?? '', refused);
    expect(unwrap(archive.imports.files(intakeId)).map(({ outcome }) => outcome)).toEqual([refused, { kind: 'waiting' }]);
    expect(archive.imports.files('nobody')).toEqual(fail({ code: 'intake-gone', intakeId: 'nobody' }));
  });

  test('arrived bytes outlive a crash; bytes nobody planned for do not', async () => {
    const { files } = archive.imports.plan([{ name: 'x.jpg', byteLength: 6 }]);
    const planned = await stage('wanted');
    archive.imports.arrived(files[0]?.id ?? '', planned);
    await stage('stray!');
    await writeFile(join(test_.folder, 'incoming', 'half'), 'hal');
    expect(await incoming()).toHaveLength(3);
    archive = await test_.reopen();
    expect(await incoming()).toEqual([planned.stagedName]);
    expect(archive.imports.unfinished()).toMatchObject([{ name: 'x.jpg', staged: planned }]);
  });

  test('bytes published just before a crash are still counted as arrived', async () => {
    const { files } = archive.imports.plan([{ name: 'x.jpg', byteLength: 6 }]);
    const planned = await stage('wanted');
    archive.imports.arrived(files[0]?.id ?? '', planned);
    unwrap(await archive.originals.publish(planned));
    archive = await test_.reopen();
    expect(archive.imports.unfinished()).toMatchObject([{ staged: planned }]);
    expect(await archive.originals.sweep(-1e13)).toEqual({ removed: 0 });
    expect(await archive.originals.publish(planned)).toEqual({ ok: true, value: 'already-here' });
  });

  test('a plan whose bytes can not be had is forgotten, and so is one that is done', async () => {
    const lost = archive.imports.plan([{ name: 'lost.jpg', byteLength: 6 }]);
    const gone = archive.imports.plan([{ name: 'gone.jpg', byteLength: 6 }]);
    const done = archive.imports.plan([{ name: 'done.jpg', byteLength: 6, sourcePath: '/photos/done.jpg' }]);
    const halfDone = archive.imports.plan([
      { name: 'first.jpg', byteLength: 6, sourcePath: '/photos/first.jpg' },
      { name: 'second.jpg', byteLength: 6, sourcePath: '/photos/second.jpg' },
    ]);
    const staged = await stage('wanted');
    archive.imports.arrived(gone.files[0]?.id ?? '', staged);
    await rm(archive.originals.stagedPath(staged), { force: true });
    archive.imports.settle(done.files[0]?.id ?? '', { kind: 'added', photoId: 'p' });
    archive.imports.settle(halfDone.files[0]?.id ?? '', { kind: 'already-here', photoId: 'p' });
    archive = await test_.reopen();
    for (const { intakeId } of [lost, gone, done])
      expect(archive.imports.files(intakeId)).toMatchObject({ failure: { code: 'intake-gone' } });
    expect(unwrap(archive.imports.files(halfDone.intakeId)).map(({ outcome }) => outcome.kind)).toEqual(['already-here', 'waiting']);
    expect(archive.imports.unfinished().map(({ name }) => name)).toEqual(['second.jpg']);
  });

  test('a file that is settled can be set waiting again', () => {
    const { files } = archive.imports.plan([{ name: 'x.jpg', byteLength: 6, sourcePath: '/photos/x.jpg' }]);
    const id = files[0]?.id ?? '';
    archive.imports.settle(id, { kind: 'refused', failure: { code: 'disk-full' } });
    expect(archive.imports.unfinished()).toEqual([]);
    archive.imports.settle(id, { kind: 'waiting' });
    expect(archive.imports.unfinished()).toHaveLength(1);
  });
});
