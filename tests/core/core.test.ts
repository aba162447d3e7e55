import { existsSync } from 'node:fs';
import { readdir, rm } from 'node:fs/promises';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { createAmbient } from '../../src/core/ambient.ts';
import { type Core, openCore } from '../../src/core/core.ts';
import { unwrap } from '../../src/domain/result.ts';
import type { Specimen } from '../../src/domain/specimen/specimen.ts';
import { smallPicture } from '../support/smallPictures.ts';
import { specimenDraft } from '../support/testArchive.ts';
import { openTestCore, TEST_NOW, type TestCore } from '../support/testCore.ts';

let test: TestCore;

beforeEach(async () => {
  test = await openTestCore('core');
});
afterEach(() => test.remove());

const ask = (path: string, method = 'GET', body?: unknown): Promise<Response> =>
  test.core.handle(
    new Request(`http://core.invalid${path}`, {
      method,
      ...(body === undefined ? {} : { body: JSON.stringify(body), headers: { 'content-type': 'application/json' } }),
    }),
  );

const reopened = (seed: string) =>
  openCore({
    archiveFolder: join(test.folder, 'archive'),
    rendererFolder: null,
    resourcesFolder: join(test.folder, 'resources'),
    ambient: createAmbient({ now: TEST_NOW, seed }),
    elapsedMs: () => performance.now(),
    logDefect: (_, error) => {
      throw error;
    },
  });

describe('the core', () => {
  it('does not open an archive twice', async () => {
    expect(await reopened('second')).toMatchObject({ ok: false, failure: { code: 'archive-in-use' } });
  });
  it('answers a typed failure when a file of the page has gone', async () => {
    await rm(join(test.folder, 'pages', 'index.html'));
    const response = await ask('/');
    expect(response.status).toBe(500);
    expect(await response.json()).toMatchObject({ failure: { code: 'defect', reference: expect.stringMatching(/^[0-9a-f]{8}$/) } });
    expect(test.defects).toHaveLength(1);
  });
  it('lets a shell import files from where they are', async () => {
    const intakeId = await test.core.grantFiles([join(test.folder, 'resources', 'sample', 'photos', 'one.jpg')]);
    const { id } = (await (await ask('/api/imports', 'POST', { intakeId })).json()) as { id: string };
    expect(await (await ask(`/api/tasks/${id}/events`)).text()).toContain('"kind":"added"');
  });
  it('gives no name twice, though it is started again with the same seed', async () => {
    const add = async (core: Core, code: string) => {
      const headers = { 'content-type': 'application/json' };
      const body = JSON.stringify(specimenDraft({ code }));
      const response = await core.handle(new Request('http://core.invalid/api/specimens', { method: 'POST', body, headers }));
      expect(response.status).toBe(201);
      return (await response.json()) as Specimen;
    };
    const first = await add(test.core, 'T-1');
    await test.core.handle(new Request(`http://core.invalid/api/specimens/${first.id}`, { method: 'DELETE' }));
    await test.close();
    const again = unwrap(await reopened('core'));
    const second = await add(again, 'T-2');
    await again.close();
    const third = unwrap(await reopened('core'));
    expect(new Set([first.id, second.id, (await add(third, 'T-3')).id]).size).toBe(3);
    await third.close();
  });
  it('tells of a record that it cannot read, which is in no list any more', async () => {
    for (const code of ['T-1', 'T-2']) expect((await ask('/api/specimens', 'POST', specimenDraft({ code }))).status).toBe(201);
    await test.close();
    const catalogue = new Database(join(test.folder, 'archive', 'catalogue.db'));
    catalogue.exec("UPDATE specimen SET hatched_on = 'long ago' WHERE code = 'T-1'");
    catalogue.close();

    const again = unwrap(await reopened('again'));
    const answerOf = async (path: string) => await (await again.handle(new Request(`http://core.invalid${path}`))).json();
    expect(await answerOf('/api/specimens')).toMatchObject([{ specimen: { code: 'T-2' } }]);
    expect(await answerOf('/api/about')).toMatchObject({ unreadableRecords: [expect.stringMatching(/^specimen .*: hatchedOn: /)] });
    await again.close();
  });
  it('closes only when the file in hand is finished, and leaves one tidy catalogue', async () => {
    const files = await Promise.all(
      Array.from({ length: 8 }, async (_, index) => ({ name: `${index}.png`, bytes: await smallPicture(index, 'png', 900, 700) })),
    );
    const announced = await ask('/api/intakes', 'POST', {
      files: files.map(({ name, bytes }) => ({ name, byteLength: bytes.byteLength })),
    });
    const { intakeId } = (await announced.json()) as { intakeId: string };
    for (const [index, { bytes }] of files.entries()) {
      await test.core.handle(
        new Request(`http://core.invalid/api/intakes/${intakeId}/files/${index}`, {
          method: 'PUT',
          body: bytes,
          headers: { 'content-type': 'application/octet-stream' },
        }),
      );
    }
    await ask('/api/imports', 'POST', { intakeId });
    await test.close();
    expect(existsSync(join(test.folder, 'archive', 'catalogue.db-wal'))).toBe(false);

    const again = unwrap(await reopened('again'));
    const about = (await (await again.handle(new Request('http://core.invalid/api/about'))).json()) as {
      photos: number;
      unfinishedFiles: number;
    };
    expect(about.photos + about.unfinishedFiles).toBe(8);
    expect(await readdir(join(test.folder, 'archive', 'incoming'))).toHaveLength(about.unfinishedFiles);
    await again.close();
  });
});
