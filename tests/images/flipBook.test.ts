import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { animatedWebp } from '../../src/images/flipBook.ts';

const DRAWING =
  '<svg xmlns="http://www.w3.org/2000/svg" width="120" height="160"><rect x="0" y="150" width="10" height="10" fill="#00f"/></svg>';

/** A red block, to stand on a frame at a size. */
async function block(widthPx: number, heightPx: number): Promise<Buffer> {
  return sharp({ create: { width: widthPx, height: heightPx, channels: 3, background: '#f00' } })
    .webp({ lossless: true })
    .toBuffer();
}

/** Columns and rows that hold red in one page. */
async function redIn(book: Buffer, page: number): Promise<{ widthPx: number; heightPx: number; leftPx: number; topPx: number }> {
  const { data, info } = await sharp(book, { page }).removeAlpha().raw().toBuffer({ resolveWithObject: true });
  const places = Array.from({ length: info.width * info.height }, (_, at) => at).filter(
    (at) => (data[3 * at] ?? 0) > 180 && (data[3 * at + 1] ?? 255) < 90 && (data[3 * at + 2] ?? 255) < 90,
  );
  const columns = places.map((at) => at % info.width);
  const rows = places.map((at) => Math.floor(at / info.width));
  const [leftPx, topPx] = [Math.min(...columns), Math.min(...rows)];
  return { leftPx, topPx, widthPx: Math.max(...columns) - leftPx + 1, heightPx: Math.max(...rows) - topPx + 1 };
}

describe('animatedWebp', () => {
  it('has a page for each skin, each as long as asked, all at one scale with their words', async () => {
    const book = await animatedWebp(
      [
        { cut: await block(300, 500), leftPx: 40, topPx: 30, widthPx: 30, heightPx: 50, drawing: DRAWING },
        { cut: await block(77, 90), leftPx: 20, topPx: 10, widthPx: 60, heightPx: 100, drawing: DRAWING },
      ],
      { widthPx: 120, heightPx: 160 },
      700,
    );
    const { format, pages, delay, loop, width, height } = await sharp(book).metadata();
    expect({ format, pages, delay, loop, width, height }).toEqual({
      format: 'webp',
      pages: 2,
      delay: [700, 700],
      loop: 0,
      width: 120,
      height: 160,
    });
    const [first, second] = [await redIn(book, 0), await redIn(book, 1)];
    for (const [seen, is] of [
      [first.widthPx, 30],
      [first.heightPx, 50],
      [second.widthPx, 60],
      [second.heightPx, 100],
      [first.leftPx, 40],
      [second.topPx, 10],
    ] as const) {
      expect(Math.abs(seen - is)).toBeLessThanOrEqual(2);
    }
    for (const page of [0, 1]) {
      const [red = 0, , blue = 0] = await sharp(book, { page })
        .extract({ left: 2, top: 152, width: 4, height: 4 })
        .removeAlpha()
        .raw()
        .toBuffer();
      expect(blue - red).toBeGreaterThan(150);
    }
  });

  it('stands still with one skin', async () => {
    const book = await animatedWebp(
      [{ cut: await block(9, 9), leftPx: 0, topPx: 0, widthPx: 9, heightPx: 9, drawing: DRAWING }],
      { widthPx: 120, heightPx: 160 },
      700,
    );
    expect((await sharp(book).metadata()).pages ?? 1).toBe(1);
  });
});
