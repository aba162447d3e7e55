import type { ImagePoint } from '../../domain/measuring/points.ts';

/** A point of the canvas in CSS pixels from its top left corner. */
export interface ViewPoint {
  readonly xCss: number;
  readonly yCss: number;
}

export interface Size {
  readonly width: number;
  readonly height: number;
}

/**
 * How the photo lies under the canvas: canvas = offset + zoom * image. `zoom` is CSS pixels per image pixel. Image
 * coordinates are those of the upright photo, the top left pixel reaching from (0, 0) to (1, 1). The only place where
 * the two spaces meet.
 */
export interface View {
  readonly zoom: number;
  readonly offset: ViewPoint;
}

/** What the view can reach, in image pixels. */
export interface Ground {
  readonly topLeft: ImagePoint;
  readonly bottomRight: ImagePoint;
}

/** No closer than this many CSS pixels to one image pixel: beyond it there is nothing more to see. */
export const LARGEST_ZOOM = 32;

/** Room left around a fitted picture, in CSS pixels. */
const FIT_MARGIN_CSS = 16;

export function toView(view: View, at: ImagePoint): ViewPoint {
  return { xCss: view.offset.xCss + view.zoom * at.xPx, yCss: view.offset.yCss + view.zoom * at.yPx };
}

export function toImage(view: View, at: ViewPoint): ImagePoint {
  return { xPx: (at.xCss - view.offset.xCss) / view.zoom, yPx: (at.yCss - view.offset.yCss) / view.zoom };
}

/** The whole picture, centered. */
export function fitWhole(picture: Size, canvas: Size): View {
  const zoom = Math.min(LARGEST_ZOOM, fittingZoom(picture, canvas));
  return {
    zoom,
    offset: { xCss: (canvas.width - zoom * picture.width) / 2, yCss: (canvas.height - zoom * picture.height) / 2 },
  };
}

/** A zoom by `factor` that leaves the image point under `about` where it is, as far as the limits allow. */
export function zoomAbout(view: View, about: ViewPoint, factor: number, ground: Ground, canvas: Size): View {
  const zoom = limited(view.zoom * factor, Math.min(fittingZoom(sizeOf(ground), canvas) / 2, 1), LARGEST_ZOOM);
  const fixed = toImage(view, about);
  return clamp({ zoom, offset: { xCss: about.xCss - zoom * fixed.xPx, yCss: about.yCss - zoom * fixed.yPx } }, ground, canvas);
}

export function panBy(view: View, byX: number, byY: number, ground: Ground, canvas: Size): View {
  return clamp({ zoom: view.zoom, offset: { xCss: view.offset.xCss + byX, yCss: view.offset.yCss + byY } }, ground, canvas);
}

/** Two fingers: the image points under them follow them (zoom and pan; a photo that is measured is not turned). */
export function pinch(
  view: View,
  from: readonly [ViewPoint, ViewPoint],
  to: readonly [ViewPoint, ViewPoint],
  ground: Ground,
  canvas: Size,
): View {
  const before = middle(from);
  const after = middle(to);
  const spread = distance(from[0], from[1]);
  const moved = panBy(view, after.xCss - before.xCss, after.yCss - before.yCss, ground, canvas);
  return spread < 1 ? moved : zoomAbout(moved, after, distance(to[0], to[1]) / spread, ground, canvas);
}

/** Brings an image point to the middle, at least at `zoom`. */
export function centerOn(view: View, at: ImagePoint, zoom: number, ground: Ground, canvas: Size): View {
  const chosen = limited(Math.max(view.zoom, zoom), 0, LARGEST_ZOOM);
  return clamp(
    { zoom: chosen, offset: { xCss: canvas.width / 2 - chosen * at.xPx, yCss: canvas.height / 2 - chosen * at.yPx } },
    ground,
    canvas,
  );
}

/** The canvas changed size: the image point in its middle stays there. */
export function resized(view: View, from: Size, to: Size, ground: Ground): View {
  const moved = { xCss: view.offset.xCss + (to.width - from.width) / 2, yCss: view.offset.yCss + (to.height - from.height) / 2 };
  return clamp({ zoom: view.zoom, offset: moved }, ground, to);
}

/** Every point of the ground can be brought to the middle of the canvas, and the ground cannot be lost out of sight. */
export function clamp(view: View, { topLeft, bottomRight }: Ground, canvas: Size): View {
  const [middleX, middleY] = [canvas.width / 2, canvas.height / 2];
  return {
    zoom: view.zoom,
    offset: {
      xCss: limited(view.offset.xCss, middleX - view.zoom * bottomRight.xPx, middleX - view.zoom * topLeft.xPx),
      yCss: limited(view.offset.yCss, middleY - view.zoom * bottomRight.yPx, middleY - view.zoom * topLeft.yPx),
    },
  };
}

/** Whether a point of the canvas lies on it, at least `marginCss` from its edge. */
export function shows(canvas: Size, { xCss, yCss }: ViewPoint, marginCss: number): boolean {
  return xCss >= marginCss && yCss >= marginCss && xCss <= canvas.width - marginCss && yCss <= canvas.height - marginCss;
}

export function distance(one: ViewPoint, other: ViewPoint): number {
  return Math.hypot(one.xCss - other.xCss, one.yCss - other.yCss);
}

function fittingZoom(picture: Size, canvas: Size): number {
  const room = { width: Math.max(1, canvas.width - 2 * FIT_MARGIN_CSS), height: Math.max(1, canvas.height - 2 * FIT_MARGIN_CSS) };
  return Math.min(room.width / picture.width, room.height / picture.height);
}

function middle([one, other]: readonly [ViewPoint, ViewPoint]): ViewPoint {
  return { xCss: (one.xCss + other.xCss) / 2, yCss: (one.yCss + other.yCss) / 2 };
}

function limited(value: number, least: number, most: number): number {
  return Math.min(most, Math.max(least, value));
}

function sizeOf({ topLeft, bottomRight }: Ground): Size {
  return { width: bottomRight.xPx - topLeft.xPx, height: bottomRight.yPx - topLeft.yPx };
}
