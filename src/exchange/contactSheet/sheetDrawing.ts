import { roundLengthMm, SHEET_HEAD_MM, SHEET_MARGIN_MM, SHEETS_MM, type SheetLayout } from '../../domain/plate/sheet.ts';
import { SHEET_RULE, type SheetWords, scaleNote } from './sheetWords.ts';

const LINE_MM = 4.2;
const LONGEST_BAR_MM = 60;
const FACE = 'font-family="Source Sans 3, Helvetica, Arial, sans-serif" fill="#1e1a16"';

/** All that is written on one page of a contact sheet, as an SVG to lay over its skins; drawn in mm, `dotsPerMm` pixels each. */
export function sheetDrawing(layout: SheetLayout, words: SheetWords, page: number, dotsPerMm: number): string {
  const { widthMm, heightMm } = SHEETS_MM[layout.size];
  const pageNumber = layout.pages.length > 1 ? `${page + 1} of ${layout.pages.length}` : '';
  const headMm = SHEET_MARGIN_MM + SHEET_HEAD_MM - 4;
  const lengthMm = roundLengthMm(LONGEST_BAR_MM / layout.factor);
  const barMm = lengthMm * layout.factor;
  const baseMm = heightMm - SHEET_MARGIN_MM - 1;
  const notesMm = SHEET_MARGIN_MM + barMm + 22;
  const captions = (layout.pages[page] ?? []).flatMap(({ index, caption }) =>
    (words.captions[index] ?? []).map((text, line) =>
      textAt(
        text,
        caption.middleMm,
        caption.topMm + LINE_MM * (line + 1),
        2.9,
        `text-anchor="middle"${line === 0 ? ' font-weight="bold"' : ''}`,
      ),
    ),
  );
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${Math.round(widthMm * dotsPerMm)}" height="${Math.round(heightMm * dotsPerMm)}" viewBox="0 0 ${widthMm} ${heightMm}">`,
    textAt(words.title, SHEET_MARGIN_MM, SHEET_MARGIN_MM + 6, 5.6, 'font-weight="bold"'),
    textAt(words.taxon, SHEET_MARGIN_MM, headMm, 3.5, 'font-style="italic"'),
    textAt([words.code, pageNumber].filter(Boolean).join('   '), widthMm - SHEET_MARGIN_MM, headMm, 3.5, 'text-anchor="end"'),
    ...captions,
    `<path d="M${SHEET_MARGIN_MM} ${baseMm}h${barMm}m0 -1.4v2.8m${-barMm} 0v-2.800" fill="none" stroke="#1e1a16" stroke-width="0.35"/>`,
    textAt(`${lengthMm} mm`, SHEET_MARGIN_MM + barMm + 3, baseMm + 1, 3.2, 'font-weight="bold"'),
    textAt(scaleNote(layout.factor), notesMm, baseMm - 2, 2.5, ''),
    textAt(SHEET_RULE, notesMm, baseMm + 1.6, 2.5, ''),
    '</svg>',
  ].join('');
}

/** The words and the scale bar of one frame of a flip-book, in its own pixels. */
export function frameDrawing(
  frame: { readonly widthPx: number; readonly heightPx: number; readonly pxPerMm: number },
  words: SheetWords,
  index: number,
): string {
  const { widthPx, heightPx, pxPerMm } = frame;
  const line = Math.max(14, Math.round(heightPx / 36));
  const lengthMm = roundLengthMm((0.3 * widthPx) / pxPerMm);
  const barPx = lengthMm * pxPerMm;
  const baseY = heightPx - 1.2 * line;
  const [name = '', ...more] = words.captions[index] ?? [];
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${widthPx}" height="${heightPx}">`,
    textAt(words.title, line, 1.7 * line, line, 'font-weight="bold"'),
    textAt(words.taxon, line, 3 * line, 0.9 * line, 'font-style="italic"'),
    textAt(name, widthPx - line, 1.7 * line, line, 'font-weight="bold" text-anchor="end"'),
    ...more.map((text, row) => textAt(text, widthPx - line, (3 + 1.2 * row) * line, 0.9 * line, 'text-anchor="end"')),
    `<path d="M${line} ${baseY}h${barPx}m0 -5v10m${-barPx} 0v-10" fill="none" stroke="#1e1a16" stroke-width="2"/>`,
    textAt(`${lengthMm} mm`, line + barPx + 10, baseY + 0.3 * line, 0.9 * line, 'font-weight="bold"'),
    '</svg>',
  ].join('');
}

function textAt(text: string, x: number, y: number, size: number, more: string): string {
  return `<text x="${x}" y="${y}" font-size="${size}" ${FACE} ${more}>${escaped(text)}</text>`;
}

/** XML 1.0 takes no control characters either. */
function escaped(text: string): string {
  return text
    .replace(/\p{Cc}/gu, ' ')
    .replaceAll('&', '&amp;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;')
    .replaceAll('"', '&quot;');
}
