import { openAsBlob } from 'node:fs';
import { mkdtemp, rm, stat } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { basename, join } from 'node:path';
import { type Browser, chromium, expect, type Page } from '@playwright/test';
import { chromiumOptions } from '../../e2e/support/chromium.ts';
import { startLoopback } from '../../e2e/support/loopback.ts';
import { CARAPACE_LANDMARKS } from '../../src/domain/measuring/landmarks.ts';
import { EMPTY_READING } from '../support/emptyReading.ts';
import { answer, openBenchCore, taskEnd } from './core.ts';
import { atMost, type Figure, median, quantile, reported } from './figure.ts';
import { writeLargePicture } from './pictures.ts';

const WIDTH_PX = 8064;
const HEIGHT_PX = 6048;
const ROUNDS = 25;
const MOVES = 240;

/** The Bench with a photo of 48 megapixels, in Chromium. */
export async function benchRoom(): Promise<Figure[]> {
  const folder = await mkdtemp(join(tmpdir(), 'exuviary-bench-'));
  let browser: Browser | null = null;
  try {
    const archive = join(folder, 'archive');
    const photoId = await archiveWithLargePhoto(archive, folder);
    const host = await startLoopback(archive);
    const options = chromiumOptions();
    // Frames as fast as they can be made: an interval between two is then what a frame costs, not the screen's rhythm.
    browser = await chromium.launch({ ...options, args: [...(options.args ?? []), '--disable-frame-rate-limit', '--disable-gpu-vsync'] });
    const page = await browser.newPage({ viewport: { width: 1440, height: 900 } });
    await page.goto(host.url);
    const figures = [...(await openAgainstDecode(page, photoId)), await moveOnePoint(page, photoId)];
    await browser.close();
    browser = null;
    await host.stop();
    return figures;
  } finally {
    await browser?.close();
    await rm(folder, { recursive: true, force: true });
  }
}

async function archiveWithLargePhoto(archive: string, folder: string): Promise<string> {
  const file = join(folder, 'large.jpg');
  await writeLargePicture(file, WIDTH_PX, HEIGHT_PX);
  const core = await openBenchCore(archive);
  const announced = { files: [{ name: basename(file), byteLength: (await stat(file)).size }] };
  const { intakeId } = await answer<{ intakeId: string }>(core, 'POST', '/api/intakes', announced);
  await answer(core, 'PUT', `/api/intakes/${intakeId}/files/0`, await openAsBlob(file));
  const task = await answer<{ id: string }>(core, 'POST', '/api/imports', { intakeId });
  await taskEnd(core, task.id);
  const [photo] = await answer<{ id: string }[]>(core, 'GET', '/api/photos');
  if (photo === undefined) throw new Error('Expected the large photo to be kept');
  const middle = { xPx: WIDTH_PX / 2, yPx: HEIGHT_PX / 2 };
  const landmarks = Object.fromEntries(
    CARAPACE_LANDMARKS.map((name, index) => [name, { state: 'placed', at: { ...middle, xPx: middle.xPx + 400 * index } }]),
  );
  await answer(core, 'POST', `/api/photos/${photo.id}/readings`, { ...EMPTY_READING, observer: 'Bench', pass: 1, landmarks });
  await core.close();
  return photo.id;
}

/**
 * From asking for the Bench until it shows the photo itself, as sharp as the screen can show it, and until it has every level
 * for zooming in; each against one bare decode of the same bytes, in turns.
 */
async function openAgainstDecode(page: Page, photoId: string): Promise<Figure[]> {
  const sharpMs: number[] = [];
  const completeMs: number[] = [];
  const decodeMs: number[] = [];
  for (let round = 0; round < ROUNDS; round++) {
    const opened = await openBench(page, photoId);
    sharpMs.push(opened.sharpMs);
    completeMs.push(opened.completeMs);
    await page.evaluate(() => {
      location.hash = '#/cabinet';
    });
    await page.locator('[data-picture]').waitFor({ state: 'detached' });
    decodeMs.push(await decodeBare(page, photoId));
  }
  const bareMs = median(decodeMs);
  return [
    atMost('open-48mp-vs-decode-ratio', median(sharpMs) / bareMs, '1', 1.5),
    reported('open-48mp-every-level-vs-decode-ratio', median(completeMs) / bareMs, '1'),
    reported('open-48mp-ms', median(sharpMs), 'ms'),
    reported('decode-48mp-ms', bareMs, 'ms'),
  ];
}

