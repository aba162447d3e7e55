/** Files and time needed before the pace says anything. */
const FEWEST_DONE = 3;
const SHORTEST_ELAPSED_MS = 2_000;

/** Seconds still to go at the mean pace so far; null while that is a guess. */
export function remainingSecondsOf(done: number, total: number, elapsedMs: number): number | null {
  if (done < FEWEST_DONE || elapsedMs < SHORTEST_ELAPSED_MS) return null;
  return Math.round(((elapsedMs / done) * (total - done)) / 1_000);
}
