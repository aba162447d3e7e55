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
export type FaceName = keyof typeof FACES;

const fonts = createRequire(import.meta.url);

function fileOf(face: FaceName): Promise<Buffer> {
  return readFile(fonts.resolve(`@expo-google-fonts/source-sans-3/${FACES[face]}`));
}

/** Has one face written into a document; only the letters that it needs. */
export async function embedFace(document: PDFDocument, face: FaceName): Promise<PDFFont> {
  document.registerFontkit(fontkit);
  return document.embedFont(await fileOf(face), { subset: true });
}

/** Stands for a letter that the fonts lack. */
export const LACKING = '\u25a1';
export const LACKING_NOTE = `${LACKING} stands for a letter that this font does not have; the record itself has it.`;

/** One letter as drawn: SVG path data in units of the font, upward, and how far from the start of its line. */
export interface Outline {
  readonly path: string;
  readonly start: number;
}

/** One face, as wide and as drawn as a PDF with it embedded has it: letters side by side, without kerning. */
export interface Face {
  readonly unitsPerEm: number;
  /** A text as this face can write it: composed, blanks for what ends a line, and a mark for each letter that is lacking. */
  writable(text: string): string;
  /** @param size of the em, in any unit of length. @returns in the same unit. @param text writable. */
  widthOf(text: string, size: number): number;
  /** @param text writable. */
  outlinesOf(text: string): Outline[];
}

export async function openFace(name: FaceName): Promise<Face> {
  const font = fontkit.create(await fileOf(name));
  if (!('layout' in font)) throw new TypeError('Expected one font but received a collection');
  const widths = new Map<string, number>();
  const widthInEm = (word: string): number => {
    const known = widths.get(word);
    if (known !== undefined) return known;
    const width = font.layout(word).glyphs.reduce((sum, { advanceWidth }) => sum + advanceWidth, 0) / font.unitsPerEm;
    widths.set(word, width);
    return width;
  };
  return {
    unitsPerEm: font.unitsPerEm,
    writable: (text) =>
      [...text.normalize('NFC')]
        .map((letter) => (/[\s\p{Cc}]/u.test(letter) ? ' ' : font.hasGlyphForCodePoint(letter.codePointAt(0) ?? 0) ? letter : LACKING))
        .join(''),
    // By words, each laid out once: lines are broken by trying them.
    widthOf: (text, size) => size * text.split(/(\s)/).reduce((sum, word) => sum + (word === '' ? 0 : widthInEm(word)), 0),
    outlinesOf: (text) => {
      let at = 0;
      return font.layout(text).glyphs.map((glyph) => {
        const start = at;
        at += glyph.advanceWidth;
        return { path: glyph.path.toSVG(), start };
      });
    },
  };
}
