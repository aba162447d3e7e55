import { readFile } from 'node:fs/promises';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { addDays } from '../../../src/domain/dates.ts';
import type { TaskSnapshot } from '../../../src/domain/intake/task.ts';
import { unwrap } from '../../../src/domain/result.ts';
import { keepersDay } from '../../../src/tasks/localTime.ts';
import { createTasks, type Tasks } from '../../../src/tasks/registry.ts';
import { photosOf, SampleCabinet } from '../../../src/tasks/sampleCabinet/data.ts';
import { startSampleCabinet } from '../../../src/tasks/sampleCabinet/start.ts';
import { GENUS_BOOK } from '../../domain/sexing/readings.ts';
import { countingAmbient, TestArchive } from '../../support/testArchive.ts';

const genera = GENUS_BOOK.shipped;

const FOLDER = 'resources/sample';
const NOW = '2026-11-25T12:00:00.000Z';
/** Minutes after midnight, of a day that most years do not have. */
const LEAP_NIGHT = '2028-02-29T00:05:00.000Z';

describe('the sample cabinet', () => {
  let test: TestArchive;
  let tasks: Tasks;
  let cabinet: SampleCabinet;
  let last: TaskSnapshot;

  beforeAll(async () => {
    test = await TestArchive.open();
    cabinet = SampleCabinet.parse(JSON.parse(await readFile(`${FOLDER}/cabinet.json`, 'utf8')));
    tasks = createTasks({
      ambient: countingAmbient(),
      elapsedMs: () => performance.now(),
      reportDefect: (error) => {
        throw error;
      },
    });
    const { id } = unwrap(await startSampleCabinet(test.archive, tasks, { folder: FOLDER, genera, now: NOW }));
    last = await new Promise((resolve) => tasks.subscribe(id, (snapshot) => snapshot.state !== 'running' && resolve(snapshot)));
  });
  afterAll(async () => {
    await tasks.close();
    await test.remove();
  });

  it('goes in whole', () => {
    expect(last).toMatchObject({ state: 'done', failure: null });
    expect(last.done).toBe(photosOf(cabinet).length);
    expect(test.archive.specimens.count()).toEqual({ all: cabinet.specimens.length, samples: cabinet.specimens.length });
  });
  it('leaves no photo that belongs to nothing', () => {
    expect(test.archive.photos.count()).toBe(photosOf(cabinet).length);
    expect(test.archive.photos.list({ unassigned: true })).toEqual([]);
  });
  it('is marked as sample throughout', () => {
    expect(test.archive.specimens.list().every(({ sample }) => sample)).toBe(true);
    expect(test.archive.photos.list({ unassigned: false }).every(({ sample }) => sample)).toBe(true);
  });
  it('says that its skins were measured when they were photographed, never later than now', () => {
    for (const { id } of test.archive.specimens.list()) {
      for (const { photoId, createdAt } of test.archive.readings.ofSkinsOf(id)) {
        expect(keepersDay(createdAt)).toBe(unwrap(test.archive.photos.get(photoId)).takenOn);
        expect(createdAt <= NOW).toBe(true);
      }
    }
  });
  it('counts its days back from the day it is taken in, on the cameras of its photos too', () => {
    const [photo] = test.archive.photos.list({ unassigned: false }).filter(({ originalName }) => originalName === 'juniper-10-dorsal.jpg');
    const sample = photosOf(cabinet).find(({ file }) => file === 'juniper-10-dorsal.jpg');
    const day = addDays(NOW.slice(0, 10), sample?.takenOn ?? 0);
    expect(photo).toMatchObject({ takenOn: day, facts: { takenAt: { local: `${day}T16:12:09` } } });
  });
  it('holds as much as it takes to see what every room is for', () => {
    const molts = cabinet.specimens.flatMap((entry) => entry.molts);
    expect(cabinet.specimens.length).toBeGreaterThanOrEqual(12);
    expect(molts.length).toBeGreaterThanOrEqual(60);
    expect(molts.filter(({ exuvia }) => exuvia?.recovered).length).toBeGreaterThanOrEqual(40);
    const siblings = Object.groupBy(test.archive.specimens.list(), ({ eggSacGroup }) => eggSacGroup ?? 'none');
    expect(Object.entries(siblings).filter(([sac, kin]) => sac !== 'none' && kin?.length === 6)).toHaveLength(1);
  });
  it('goes in once', async () => {
    expect(await startSampleCabinet(test.archive, tasks, { folder: FOLDER, genera, now: NOW })).toMatchObject({
      failure: { code: 'sample-already-here' },
    });
  });
  it('goes out whole, and in again, once though asked for twice', async () => {
    const removal = unwrap(test.archive.removals.removeSamples());
    expect(removal).toMatchObject({ specimens: cabinet.specimens.length, photos: photosOf(cabinet).length });
    expect([test.archive.specimens.count().all, test.archive.photos.count()]).toEqual([0, 0]);
    const asked = [
      startSampleCabinet(test.archive, tasks, { folder: FOLDER, genera, now: LEAP_NIGHT }),
      startSampleCabinet(test.archive, tasks, { folder: FOLDER, genera, now: LEAP_NIGHT }),
    ];
    const [first, ...others] = (await Promise.all(asked)).toSorted((a, b) => Number(b.ok) - Number(a.ok));
    expect(others).toEqual([{ ok: false, failure: { code: 'sample-already-here' } }]);
    if (!first?.ok) throw new Error('Expected one of two to start');
    const { id } = first.value;
    const again = await new Promise<TaskSnapshot>((resolve) =>
      tasks.subscribe(id, (snapshot) => snapshot.state !== 'running' && resolve(snapshot)),
    );
    expect(again.state).toBe('done');
  });
});
