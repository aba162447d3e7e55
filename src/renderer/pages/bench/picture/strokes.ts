import type { ImagePoint } from '../../../../domain/measuring/points.ts';
import { toView, type View } from '../../../bench/view.ts';

/** Colors of marks on the photo: each is drawn over a dark edge, so that it is seen on any ground. The same in both themes. */
export const MARK_COLORS = {
  edge: 'rgb(0 0 0 / 0.5)',
  label: 'rgb(24 24 24 / 0.78)',
  scale: '#8fd3e8',
  proposed: '#f2d16b',
  landmark: '#f4f0e6',
  regenerated: '#b9cf86',
  selected: '#ffb38f',
  hair: 'rgb(255 179 143 / 0.75)',
  faint: 'rgb(244 240 230 / 0.55)',
} as const;

/** Draws in CSS pixels on one canvas; turns image points into them. */
export interface Pen {
  readonly context: CanvasRenderingContext2D;
  readonly view: View;
}

interface LineLooks {
  readonly widthCss?: number;
  readonly dash?: readonly number[];
  readonly closed?: boolean;
  /** Over a dark edge, that it is seen on a ground of its own color too; dashes are only where it is asked for. */
  readonly isEdged?: boolean;
}

/** A line through image points. */
export function strokeLine(
  pen: Pen,
  points: readonly ImagePoint[],
  color: string,
  { widthCss = 1, dash = [], closed = false, isEdged = dash.length === 0 }: LineLooks = {},
): void {
  const { context } = pen;
  const [first, ...rest] = points.map((at) => toView(pen.view, at));
  if (first === undefined) return;
  context.beginPath();
  context.moveTo(first.xCss, first.yCss);
  for (const at of rest) context.lineTo(at.xCss, at.yCss);
  if (closed) context.closePath();
  twice(context, color, { widthCss, dash, isEdged });
}

/** Hair lines across the whole canvas that leave the middle open: where the loupe looks. */
export function strokeHairs(pen: Pen, at: ImagePoint, lengthCss: number, gapCss: number): void {
  crossPath(pen, at, lengthCss, gapCss);
  pen.context.setLineDash([]);
  pen.context.lineWidth = 1;
  pen.context.strokeStyle = MARK_COLORS.hair;
  pen.context.stroke();
}

/** A cross with an open middle: the point itself stays visible. */
export function strokeCross(pen: Pen, at: ImagePoint, color: string, armCss: number, gapCss: number): void {
  crossPath(pen, at, armCss, gapCss);
  twice(pen.context, color, { widthCss: 1, dash: [], isEdged: true });
}

export function strokeRing(pen: Pen, at: ImagePoint, color: string, radiusCss: number): void {
  const { context } = pen;
  const { xCss, yCss } = toView(pen.view, at);
  context.beginPath();
  context.arc(xCss, yCss, radiusCss, 0, 2 * Math.PI);
  twice(context, color, { widthCss: 1.25, dash: [], isEdged: true });
}

/** Words on a ground of their own: no color alone is read on hair, shadow and wood alike. */
export function writeBeside(pen: Pen, at: ImagePoint, words: string, color: string): void {
  const { context } = pen;
  const { xCss, yCss } = toView(pen.view, at);
  context.font = '600 13px "Source Sans 3 Variable", sans-serif';
  context.textBaseline = 'alphabetic';
  const { width } = context.measureText(words);
  const [left, baseline] = [xCss + 18, yCss - 12];
  context.fillStyle = MARK_COLORS.label;
  context.beginPath();
  context.roundRect(left - 5, baseline - 14, width + 10, 19, 3);
  context.fill();
  context.fillStyle = color;
  context.fillText(words, left, baseline);
}

function crossPath({ context, view }: Pen, at: ImagePoint, armCss: number, gapCss: number): void {
  const { xCss, yCss } = toView(view, at);
  context.beginPath();
  for (const [right, below] of [
    [1, 0],
    [-1, 0],
    [0, 1],
    [0, -1],
  ] as const) {
    context.moveTo(xCss + gapCss * right, yCss + gapCss * below);
    context.lineTo(xCss + armCss * right, yCss + armCss * below);
  }
}

function twice(context: CanvasRenderingContext2D, color: string, looks: Required<Omit<LineLooks, 'closed'>>): void {
  const { widthCss, dash, isEdged } = looks;
  context.lineCap = 'round';
  context.setLineDash([]);
  context.lineWidth = widthCss + 1.5;
  context.strokeStyle = MARK_COLORS.edge;
  if (isEdged) context.stroke();
  context.setLineDash([...dash]);
  context.lineWidth = widthCss;
  context.strokeStyle = color;
  context.stroke();
}
