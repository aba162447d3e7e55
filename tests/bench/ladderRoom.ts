import { openAsBlob } from 'node:fs';
import { mkdtemp, readFile, rm, stat, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Browser, chromium, type Page } from '@playwright/test';
import { chromiumOptions } from '../../e2e/support/chromium.ts';
import { startLoopback } from '../../e2e/support/loopback.ts';
import type { Core } from '../../src/core/core.ts';
import { addDays } from '../../src/domain/dates.ts';
import type { Photo } from '../../src/domain/photo/photo.ts';
import { exuviaDraft, moltDraft, specimenDraft } from '../contract/drafts.ts';
import { EMPTY_READING } from '../support/emptyReading.ts';
import { answer, openBenchCore, taskEnd } from './core.ts';
import { atMost, type Figure, median } from './figure.ts';
import { galleryFrames } from './galleryFrames.ts';
import { writeLargePicture } from './pictures.ts';

const WIDTH_PX = 8064;
const HEIGHT_PX = 6048;
/** The gallery is asked for with 20; it shows all of them. */
const RUNGS = 25;
const ROUNDS = 15;

/** The Ladder of an animal with 25 skins, each photographed with 48 megapixels, in Chromium. */
export async function ladderRoom(): Promise<Figure[]> {
  const folder = await mkdtemp(join(tmpdir(), 'exuviary-ladder-'));
  let browser: Browser | null = null;
  try {
    const archive = join(folder, 'archive');
    const specimenId = await archiveWithRungs(archive, folder);
    const host = await startLoopback(archive);
    const options = chromiumOptions();
    // Frames as fast as they can be made, so that intervals are not the screen's rhythm.
    browser = await chromium.launch({ ...options, args: [...(options.args ?? []), '--disable-frame-rate-limit', '--disable-gpu-vsync'] });
    const page = await browser.newPage({ viewport: { width: 1440, height: 900 } });
    await page.goto(host.url);
    const figures = [await openLadder(page, specimenId), ...(await galleryFrames(browser, page))];
    await browser.close();
    browser = null;
    await host.stop();
    return figures;
  } finally {
    await browser?.close();
    await rm(folder, { recursive: true, force: true });
  }
}

async function archiveWithRungs(archive: string, folder: string): Promise<string> {
  const core = await openBenchCore(archive);
  const photos = await importPictures(core, folder);
  const draft = { ...specimenDraft, acquiredOn: null, acquiredInstar: null, hatchedOn: null };
  const { id: specimenId } = await answer<{ id: string }>(core, 'POST', '/api/specimens', draft);
  for (const [index, photo] of photos.entries()) await addRung(core, specimenId, photo, index);
  const cuts = await answer<{ id: string }>(core, 'POST', `/api/specimens/${specimenId}/cuts`);
  await taskEnd(core, cuts.id);
  await core.close();
  return specimenId;
}

/** One picture under 25 contents: a JPEG comment (ISO/IEC 10918-1, B.2.4.5) makes each a file of its own. */
async function importPictures(core: Core, folder: string): Promise<Photo[]> {
  const file = join(folder, 'large.jpg');
  await writeLargePicture(file, WIDTH_PX, HEIGHT_PX);
  const bytes = await readFile(file);
  const names = Array.from({ length: RUNGS }, (_, index) => `skin-${String(index).padStart(2, '0')}.jpg`);
  for (const name of names) {
    const comment = Buffer.from(name);
    const segment = Buffer.concat([Buffer.from([0xff, 0xfe, 0, comment.length + 2]), comment]);
    await writeFile(join(folder, name), Buffer.concat([bytes.subarray(0, 2), segment, bytes.subarray(2)]));
  }
  const sizes = await Promise.all(names.map((name) => stat(join(folder, name))));
  const announced = { files: names.map((name, index) => ({ name, byteLength: sizes[index]?.size ?? 0 })) };
  const { intakeId } = await answer<{ intakeId: string }>(core, 'POST', '/api/intakes', announced);
  for (const [index, name] of names.entries()) {
    await answer(core, 'PUT', `/api/intakes/${intakeId}/files/${index}`, await openAsBlob(join(folder, name)));
  }
  const task = await answer<{ id: string }>(core, 'POST', '/api/imports', { intakeId });
  await taskEnd(core, task.id);
  const photos = await answer<Photo[]>(core, 'GET', '/api/photos');
  if (photos.length !== RUNGS) throw new Error(`Expected ${RUNGS} photos but received ${photos.length}`);
  return photos;
}

