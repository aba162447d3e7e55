import { describe, expect, test } from 'vitest';
import { BOARD, boardCorners, boardMarkers } from '../../../src/domain/scaleCard/board.ts';
import { isWhiteCell, MARKER_CELLS, MARKER_COUNT } from '../../../src/domain/scaleCard/dictionary.ts';
import { CHECK_BAR_MM, GRAY_STEPS, scaleCardLayout } from '../../../src/domain/scaleCard/layout.ts';
import {
  likelyPrintCheck,
  PrintCheck,
  PrintCheckDraft,
  printFactorsOf,
  UNCHECKED_PRINT,
} from '../../../src/domain/scaleCard/printCheck.ts';
import { openCvMarkerCells } from '../../support/opencv.ts';

test('the dictionary is DICT_4X4_50 as OpenCV draws it', async () => {
  const reference = await openCvMarkerCells();
  const cells = Array.from({ length: MARKER_COUNT }, (_, markerId) =>
    Array.from({ length: 36 }, (__, index) => isWhiteCell(markerId, (index % 6) - 1, Math.floor(index / 6) - 1)),
  );
  expect(MARKER_COUNT).toBe(50);
  cells.forEach((ours, markerId) => {
    expect(ours, `marker ${markerId}`).toEqual(reference(markerId));
  });
  expect(() => isWhiteCell(50, 0, 0)).toThrow(RangeError);
});

describe('the board', () => {
  test('holds each marker once, within the dictionary, centered in a white square', () => {
    const markers = boardMarkers();
    expect(markers).toHaveLength(38);
    expect(new Set(markers.map(({ markerId }) => markerId)).size).toBe(38);
    expect(Math.max(...markers.map(({ markerId }) => markerId))).toBeLessThan(MARKER_COUNT);
    for (const { corners } of markers) {
      const column = (corners[0].xMm - BOARD.leftMm - 1.5) / BOARD.squareMm;
      const row = (corners[0].yMm - BOARD.topMm - 1.5) / BOARD.squareMm;
      expect(Number.isInteger(column) && Number.isInteger(row) && (column + row) % 2 === 1).toBe(true);
    }
  });

  test('has sixty inner corners, twelve millimeters apart', () => {
    const corners = boardCorners();
    expect(corners).toHaveLength(60);
    expect(corners[1]?.xMm).toBe((corners[0]?.xMm ?? 0) + 12);
    expect(corners[10]?.yMm).toBe((corners[0]?.yMm ?? 0) + 12);
  });
});

