/** "1 molt", "3 molts"; for plurals that are not made with s, say them. */
export function counted(count: number, one: string, many: string = `${one}s`): string {
  return `${count} ${count === 1 ? one : many}`;
}

/** "a", "a and b", "a, b and c". */
export function listed(parts: readonly string[]): string {
  if (parts.length < 2) return parts.join('');
  return `${parts.slice(0, -1).join(', ')} and ${parts.at(-1)}`;
}

/** "820 B", "3.4 MB": decimal prefixes, as ISO/IEC 80000-13 leaves them. */
export function bytesInWords(bytes: number): string {
  if (bytes < 1_000) return `${bytes} B`;
  if (bytes < 1_000_000) return `${Math.round(bytes / 1_000)} kB`;
  const megabytes = bytes / 1_000_000;
  return megabytes < 1_000 ? `${megabytes.toFixed(1)} MB` : `${(megabytes / 1_000).toFixed(1)} GB`;
}
