import type { PlanePoint } from '../measuring/points.ts';

/** An upright rectangle of a plane, mm, y down. */
export interface Extent {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/** @param points at least one. */
export function extentOf(points: readonly PlanePoint[]): Extent {
  const xs = points.map(({ xMm }) => xMm);
  const ys = points.map(({ yMm }) => yMm);
  return { left: Math.min(...xs), top: Math.min(...ys), right: Math.max(...xs), bottom: Math.max(...ys) };
}

export function widened(extent: Extent, byMm: number): Extent {
  return { left: extent.left - byMm, top: extent.top - byMm, right: extent.right + byMm, bottom: extent.bottom + byMm };
}

export function longerSide(extent: Extent): number {
  return Math.max(extent.right - extent.left, extent.bottom - extent.top);
}

export function union(a: Extent, b: Extent): Extent {
  return {
    left: Math.min(a.left, b.left),
    top: Math.min(a.top, b.top),
    right: Math.max(a.right, b.right),
    bottom: Math.max(a.bottom, b.bottom),
  };
}

export function intersection(a: Extent, b: Extent): Extent {
  return {
    left: Math.max(a.left, b.left),
    top: Math.max(a.top, b.top),
    right: Math.min(a.right, b.right),
    bottom: Math.min(a.bottom, b.bottom),
  };
}
