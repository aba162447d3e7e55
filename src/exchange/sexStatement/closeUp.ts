import type { StatementMark } from './marks.ts';

/** A part of a picture, as shares of its sides from its top left corner; as wide to high as the picture itself. */
export interface CloseUp {
  readonly left: number;
  readonly top: number;
  readonly side: number;
}

/** What is marked takes about a third of the part that is shown, and no part is so small that nobody sees where it lies. */
const BESIDE_MARKS = 3;
const LEAST_SIDE = 0.35;
/** From here on the whole picture shows it as well. */
const MOST_SIDE = 0.8;

/** The part of a picture round everything that is marked on it; null where nothing is, or where it fills the picture anyhow. */
export function closeUpOf(marks: readonly StatementMark[]): CloseUp | null {
  const points = marks.flatMap((mark) => mark.points);
  if (points.length === 0) return null;
  const [xs, ys] = [points.map(({ x }) => x), points.map(({ y }) => y)];
  const [left, right, top, bottom] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
  const side = Math.max(LEAST_SIDE, BESIDE_MARKS * Math.max(right - left, bottom - top));
  if (side > MOST_SIDE) return null;
  const within = (middle: number) => Math.min(1 - side, Math.max(0, middle - side / 2));
  return { left: within((left + right) / 2), top: within((top + bottom) / 2), side };
}

/** Marks of the whole picture as they lie on the part. */
export function marksOn({ left, top, side }: CloseUp, marks: readonly StatementMark[]): StatementMark[] {
  return marks.map(({ number, points }) => ({
    number,
    points: points.map(({ x, y }) => ({ x: (x - left) / side, y: (y - top) / side })),
  }));
}
