import { join } from 'node:path';
import { inflateSync } from 'node:zlib';
import { PDFDocument, PDFRawStream } from '@cantoo/pdf-lib';
import sharp from 'sharp';
import type { PixelPlace } from './photoTruth.ts';

const MM_PER_POINT = 25.4 / 72;
/** A5 lying, ISO 216:2007: the upper half of the sheet. */
const CARD_MM = { width: 210, height: 148 } as const;
/** All that is drawn on the card lies on whole pixels at this fineness. */
const PRINT_PX_PER_MM = 12;
/** The chessboard lies from 20 to 152 mm of the card: half of it is free. */
const LEAF_FROM_MM = 86;
const FOCAL_35_MM = 26;

/** A photo of a card from a printer that prints too small, beside a dark oval of known length; the table is told in mm. */
export const CARD_SCENE = {
  size: { width: 2400, height: 1800 },
  printedAt: 0.98,
  tiltDeg: 12,
  aboveMm: 360,
  card: { turnedDeg: 118, xMm: -50, yMm: 10 },
  oval: { xMm: 120, yMm: -15, lengthMm: 24, widthMm: 21 },
} as const;

/** Where a place of the table lies in the photo: x right and y down from the middle of the picture. */
export function seenOnTable(xMm: number, yMm: number): PixelPlace {
  const { size, aboveMm } = CARD_SCENE;
  const depth = aboveMm + yMm * SIN;
  return { x: size.width / 2 + (FOCAL_PX * xMm) / depth, y: size.height / 2 + (FOCAL_PX * yMm * COS) / depth };
}

/** By the diagonal of 36 mm x 24 mm (CIPA DC-008:2019, FocalLengthIn35mmFilm). */
const FOCAL_PX = (FOCAL_35_MM * Math.hypot(CARD_SCENE.size.width, CARD_SCENE.size.height)) / Math.hypot(36, 24);
const SIN = Math.sin((CARD_SCENE.tiltDeg * Math.PI) / 180);
const COS = Math.cos((CARD_SCENE.tiltDeg * Math.PI) / 180);

/**
 * Prints the card from the sheet's own vector drawing, lays it turned on a table, covers half of its board with a leaf and takes
 * a photo, aslant and darker to one side. Answers the path.
 */
export async function photographCard(folder: string, pdf: Uint8Array): Promise<string> {
  const print = await printed(pdf);
  const { size, aboveMm, card, printedAt, oval } = CARD_SCENE;
  const angle = (card.turnedDeg * Math.PI) / 180;
  const lightAt = (xMm: number, yMm: number): number => {
    if (Math.hypot((xMm - oval.xMm) / (oval.widthMm / 2), (yMm - oval.yMm) / (oval.lengthMm / 2)) < 1) return 0.03;
    const [dx, dy] = [(xMm - card.xMm) / printedAt, (yMm - card.yMm) / printedAt];
    const across = Math.cos(angle) * dx + Math.sin(angle) * dy + CARD_MM.width / 2;
    const down = -Math.sin(angle) * dx + Math.cos(angle) * dy + CARD_MM.height / 2;
    if (across < 0 || down < 0 || across >= CARD_MM.width || down >= CARD_MM.height) return 0.2;
    if (across > LEAF_FROM_MM) return 0.1;
    const index = Math.floor(down * PRINT_PX_PER_MM) * CARD_MM.width * PRINT_PX_PER_MM + Math.floor(across * PRINT_PX_PER_MM);
    return 0.02 + 0.8 * decoded((print[index] ?? 0) / 255);
  };
  const gray = Buffer.alloc(size.width * size.height);
  for (let row = 0; row < size.height; row++) {
    for (let column = 0; column < size.width; column++) {
      let sum = 0;
      for (const [right, down] of SAMPLES) {
        const u = (column + right - size.width / 2) / FOCAL_PX;
        const v = (row + down - size.height / 2) / FOCAL_PX;
        const yMm = (v * aboveMm) / (COS - v * SIN);
        sum += lightAt(u * (aboveMm + yMm * SIN), yMm);
      }
      const shade = 1 - (0.4 * column) / size.width;
      gray[row * size.width + column] = Math.round(255 * encoded((shade * sum) / SAMPLES.length));
    }
  }
  const file = join(folder, 'card.jpg');
  await sharp(gray, { raw: { ...size, channels: 1 } })
    .blur(0.6)
    .toColorspace('srgb')
    .jpeg({ quality: 90 })
    .withExif({ IFD2: { FocalLengthIn35mmFilm: `${FOCAL_35_MM}` } })
    .toFile(file);
  return file;
}

/** Within a pixel, no two in one row or column. */
const SAMPLES = Array.from({ length: 8 }, (_, index) => [(index + 0.5) / 8, (((3 * index) % 8) + 0.5) / 8] as const);

/** The card's filled rectangles, gray, row by row: operators of the content streams (ISO 32000-2:2020, 7.8.2 and 8.5). */
async function printed(pdf: Uint8Array): Promise<Buffer> {
  const document = await PDFDocument.load(pdf, { updateMetadata: false });
  const sheetMm = document.getPage(0).getHeight() * MM_PER_POINT;
  const contents = document.context
    .enumerateIndirectObjects()
    .flatMap(([, object]) => (object instanceof PDFRawStream ? [inflateSync(object.getContents()).toString('latin1')] : []))
    .join('\n');
  const fills = contents.split(/\bq\b/).flatMap((block) => {
    const shifts = [...block.matchAll(/1 0 0 1 (-?[\d.]+) (-?[\d.]+) cm/g)];
    const points = [...block.matchAll(/(-?[\d.]+) (-?[\d.]+) [ml]\b/g)].map(([, x, y]) => [Number(x), Number(y)] as const);
    const gray = /(-?[\d.]+) g\b/.exec(block)?.[1];
    if (gray === undefined || !/\bf\b/.test(block) || points.length < 4) return [];
    const left = shifts.reduce((sum, [, x]) => sum + Number(x), 0) * MM_PER_POINT;
    const bottom = shifts.reduce((sum, [, , y]) => sum + Number(y), 0) * MM_PER_POINT;
    const width = Math.max(...points.map(([x]) => x)) * MM_PER_POINT;
    const height = Math.max(...points.map(([, y]) => y)) * MM_PER_POINT;
    const top = sheetMm - (block.includes('1 0 0 -1 0 0 cm') ? bottom : bottom + height);
    const level = Math.round(255 * Number(gray));
    return [`<rect x="${left}" y="${top}" width="${width}" height="${height}" fill="rgb(${level},${level},${level})"/>`];
  });
  const { width, height } = CARD_MM;
  const drawing = `<svg xmlns="http://www.w3.org/2000/svg" width="${width * PRINT_PX_PER_MM}" height="${height * PRINT_PX_PER_MM}"
    viewBox="0 0 ${width} ${height}"><rect width="100%" height="100%" fill="white"/>${fills.join('')}</svg>`;
  return await sharp(Buffer.from(drawing)).toColorspace('b-w').raw().toBuffer();
}

/** IEC 61966-2-1. */
function decoded(value: number): number {
  return value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4;
}

function encoded(light: number): number {
  return light <= 0.0031308 ? 12.92 * light : 1.055 * light ** (1 / 2.4) - 0.055;
}
