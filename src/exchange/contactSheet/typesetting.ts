import { type Face, type FaceName, LACKING, openFace } from '../letters.ts';
import { wrappedWithin } from '../lines.ts';
import type { PlacedLine, PlacedText } from './placed.ts';

export type Faces = Readonly<Record<FaceName, Face>>;

export async function openFaces(): Promise<Faces> {
  return { regular: await openFace('regular'), bold: await openFace('bold'), italic: await openFace('italic') };
}

/** Where a paragraph stands: `atMm` is its left edge, its middle or its right edge. */
export interface Setting {
  readonly face: FaceName;
  readonly sizeMm: number;
  readonly align: 'left' | 'middle' | 'right';
  readonly atMm: number;
  readonly baselineMm: number;
  readonly widthMm: number;
  readonly lineMm: number;
  readonly mostLines: number;
}

/** Breaks a text to its width and places its lines below each other. */
export function set(faces: Faces, text: string, setting: Setting): PlacedText[] {
  const { face, sizeMm, align, atMm, baselineMm, widthMm, lineMm, mostLines } = setting;
  if (text === '') return [];
  return wrappedWithin(text, { face: faces[face], size: sizeMm, width: widthMm }, mostLines).map((line, index) => {
    const lengthMm = faces[face].widthOf(line, sizeMm);
    const leftMm = atMm - (align === 'left' ? 0 : align === 'middle' ? lengthMm / 2 : lengthMm);
    return { text: line, face, sizeMm, leftMm, baselineMm: baselineMm + index * lineMm };
  });
}

/** The largest size of several at which a text keeps to one line; the last where none does. */
export function fittingSizeMm(face: Face, text: string, widthMm: number, sizesMm: readonly number[]): number {
  return sizesMm.find((sizeMm) => face.widthOf(face.writable(text), sizeMm) <= widthMm) ?? sizesMm.at(-1) ?? 0;
}

/** A scale bar with a tick at both ends. */
export function barLines(leftMm: number, yMm: number, lengthMm: number): PlacedLine[] {
  const tick = (x: number): PlacedLine => ({ fromMm: [x, yMm - 1.4], toMm: [x, yMm + 1.4], thicknessMm: 0.35 });
  const bar: PlacedLine = { fromMm: [leftMm, yMm], toMm: [leftMm + lengthMm, yMm], thicknessMm: 0.35 };
  return [bar, tick(leftMm), tick(leftMm + lengthMm)];
}

/** Whether any of these holds a letter that the faces lack. */
export function isLacking(faces: Faces, texts: readonly string[]): boolean {
  return texts.some((text) => faces.regular.writable(text).includes(LACKING));
}
