import { extractText, getDocumentProxy } from 'unpdf';
import { beforeAll, describe, expect, it } from 'vitest';
import { frameAround } from '../../../src/domain/plate/frame.ts';
import { layOutSheet, SHEET_MARGIN_MM, type SheetScale, type SheetSize } from '../../../src/domain/plate/sheet.ts';
import { contactSheetPdf } from '../../../src/exchange/contactSheet/contactSheetPdf.ts';
import { framePages } from '../../../src/exchange/contactSheet/framePages.ts';
import type { PlacedText } from '../../../src/exchange/contactSheet/placed.ts';
import { sheetPages } from '../../../src/exchange/contactSheet/sheetPages.ts';
import type { SheetWords } from '../../../src/exchange/contactSheet/sheetWords.ts';
import { svgPage } from '../../../src/exchange/contactSheet/svgPage.ts';
import { type Faces, openFaces } from '../../../src/exchange/contactSheet/typesetting.ts';
import { darkShareIn } from '../../support/darkPixels.ts';
import { smallPicture } from '../../support/smallPictures.ts';

const PLATES = [20, 34, 52, 80, 110].map((heightMm) => ({
  widthMm: heightMm * 0.6,
  heightMm,
  carapaceAtMm: heightMm * 0.4,
  carapaceFromLeftMm: heightMm * 0.3,
}));
const WORDS: SheetWords = {
  title: 'Juniper',
  taxon: 'Brachypelma hamorii',
  code: 'FH-03',
  captions: PLATES.map((_, index) => [`Instar ${index + 5}`, `shed ${index + 1} May 2024`, `carapace ${10 + index}.00 mm ± 0.20 mm`]),
  note: 'Sample data: this animal and its skins are invented.',
};
const LONG: SheetWords = {
  ...WORDS,
  title: 'The one that was brought back from the fair in the spring of the year 2019, second of four from that egg sac, pale',
  taxon: 'Grammostola pulchripes subspecies to be settled by whoever knows more than is written on the box it came in',
  code: 'COLLECTION-2019-SPRING-0004-B-WITHOUT-ANY-BLANK-IN-IT-AND-LONGER-THAN-HALF-A-SHEET',
  captions: PLATES.map(() => [
    'Instar 12 if no molt was missed, or one of those on either side of it',
    'shed 20 Dec 2024 to 10 Jan 2025',
    'carapace 123.45 mm ± 12.34 mm, height assumed',
  ]),
};
const SHEETS: readonly [SheetSize, SheetScale][] = [
  ['a4', 'fitted'],
  ['a4', 'true'],
  ['letter', 'fitted'],
  ['letter', 'true'],
];

let faces: Faces;
beforeAll(async () => {
  faces = await openFaces();
});
const rightMm = ({ text, face, sizeMm, leftMm }: PlacedText) => leftMm + faces[face].widthOf(text, sizeMm);

