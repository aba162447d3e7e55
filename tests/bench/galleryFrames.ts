import type { Browser, Page } from '@playwright/test';
import { z } from 'zod';
import { atMost, type Figure, quantile, reported } from './figure.ts';

const ZOOMS = 240;
const FRAME_MARK = 'gallery-frame';
/** A sixtieth of a second. */
const BAR_MS = 16.7;

/**
 * What a frame costs while all skins of the gallery are zoomed together: the time of the processor that the page's main thread and its
 * raster threads spend on it (thread clock, so that other programs on the machine do not count). Beside it, as they came out
 * and without a bar, the intervals between frames, and those of an empty page that does nothing: where the empty page is as
 * late as the gallery, intervals speak of the machine.
 *
 * @param page shows a Ladder with its gallery.
 */
export async function galleryFrames(browser: Browser, page: Page): Promise<Figure[]> {
  await page.getByRole('slider', { name: 'Size of all skins' }).scrollIntoViewIfNeeded();
  await browser.startTracing(page, { categories: ['disabled-by-default-devtools.timeline', 'devtools.timeline', 'blink.user_timing'] });
  const zooming = await intervals(page, true);
  const workMs = workPerFrame(await browser.stopTracing());
  const empty = await browser.newPage();
  await empty.bringToFront();
  const idle = await intervals(empty, false);
  await empty.close();
  return [
    atMost('gallery-frame-p95-ms', quantile(workMs, 0.95), 'ms', BAR_MS),
    reported('gallery-frame-interval-p95-ms', quantile(zooming, 0.95), 'ms'),
    reported('empty-page-frame-interval-p95-ms', quantile(idle, 0.95), 'ms'),
  ];
}

/** Milliseconds from frame to frame. Every frame carries exactly one step of the zoom, so that none is cheap because nothing happened. */
function intervals(page: Page, zoom: boolean): Promise<number[]> {
  return page.evaluate(
    ({ frames, mark, zooms }) =>
      new Promise<number[]>((done, failed) => {
        const slider = document.querySelector<HTMLInputElement>('input[aria-label="Size of all skins"]');
        const setValue = Object.getOwnPropertyDescriptor(HTMLInputElement.prototype, 'value')?.set;
        if (zooms && (!slider || !setValue)) {
          failed(new Error('Expected the slider that zooms the gallery'));
          return;
        }
        const between: number[] = [];
        let last: number | null = null;
        const tick = (): void => {
          const now = performance.now();
          performance.mark(mark);
          if (last !== null) between.push(now - last);
          last = now;
          if (between.length === frames) {
            done(between);
            return;
          }
          if (zooms && slider) {
            setValue?.call(slider, String(0.9 * (1 + Math.sin(between.length / 20))));
            slider.dispatchEvent(new Event('input', { bubbles: true }));
          }
          requestAnimationFrame(tick);
        };
        requestAnimationFrame(tick);
      }),
    { frames: ZOOMS, mark: FRAME_MARK, zooms: zoom },
  );
}

/** Of the trace format that Chromium writes: microseconds, `tdur` by the clock of the thread. */
const TraceEvent = z.object({
  name: z.string(),
  pid: z.number(),
  tid: z.number(),
  ts: z.number().default(0),
  tdur: z.number().optional(),
});

/** Each task counts for the frame in which it began. */
function workPerFrame(trace: Buffer): number[] {
  const { traceEvents } = z.object({ traceEvents: z.array(TraceEvent) }).parse(JSON.parse(trace.toString()));
  const marks = traceEvents.filter(({ name }) => name === FRAME_MARK).sort((a, b) => a.ts - b.ts);
  const [page] = marks;
  const counted = traceEvents
    .filter((event) => event.pid === page?.pid)
    .filter((event) => (event.name === 'RunTask' && event.tid === page?.tid) || event.name === 'RasterTask');
  if (marks.length <= ZOOMS || !counted.some(({ name }) => name === 'RasterTask')) {
    throw new Error(`Expected a trace of ${ZOOMS} frames with raster work but received ${marks.length} marks, ${counted.length} tasks`);
  }
  return marks.slice(1).map((mark, index) => {
    const from = marks[index]?.ts ?? mark.ts;
    const within = counted.filter(({ ts }) => ts >= from && ts < mark.ts);
    return within.reduce((sum, { tdur = 0 }) => sum + tdur, 0) / 1_000;
  });
}
