import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import fontkit from '@cantoo/fontkit';
import type { PDFDocument, PDFFont } from '@cantoo/pdf-lib';

/** The fonts that every viewer brings along (ISO 32000-2:2020, 9.6.2.2) know Western letters only; these know Greek, Cyrillic and all of Latin. */
const FACES = {
  regular: '400Regular/SourceSans3_400Regular.ttf',
  bold: '700Bold/SourceSans3_700Bold.ttf',
  italic: '400Regular_Italic/SourceSans3_400Regular_Italic.ttf',
} as const;

const fonts = createRequire(import.meta.url);

/** Has one face written into a document; only the letters that it needs. */
export async function embedFace(document: PDFDocument, face: keyof typeof FACES): Promise<PDFFont> {
  document.registerFontkit(fontkit);
  return document.embedFont(await readFile(fonts.resolve(`@expo-google-fonts/source-sans-3/${FACES[face]}`)), { subset: true });
}

/** Stands for a letter that the fonts lack. */
export const LACKING = '\u25a1';
export const LACKING_NOTE = `${LACKING} stands for a letter that this font does not have; the record itself has it.`;

/** A text as its font can write it: composed, blanks for what ends a line, and a mark for each letter that is lacking. */
export function writable(text: string, font: PDFFont): string {
  const known = new Set(font.getCharacterSet());
  return [...text.normalize('NFC')]
    .map((letter) => (/\s/u.test(letter) ? ' ' : known.has(letter.codePointAt(0) ?? 0) ? letter : LACKING))
    .join('');
}

/** A font with how wide it writes, points at a size. Letter by letter, without kerning: for breaking lines, where each would be laid out many times. */
export interface Face {
  readonly font: PDFFont;
  readonly widthOf: (text: string, sizePt: number) => number;
}

export function faceOf(font: PDFFont): Face {
  const widths = new Map<string, number>();
  const widthOfLetter = (letter: string): number => {
    const known = widths.get(letter) ?? font.widthOfTextAtSize(letter, 1);
    widths.set(letter, known);
    return known;
  };
  return { font, widthOf: (text, sizePt) => sizePt * Array.from(text).reduce((sum, letter) => sum + widthOfLetter(letter), 0) };
}
