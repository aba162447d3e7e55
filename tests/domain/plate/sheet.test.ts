import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { frameAround } from '../../../src/domain/plate/frame.ts';
import { roundLengthMm } from '../../../src/domain/plate/scaleBar.ts';
import { CAPTION_MM, layOutSheet, SHEET_MARGIN_MM, SHEETS_MM } from '../../../src/domain/plate/sheet.ts';

const plates = fc.array(
  fc
    .record({
      widthMm: fc.double({ min: 3, max: 260, noNaN: true }),
      heightMm: fc.double({ min: 3, max: 320, noNaN: true }),
      at: fc.double({ min: 0.2, max: 0.8, noNaN: true }),
    })
    .map(({ widthMm, heightMm, at }) => ({ widthMm, heightMm, carapaceAtMm: at * heightMm, carapaceFromLeftMm: at * widthMm })),
  { minLength: 1, maxLength: 25 },
);

describe('layOutSheet', () => {
  it.each(['a4', 'letter'] as const)('keeps every skin and its caption on the %s sheet, none twice', (size) => {
    fc.assert(
      fc.property(plates, fc.constantFrom('true' as const, 'fitted' as const), (some, scale) => {
        const { pages } = layOutSheet(some, size, scale);
        const sheet = SHEETS_MM[size];
        for (const { leftMm, topMm, widthMm, heightMm, caption } of pages.flat()) {
          expect(leftMm).toBeGreaterThanOrEqual(SHEET_MARGIN_MM - 1e-6);
          expect(leftMm + widthMm).toBeLessThanOrEqual(sheet.widthMm - SHEET_MARGIN_MM + 1e-6);
          expect(topMm + heightMm).toBeLessThanOrEqual(caption.topMm + 1e-6);
        }
        const alone = pages.every((page) =>
          page.every(({ caption }) => caption.topMm + CAPTION_MM <= sheet.heightMm - SHEET_MARGIN_MM + 1e-6 || page.length === 1),
        );
        expect(alone).toBe(true);
        expect(pages.flat().map(({ index }) => index)).toEqual(some.map((_, index) => index));
      }),
      { numRuns: 60 },
    );
  });

  it('makes a millimeter a millimeter at true scale', () => {
    const { factor, pages } = layOutSheet([{ widthMm: 60, heightMm: 80, carapaceAtMm: 30, carapaceFromLeftMm: 30 }], 'a4', 'true');
    expect(factor).toBe(1);
    expect(pages[0]?.[0]).toMatchObject({ widthMm: 60, heightMm: 80, shown: { left: 0, top: 0, width: 1, height: 1 } });
  });

  it('cuts a skin larger than the sheet round its carapace, at the same scale', () => {
    const [page] = layOutSheet([{ widthMm: 372, heightMm: 100, carapaceAtMm: 50, carapaceFromLeftMm: 186 }], 'a4', 'true').pages;
    expect(page?.[0]).toMatchObject({ widthMm: 186, shown: { left: 0.25, width: 0.5 } });
  });

  it('stands carapaces of one row on one line', () => {
    const [page = []] = layOutSheet(
      [
        { widthMm: 30, heightMm: 40, carapaceAtMm: 10, carapaceFromLeftMm: 15 },
        { widthMm: 50, heightMm: 70, carapaceAtMm: 35, carapaceFromLeftMm: 25 },
      ],
      'a4',
      'true',
    ).pages;
    const lines = page.map(({ topMm, index }) => topMm + (index === 0 ? 10 : 35));
    expect(lines[0]).toBeCloseTo(lines[1] ?? 0, 9);
    expect(lines).toHaveLength(2);
  });
});

describe('frameAround', () => {
  it('holds each plate with its carapace at the same place', () => {
    expect(
      frameAround([
        { widthMm: 10, heightMm: 20, carapaceAtMm: 5, carapaceFromLeftMm: 4 },
        { widthMm: 30, heightMm: 22, carapaceAtMm: 2, carapaceFromLeftMm: 10 },
      ]),
    ).toEqual({ carapaceFromLeftMm: 10, carapaceAtMm: 5, widthMm: 30, heightMm: 25 });
  });
});

describe('roundLengthMm', () => {
  it.each([
    [60, 50],
    [19, 10],
    [2.4, 2],
    [0.7, 0.5],
  ])('fits into %f mm as %f', (longest, round) => {
    expect(roundLengthMm(longest)).toBe(round);
  });
});
