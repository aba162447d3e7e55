/** Text as a record keeps it: null where nothing was written. */
export function textOrNull(text: string): string | null {
  const trimmed = text.trim();
  return trimmed === '' ? null : trimmed;
}

/** A whole number as a record keeps it: null where nothing was written, NaN (which every schema refuses) for anything else. */
export function wholeOrNull(text: string): number | null {
  const trimmed = text.trim();
  if (trimmed === '') return null;
  return /^\d+$/.test(trimmed) ? Number(trimmed) : Number.NaN;
}