describe.each([
  ['usual', WORDS],
  ['very long', LONG],
])('words of a contact sheet, %s', (_, words) => {
  it.each(SHEETS)('keep within their margins and cells, and off each other (%s, %s)', (size, scale) => {
    const layout = layOutSheet(PLATES, size, scale);
    const pages = sheetPages(layout, words, faces);
    expect(pages).toHaveLength(layout.pages.length);
    for (const [number, { texts, widthMm, heightMm }] of pages.entries()) {
      expect(texts.length).toBeGreaterThan(6);
      for (const text of texts) {
        expect(text.leftMm).toBeGreaterThanOrEqual(SHEET_MARGIN_MM - 1e-6);
        expect(rightMm(text)).toBeLessThanOrEqual(widthMm - SHEET_MARGIN_MM + 1e-6);
        expect(text.baselineMm).toBeLessThan(heightMm - 8);
        const beside = texts.filter((other) => other !== text && Math.abs(other.baselineMm - text.baselineMm) < text.sizeMm * 0.7);
        for (const other of beside) expect(other.leftMm > rightMm(text) || rightMm(other) < text.leftMm).toBe(true);
      }
      for (const { caption } of layout.pages[number] ?? []) {
        const lines = texts.filter(
          ({ leftMm, baselineMm }) =>
            Math.abs(leftMm - caption.middleMm) < caption.widthMm / 2 && baselineMm > caption.topMm && baselineMm < caption.topMm + 17,
        );
        expect(lines.length).toBeGreaterThanOrEqual(3);
        for (const line of lines) expect(rightMm(line)).toBeLessThanOrEqual(caption.middleMm + caption.widthMm / 2 + 1e-6);
      }
    }
  });

  it('stand above and below the skins of a flip-book, each within its frame', () => {
    const frames = framePages(frameAround(PLATES), words, faces);
    expect(frames.pages).toHaveLength(PLATES.length);
    const footMm = frames.skinsTopMm + frameAround(PLATES).heightMm * frames.factor;
    for (const { texts, widthMm, heightMm } of frames.pages) {
      expect([widthMm, heightMm]).toEqual([frames.widthMm, frames.heightMm]);
      for (const text of texts) {
        expect(text.leftMm).toBeGreaterThanOrEqual(0);
        expect(rightMm(text)).toBeLessThanOrEqual(widthMm);
        expect(text.baselineMm + 0.3 * text.sizeMm < frames.skinsTopMm || text.baselineMm - text.sizeMm > footMm).toBe(true);
      }
    }
  });
});

describe('a usual sheet', () => {
  it('shortens nothing, also where no molt was counted and a date is a span', () => {
    const captions = PLATES.map(() => [
      'Instar 12 if no molt was missed',
      'shed 20 Dec 2024 to 10 Jan 2025',
      'carapace 10.00 mm ± 0.20 mm',
    ]);
    const layout = layOutSheet(PLATES, 'a4', 'fitted');
    const said = sheetPages(layout, { ...WORDS, captions }, faces).flatMap(({ texts }) => texts.map(({ text }) => text));
    expect(said.join(' ')).not.toContain('…');
    for (const text of captions[0] ?? []) expect(said.filter((line) => line === text)).toHaveLength(PLATES.length);
  });

  it('is read back from the PDF with every name, date, size and rule', async () => {
    const layout = layOutSheet(PLATES, 'a4', 'fitted');
    const pictures = new Map(await Promise.all(PLATES.map(async (_, index) => [index, await smallPicture(index, 'jpeg')] as const)));
    const pdf = await getDocumentProxy(new Uint8Array(await contactSheetPdf(layout, WORDS, pictures)));
    const text = (await extractText(pdf, { mergePages: true })).text.replace(/\s+/g, ' ');
    for (const words of [
      WORDS.title,
      WORDS.taxon,
      WORDS.code,
      WORDS.note,
      ...WORDS.captions.flat(),
      'Each skin shows the instar that ended',
    ])
      expect(text).toContain(words);
  });

  it('is drawn with letters of its own, dark under every skin, and with nothing that the machine would have to have', async () => {
    const layout = layOutSheet(PLATES, 'a4', 'fitted');
    const [page] = sheetPages(layout, WORDS, faces);
    if (!page) throw new Error('Expected a page');
    const drawing = svgPage(page, faces, 4);
    expect(drawing).not.toMatch(/<text|font-family/);
    for (const { text, face, sizeMm, leftMm, baselineMm } of page.texts) {
      const widthMm = faces[face].widthOf(text, sizeMm);
      const share = await darkShareIn(Buffer.from(drawing), {
        left: Math.round(leftMm * 4),
        top: Math.round((baselineMm - 0.7 * sizeMm) * 4),
        width: Math.max(1, Math.round(widthMm * 4)),
        height: Math.max(1, Math.round(0.75 * sizeMm * 4)),
      });
      // Letters cover about a fifth of the box that they stand in.
      expect(share, text).toBeGreaterThan(0.08);
      expect(share, text).toBeLessThan(0.6);
    }
  });
});