describe.each(['a5', 'half-letter'] as const)('the card on %s', (size) => {
  const layout = scaleCardLayout(size);
  const fills = layout.shapes.filter((shape) => shape.kind === 'fill');

  test('keeps all of it 9 mm and more from the edge of the paper, which printers leave white', () => {
    for (const { leftMm, topMm, widthMm, heightMm } of fills) {
      expect(Math.min(leftMm, topMm)).toBeGreaterThan(9);
      expect(leftMm + widthMm).toBeLessThan(layout.widthMm - 9);
      expect(topMm + heightMm).toBeLessThan(layout.heightMm - 9);
    }
  });

  test('names each of its two check bars beside it, by a letter, and says how long it is', () => {
    const named = layout.shapes.flatMap((shape) => (shape.kind === 'words' && /^[AB]: 50 mm/.test(shape.text) ? [shape] : []));
    const bars = fills.filter(({ widthMm, heightMm }) => Math.max(widthMm, heightMm) === CHECK_BAR_MM && Math.min(widthMm, heightMm) === 4);
    const near = ({ xMm, yMm }: (typeof named)[number]) =>
      bars.find(
        ({ leftMm, topMm, widthMm, heightMm }) => Math.abs(xMm - leftMm) < 5 && yMm > topMm && yMm < topMm + heightMm + 5 && widthMm > 0,
      );
    // The reading of A gives the factor of x, so A has to be the bar that lies along the card.
    expect(named.map((words) => [words.text[0], near(words)?.widthMm])).toEqual([
      ['A', CHECK_BAR_MM],
      ['B', 4],
    ]);
  });

  test('has a bar of exactly 50 mm along it and one across', () => {
    const bars = fills.filter(({ widthMm, heightMm }) => Math.max(widthMm, heightMm) === CHECK_BAR_MM && Math.min(widthMm, heightMm) === 4);
    expect(bars.map(({ widthMm }) => widthMm).toSorted((one, other) => one - other)).toEqual([4, 50]);
  });

  test('has millimeter ticks along all four sides', () => {
    const ticks = fills.filter(({ widthMm, heightMm }) => Math.min(widthMm, heightMm) === 0.15);
    expect(ticks).toHaveLength(2 * 171 + 2 * 101);
    const upper = ticks.filter(({ widthMm, topMm }) => widthMm === 0.15 && topMm === layout.frameTopMm);
    const places = upper.map(({ leftMm }) => leftMm + 0.075).toSorted((one, other) => one - other);
    places.slice(1).forEach((place, index) => {
      expect(place - (places[index] ?? 0)).toBeCloseTo(1, 9);
    });
  });

  test('has gray steps whose luminance is that of their lightness', () => {
    const steps = fills.filter(({ widthMm }) => widthMm === 14);
    expect(steps).toHaveLength(GRAY_STEPS.length);
    // CIE 15:2018, 8.2.1: L* = 50 is 18.42 % of white; IEC 61966-2-1 encodes that as 0.4663.
    expect(steps[GRAY_STEPS.indexOf(50)]?.gray).toBeCloseTo(0.4663, 3);
  });

  test('lets no two things that measure lie upon each other', () => {
    const squares = fills.filter(({ widthMm, heightMm, gray }) => widthMm === BOARD.squareMm && heightMm === BOARD.squareMm && gray === 0);
    expect(squares).toHaveLength(39);
    const boardRight = layout.frameLeftMm + BOARD.leftMm + BOARD.columns * BOARD.squareMm;
    const boardBottom = layout.frameTopMm + BOARD.topMm + BOARD.rows * BOARD.squareMm;
    const inBoard = fills.filter(
      ({ leftMm, topMm }) => leftMm < boardRight && topMm < boardBottom && leftMm > layout.frameLeftMm + 5 && topMm > layout.frameTopMm + 5,
    );
    expect(inBoard.every(({ widthMm }) => widthMm === BOARD.squareMm || widthMm === BOARD.markerMm || widthMm <= MARKER_CELLS * 1.5)).toBe(
      true,
    );
  });
});

describe('the check of a printer', () => {
  const check = { printer: 'hallway', barAMm: 48.6, barBMm: 49.1, readingStandardUncertaintyMm: 0.03, checkedOn: '2026-11-20' };

  test('gives the factors that its sheets are larger by', () => {
    const factors = printFactorsOf(PrintCheckDraft.parse(check));
    expect(factors.xFactor).toBeCloseTo(0.972, 12);
    expect(factors.yFactor).toBeCloseTo(0.982, 12);
    expect(factors.relativeStandardUncertainty).toBeCloseTo(Math.hypot(0.0006, 0.001), 12);
  });

  test('is offered for a new card while there is one printer, the latest first; with several nothing tells which', () => {
    const [older, newer] = [PrintCheck.parse({ ...check, id: 'older' }), PrintCheck.parse({ ...check, id: 'newer' })];
    expect(likelyPrintCheck([newer, older])).toBe(newer);
    expect(likelyPrintCheck([])).toBeNull();
    expect(likelyPrintCheck([newer, { ...older, printer: 'study' }])).toBeNull();
  });

  test('an unchecked printer is trusted within two percent only', () => {
    expect(UNCHECKED_PRINT.relativeStandardUncertainty).toBeCloseTo(0.02 / Math.sqrt(3), 12);
  });

  test('refuses readings that can be no such bar, and a printer without a name', () => {
    expect(PrintCheckDraft.safeParse({ ...check, barAMm: 4.86 }).success).toBe(false);
    expect(PrintCheckDraft.safeParse({ ...check, printer: ' ' }).success).toBe(false);
  });
});