/** A molt with its skin, photographed, at scale, its carapace a little longer than on the one before. */
async function addRung(core: Core, specimenId: string, photo: Photo, index: number): Promise<void> {
  const day = addDays('2015-01-01', 120 * index);
  const molt = await answer<{ id: string }>(core, 'POST', `/api/specimens/${specimenId}/molts`, {
    ...moltDraft,
    happenedFrom: day,
    happenedTo: day,
    instarShed: index + 3,
  });
  const exuvia = await answer<{ id: string }>(core, 'POST', `/api/molts/${molt.id}/exuvia`, exuviaDraft);
  const given = { subject: { kind: 'skin', exuviaId: exuvia.id }, view: 'dorsal', takenOn: day, notes: '' };
  await change(core, `/api/photos/${photo.id}`, photo.version, given);
  const marks = {
    kind: 'two-points',
    ends: [
      { xPx: 800, yPx: 5600 },
      { xPx: 6800, yPx: 5600 },
    ],
    distanceMm: 100,
    distanceStandardUncertaintyMm: 0.1,
    pointingPx: 1.5,
    heightMm: 0,
  };
  await change(core, `/api/photos/${photo.id}/calibration`, 0, { marks });
  const halfPx = 180 * 1.04 ** index;
  const at = (xPx: number, yPx: number) => ({ state: 'placed', at: { xPx: WIDTH_PX / 2 + xPx, yPx: HEIGHT_PX / 2 + yPx } });
  await answer(core, 'POST', `/api/photos/${photo.id}/readings`, {
    ...EMPTY_READING,
    observer: 'Bench',
    pass: 1,
    landmarks: {
      'carapace-front': at(0, -halfPx),
      'carapace-rear': at(0, halfPx),
      'carapace-left': at(-0.9 * halfPx, 0),
      'carapace-right': at(0.9 * halfPx, 0),
    },
  });
}

async function change(core: Core, path: string, version: number, body: unknown): Promise<void> {
  const headers = { 'content-type': 'application/json', 'if-match': `"${version}"` };
  const response = await core.handle(new Request(`http://exuviary.invalid${path}`, { method: 'PUT', headers, body: JSON.stringify(body) }));
  if (!response.ok) throw new Error(`PUT ${path}: ${response.status} ${await response.text()}`);
}

/** From asking for the Ladder until its chart stands and every skin is drawn, after the first time. */
async function openLadder(page: Page, specimenId: string): Promise<Figure> {
  const tookMs: number[] = [];
  for (let round = 0; round <= ROUNDS; round++) {
    tookMs.push(await openOnce(page, specimenId));
    if (round === ROUNDS) break;
    await page.evaluate(() => {
      location.hash = '#/cabinet';
    });
    await page.getByRole('heading', { level: 1, name: 'Cabinet' }).waitFor();
  }
  return atMost('ladder-open-ms', median(tookMs.slice(1)), 'ms', 300);
}

function openOnce(page: Page, specimenId: string): Promise<number> {
  return page.evaluate(
    ({ id, rungs }) =>
      new Promise<number>((done) => {
        const start = performance.now();
        const look = (): void => {
          const skins = [...document.querySelectorAll<HTMLImageElement>('section[aria-label="Skins at one scale"] img')];
          const points = document.querySelectorAll('figure a[aria-label*="carapace length"]');
          if (skins.length === rungs && skins.every((skin) => skin.complete && skin.naturalWidth > 0) && points.length === rungs) {
            requestAnimationFrame(() => done(performance.now() - start));
          } else requestAnimationFrame(look);
        };
        location.hash = `#/ladder/${id}`;
        look();
      }),
    { id: specimenId, rungs: RUNGS },
  );
}
