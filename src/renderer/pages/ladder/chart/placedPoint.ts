import type { SizePoint } from './measures.ts';
import { lowerEnd } from './scales.ts';

/** A measured skin where the chart draws it, in pixels of the drawing. */
export interface PlacedPoint {
  readonly point: SizePoint;
  readonly xPx: number;
  readonly yPx: number;
  /** Ends of the bar of the size +- U; y grows downwards. */
  readonly highPx: number;
  readonly lowPx: number;
  /** Ends of the span of days; equal for a single day and on the axis of instars. */
  readonly fromPx: number;
  readonly toPx: number;
}

export function placePoint(point: SizePoint, y: (sizeMm: number) => number, span: { fromPx: number; toPx: number }): PlacedPoint {
  const { value, expandedUncertainty } = point.estimate;
  return {
    point,
    xPx: (span.fromPx + span.toPx) / 2,
    yPx: y(value),
    highPx: y(value + expandedUncertainty),
    lowPx: y(lowerEnd(point.estimate)),
    ...span,
  };
}
