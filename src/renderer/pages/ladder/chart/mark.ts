import type { Rung } from '../../../../domain/growth/rung.ts';
import { isUsable } from '../../../../domain/measuring/usable.ts';
import { spanInWords } from '../../../../words/dates.ts';
import { estimateAsText } from '../../../../words/estimates.ts';
import { ODD_IN_ROW } from '../../../../words/growth.ts';
import { capitalized } from '../../../../words/labels.ts';
import { rungName } from '../../../../words/ladder.ts';
import { liveName, liveWhenInWords } from '../../../../words/liveSizes.ts';
import type { LivePoint } from './livePoints.ts';
import type { PlacedPoint } from './placedPoint.ts';
import { lowerEnd } from './scales.ts';

/** One figure where a chart draws it, with what it says when attended. */
export interface Mark {
  /** Of the molt, or of the photo of the living animal: what table, chart and gallery light together. */
  readonly litId: string;
  readonly name: string;
  /** Where it was measured. */
  readonly photoId: string | null;
  readonly xPx: number;
  readonly yPx: number;
  /** Ends of the bar; y grows downwards. */
  readonly highPx: number;
  readonly lowPx: number;
  readonly fromPx: number;
  readonly toPx: number;
  /** A dot for a skin, hollow where it is not of one instar alone; a lozenge for the living animal; the others for animals beside it. */
  readonly shape: 'dot' | 'hollow' | 'lozenge' | 'ring' | 'square' | 'triangle' | 'cross' | 'diamond';
  /** Drawn within a ring of warning. */
  readonly inDoubt: boolean;
  /** First line under the name, then the others. */
  readonly lines: readonly string[];
  readonly spoken: string;
}

/** What every mark of a rung has. */
export function markOf(rung: Rung): Pick<Mark, 'litId' | 'name' | 'photoId' | 'inDoubt'> {
  return { litId: rung.moltId, name: rungName(rung), photoId: rung.photoId, inDoubt: false };
}

export function sizeMark(placed: PlacedPoint, measureLabel: string): Mark {
  const { rung, estimate, inDoubt } = placed.point;
  const size = estimateAsText(estimate, 'mm');
  const shed = spanInWords(rung.happenedFrom, rung.happenedTo);
  const ratio =
    rung.ratio && isUsable(rung.ratio) && estimate === rung.carapaceLengthMm ? [`ratio ${estimateAsText(rung.ratio, '1')}`] : [];
  return {
    ...placed,
    ...markOf(rung),
    inDoubt,
    shape: 'dot',
    lines: [size, `shed ${shed}`, ...ratio, ...(inDoubt ? [capitalized(ODD_IN_ROW)] : [])],
    spoken: `${rungName(rung)}, molted ${shed}: ${measureLabel.toLowerCase()} ${size}${inDoubt ? `; ${ODD_IN_ROW}` : ''}`,
  };
}

/** A size of the living animal, at its own place. */
export function liveMark({ live, estimate }: LivePoint, y: (sizeMm: number) => number, xPx: number, measureLabel: string): Mark {
  const size = estimateAsText(estimate, 'mm');
  const when = liveWhenInWords(live);
  return {
    litId: live.photoId,
    name: liveName(live),
    photoId: live.photoId,
    xPx,
    yPx: y(estimate.value),
    highPx: y(estimate.value + estimate.expandedUncertainty),
    lowPx: y(lowerEnd(estimate)),
    fromPx: xPx,
    toPx: xPx,
    inDoubt: false,
    shape: 'lozenge',
    lines: [size, when, 'measured on the living animal'],
    spoken: `${liveName(live)}, ${when}: ${measureLabel.toLowerCase()} ${size}, measured on the living animal`,
  };
}
