import { inflateSync } from 'node:zlib';
import { PDFDocument, PDFRawStream } from '@cantoo/pdf-lib';
import { describe, expect, test } from 'vitest';
import { CARD_SIZES_MM, scaleCardLayout } from '../../../src/domain/scaleCard/layout.ts';
import { scaleCardPdf } from '../../../src/exchange/scaleCard/scaleCardPdf.ts';

const MM_PER_POINT = 25.4 / 72;

/** Operators of the page's content streams (ISO 32000-2:2020, 7.8.2). */
async function opened(bytes: Uint8Array) {
  const document = await PDFDocument.load(bytes, { updateMetadata: false });
  const [page] = document.getPages();
  if (!page) throw new Error('The document has no page');
  const contents = document.context
    .enumerateIndirectObjects()
    .flatMap(([, object]) => (object instanceof PDFRawStream ? [inflateSync(object.getContents()).toString('latin1')] : []))
    .join('\n');
  return { document, page, contents };
}

interface Box {
  readonly leftMm: number;
  readonly topMm: number;
  readonly widthMm: number;
  readonly heightMm: number;
}

/** Every filled rectangle: moved by a `cm`, perhaps turned over by another, drawn by lines from its own corner. */
function boxesIn(contents: string, sheetHeightMm: number): readonly Box[] {
  const blocks = contents.split(/\bq\b/).slice(1);
  return blocks.flatMap((block) => {
    const shifts = [...block.matchAll(/1 0 0 1 (-?[\d.]+) (-?[\d.]+) cm/g)];
    const points = [...block.matchAll(/(-?[\d.]+) (-?[\d.]+) [ml]\b/g)].map(([, x, y]) => [Number(x), Number(y)] as const);
    if (!/\bf\b/.test(block) || points.length < 4) return [];
    const x = shifts.reduce((sum, [, value]) => sum + Number(value), 0);
    const y = shifts.reduce((sum, [, , value]) => sum + Number(value), 0);
    const width = Math.max(...points.map((point) => point[0]));
    const height = Math.max(...points.map((point) => point[1]));
    const top = block.includes('1 0 0 -1 0 0 cm') ? y : y + height;
    return [
      {
        leftMm: x * MM_PER_POINT,
        topMm: sheetHeightMm - top * MM_PER_POINT,
        widthMm: width * MM_PER_POINT,
        heightMm: height * MM_PER_POINT,
      },
    ];
  });
}

describe.each([
  ['a4', 210, 297, 'a5'],
  ['letter', 215.9, 279.4, 'half-letter'],
] as const)('the sheet %s', (sheet, widthMm, heightMm, card) => {
  const opening = scaleCardPdf(sheet).then(opened);

  test('has the size of its paper', async () => {
    const { page } = await opening;
    expect(page.getWidth() * MM_PER_POINT).toBeCloseTo(widthMm, 6);
    expect(page.getHeight() * MM_PER_POINT).toBeCloseTo(heightMm, 6);
  });

  test('draws everything of both cards where the layout has it, to a thousandth of a millimeter', async () => {
    const { contents } = await opening;
    const boxes = boxesIn(contents, heightMm);
    const layout = scaleCardLayout(card);
    const fills = layout.shapes.filter((shape) => shape.kind === 'fill');
    const lower = heightMm - CARD_SIZES_MM[card][1];
    const wanted = [...fills, ...fills.map((shape) => ({ ...shape, topMm: shape.topMm + lower }))];
    expect(boxes).toHaveLength(wanted.length);
    // The order of drawing is the layout's, card by card.
    boxes.forEach((box, index) => {
      const expected = wanted[index];
      for (const side of ['leftMm', 'topMm', 'widthMm', 'heightMm'] as const) {
        expect(Math.abs(box[side] - (expected?.[side] ?? Number.NaN))).toBeLessThan(0.001);
      }
    });
    const bars = boxes.filter((box) => Math.abs(box.widthMm - 50) < 1 && Math.abs(box.heightMm - 4) < 0.1);
    expect(bars).toHaveLength(2);
    for (const bar of bars) expect(Math.abs(bar.widthMm - 50)).toBeLessThan(0.001);
  });

  test('holds no picture, asks to be printed at actual size, and says whose card it is', async () => {
    const { document, contents } = await opening;
    expect(contents).not.toMatch(/\bDo\b/);
    expect(document.catalog.getViewerPreferences()?.getPrintScaling()).toBe('None');
    expect(document.getTitle()).toBe('Exuviary scale card');
  });

  test('is the same each time', async () => {
    expect(Buffer.compare(await scaleCardPdf(sheet), await scaleCardPdf(sheet))).toBe(0);
  });
});