function openBench(page: Page, photoId: string): Promise<{ sharpMs: number; completeMs: number }> {
  return page.evaluate(async (id) => {
    performance.clearMarks();
    const start = performance.now();
    const sharp = new Promise<number>((done) => {
      const watcher = new MutationObserver(() => {
        if (document.querySelector('[data-picture="original"]') === null) return;
        watcher.disconnect();
        requestAnimationFrame(() => done(performance.now() - start));
      });
      watcher.observe(document.body, { subtree: true, childList: true, attributes: true, attributeFilter: ['data-picture'] });
    });
    const complete = new Promise<number>((done) => {
      const watcher = new PerformanceObserver((list) => {
        const [mark] = list.getEntriesByName('bench-has-every-level');
        if (mark === undefined) return;
        watcher.disconnect();
        done(mark.startTime - start);
      });
      watcher.observe({ type: 'mark' });
    });
    location.hash = `#/bench/${id}`;
    return { sharpMs: await sharp, completeMs: await complete };
  }, photoId);
}

/**
 * One decode of bytes that lie in memory, while the page has nothing else to do: nothing of the Bench is at work any more, which
 * would make it slower. The promise keeps until every pixel is decoded: drawing the bitmap afterwards decodes nothing more.
 */
function decodeBare(page: Page, photoId: string): Promise<number> {
  return page.evaluate(async (id) => {
    const bytes = await (await fetch(`/api/photos/${id}/original`, { cache: 'no-store' })).blob();
    await new Promise((idle) => requestIdleCallback(idle));
    const start = performance.now();
    const bitmap = await createImageBitmap(bytes);
    const duration = performance.now() - start;
    bitmap.close();
    return duration;
  }, photoId);
}

/** Time between frames while one point is dragged over the photo. */
async function moveOnePoint(page: Page, photoId: string): Promise<Figure> {
  const before = await savedMark(page, photoId);
  await page.goBack();
  await page.locator('[data-picture="original"]').waitFor();
  await page.getByRole('tab', { name: 'Points' }).click();
  const box = await page.locator('[data-picture]').boundingBox();
  if (box === null) throw new Error('Expected the photo to be on screen');
  const at = { x: box.x + box.width / 2, y: box.y + box.height / 2 };
  await page.mouse.move(at.x, at.y);
  await page.mouse.down();
  // Every frame carries exactly one move, so that none is cheap because nothing happened in it.
  const intervalsMs = await page.evaluate(
    ({ x, y, moves }) =>
      new Promise<number[]>((done) => {
        const target = document.elementFromPoint(x, y);
        const intervals: number[] = [];
        let last: number | null = null;
        const tick = (): void => {
          const now = performance.now();
          if (last !== null) intervals.push(now - last);
          last = now;
          const move = intervals.length;
          if (move === moves) {
            done(intervals);
            return;
          }
          const at = { clientX: x + 120 * Math.sin(move / 12), clientY: y + 80 * Math.cos(move / 9) - 80 };
          target?.dispatchEvent(new PointerEvent('pointermove', { ...at, pointerId: 1, pointerType: 'mouse', buttons: 1, bubbles: true }));
          requestAnimationFrame(tick);
        };
        requestAnimationFrame(tick);
      }),
    { ...at, moves: MOVES },
  );
  await page.mouse.up();
  await expect.poll(() => savedMark(page, photoId), { message: 'The dragged point was not saved' }).not.toBe(before);
  return atMost('move-point-p95-ms', quantile(intervalsMs, 0.95), 'ms', 16.7);
}

/** Where the dragged landmark is on record, as text. */
async function savedMark(page: Page, photoId: string): Promise<string> {
  return page.evaluate(async (id) => {
    const sheet = await (await fetch(`/api/photos/${id}/bench`)).json();
    return JSON.stringify(sheet.readings[0].landmarks['carapace-front']);
  }, photoId);
}
