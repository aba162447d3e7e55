import { medianOf } from '../numerics/median.ts';
import { markAt, type ProjectiveLine } from './projectiveLine.ts';
import type { Peak } from './tickBands.ts';
import { SPACING_TOLERANCE } from './tickRow.ts';

/** Numbers peaks by the spacing around them; a peak off the even row is left out, a gap leaves numbers out. */
export function numberPeaks(peaks: readonly Peak[]): readonly { readonly number: number; readonly uPx: number }[] {
  const spacings = peaks.slice(1).map((peak, index) => peak.uPx - (peaks[index]?.uPx ?? 0));
  const local = (index: number): number => medianOf(spacings.slice(Math.max(0, index - 6), index + 7));
  const runs: { number: number; uPx: number }[][] = [];
  let run: { number: number; uPx: number }[] = [];
  peaks.forEach((peak, index) => {
    const last = run.at(-1);
    if (!last) {
      run.push({ number: 0, uPx: peak.uPx });
      return;
    }
    const steps = (peak.uPx - last.uPx) / local(index);
    const whole = Math.round(steps);
    if (whole >= 1 && whole <= 6 && Math.abs(steps - whole) <= SPACING_TOLERANCE * Math.sqrt(whole)) {
      run.push({ number: last.number + whole, uPx: peak.uPx });
    } else if (whole > 6) {
      runs.push(run);
      run = [{ number: 0, uPx: peak.uPx }];
    }
  });
  runs.push(run);
  return runs.reduce((longest, one) => (one.length > longest.length ? one : longest));
}

/** The same map with its numbers shifted so that 0 is the tick nearest to the first click. */
export function startingAtClick(line: ProjectiveLine): ProjectiveLine {
  const shift = Math.round(markAt(line, 0));
  const last = line.c * shift + 1;
  return { a: line.a / last, b: (line.a * shift + line.b) / last, c: line.c / last };
}
