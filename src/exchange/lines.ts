import type { Face } from './letters.ts';

/** A column of one face. Size and width share a unit. */
export interface Column {
  readonly face: Face;
  readonly size: number;
  readonly width: number;
}

/** A text in as many lines as it needs, broken between words; a word wider than the column, such as the name of a file, is broken. */
export function wrapped(text: string, column: Column): string[] {
  const { face, size, width } = column;
  const lines: string[] = [];
  let line = '';
  for (const word of face
    .writable(text)
    .split(/\s+/)
    .flatMap((long) => piecesOf(long, column))) {
    const longer = line === '' ? word : `${line} ${word}`;
    if (face.widthOf(longer, size) <= width) line = longer;
    else {
      if (line !== '') lines.push(line);
      line = word;
    }
  }
  return [...lines, line];
}

/** The same in at most so many lines; what does not fit is cut, with a sign that it was. @param most at least one. */
export function wrappedWithin(text: string, column: Column, most: number): string[] {
  const lines = wrapped(text, column);
  if (lines.length <= most) return lines;
  return [...lines.slice(0, most - 1), shortened(lines.slice(most - 1).join(' '), column)];
}

/** On one line, cut with a sign where it is too long. */
function shortened(text: string, { face, size, width }: Column): string {
  const letters = [...text];
  while (letters.length > 0 && face.widthOf(`${letters.join('').trimEnd()}…`, size) > width) letters.pop();
  return `${letters.join('').trimEnd()}…`;
}

function piecesOf(word: string, { face, size, width }: Column): string[] {
  if (face.widthOf(word, size) <= width) return [word];
  const pieces: string[] = [];
  let piece = '';
  for (const letter of word) {
    if (piece !== '' && face.widthOf(piece + letter, size) > width) {
      pieces.push(piece);
      piece = '';
    }
    piece += letter;
  }
  return [...pieces, piece];
}
