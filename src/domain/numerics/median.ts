/** The middle value, of an even count the mean of the two middle ones; 0 of none. */
export function medianOf(values: readonly number[]): number {
  const sorted = values.toSorted((one, other) => one - other);
  const middle = Math.floor(sorted.length / 2);
  return sorted.length % 2 === 1 ? (sorted[middle] ?? 0) : ((sorted[middle - 1] ?? 0) + (sorted[middle] ?? 0)) / 2;
}
