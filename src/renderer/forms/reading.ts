/** Text as a record keeps it: null where nothing was written. */
export function textOrNull(text: string): string | null {
  const trimmed = text.trim();
  return trimmed === '' ? null : trimmed;
}

/** A number typed with a point or a comma before its decimals; NaN for anything that is none, nothing included. */
export function decimalFrom(text: string): number {
  const trimmed = text.trim();
  return trimmed === '' ? Number.NaN : Number(trimmed.replace(',', '.').replace('−', '-'));
}

/** A whole number as a record keeps it: null where nothing was written, NaN (which every schema refuses) for anything else. */
export function wholeOrNull(text: string): number | null {
  const trimmed = text.trim();
  if (trimmed === '') return null;
  return /^\d+$/.test(trimmed) ? Number(trimmed) : Number.NaN;
}
