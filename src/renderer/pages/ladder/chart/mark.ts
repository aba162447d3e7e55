import type { Rung } from '../../../../domain/growth/rung.ts';
import { spanInWords } from '../../../../words/dates.ts';
import { estimateAsText } from '../../../../words/estimates.ts';
import { rungName } from '../../../../words/ladder.ts';
import type { PlacedPoint } from './placedPoint.ts';

/** One figure of one rung where a chart draws it, with what it says when attended. */
export interface Mark {
  readonly rung: Rung;
  readonly xPx: number;
  readonly yPx: number;
  /** Ends of the bar; y grows downwards. */
  readonly highPx: number;
  readonly lowPx: number;
  readonly fromPx: number;
  readonly toPx: number;
  /** Not of one instar alone: drawn hollow. */
  readonly hollow: boolean;
  /** First line under the name, then the others. */
  readonly lines: readonly string[];
  readonly spoken: string;
}

export function sizeMark(placed: PlacedPoint, measureLabel: string): Mark {
  const { rung, estimate } = placed.point;
  const size = estimateAsText(estimate, 'mm');
  const shed = spanInWords(rung.happenedFrom, rung.happenedTo);
  const ratio = rung.ratio && estimate === rung.carapaceLengthMm ? [`ratio ${estimateAsText(rung.ratio, '1')}`] : [];
  return {
    ...placed,
    rung,
    hollow: false,
    lines: [size, `shed ${shed}`, ...ratio],
    spoken: `${rungName(rung)}, molted ${shed}: ${measureLabel.toLowerCase()} ${size}`,
  };
}
