/** Rows as comma-separated values (RFC 4180): CRLF, quotes doubled; a byte order mark, so that spreadsheets read it as UTF-8. */
export function csvBlob(rows: readonly (readonly (string | number | null)[])[]): Blob {
  return new Blob(['\uFEFF', csvText(rows)], { type: 'text/csv;charset=utf-8' });
}

export function csvText(rows: readonly (readonly (string | number | null)[])[]): string {
  return rows.map((row) => `${row.map(cell).join(',')}\r\n`).join('');
}

function cell(value: string | number | null): string {
  if (value === null) return '';
  if (typeof value === 'number') return Number.isFinite(value) ? String(value) : '';
  return /[",\r\n]/.test(value) ? `"${value.replaceAll('"', '""')}"` : value;
}
