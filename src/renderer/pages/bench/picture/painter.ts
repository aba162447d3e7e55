import type { ImagePoint } from '../../../../domain/measuring/points.ts';
import { handlePosition } from '../../../bench/handles.ts';
import { LOUPE_CSS, loupePlace } from '../../../bench/loupePlace.ts';
import { type BenchState, type BenchStore, placingLandmark } from '../../../bench/store.ts';
import type { Size, View } from '../../../bench/view.ts';
import { paintMarks } from './paintMarks.ts';
import { paintPicture, type Shown } from './paintPicture.ts';
import type { PictureStore } from './picture.ts';
import { strokeHairs } from './strokes.ts';

export interface Canvases {
  readonly picture: HTMLCanvasElement;
  readonly marks: HTMLCanvasElement;
  readonly loupe: HTMLCanvasElement;
}

/**
 * Draws frame by frame whatever has changed since the last frame: the photo only when it or the view moved, so that dragging
 * a point leaves it alone. Reads the stores itself; React has no part in a frame. Answers how to stop.
 */
export function startPainting(bench: BenchStore, picture: PictureStore, canvases: Canvases, tell: (shown: Shown) => void): () => void {
  const contexts = { picture: contextOf(canvases.picture), marks: contextOf(canvases.marks), loupe: contextOf(canvases.loupe) };
  const ground = getComputedStyle(canvases.picture).backgroundColor;
  let frame: number | null = null;
  let pictureIsOld = true;
  let shown: Shown | null = null;

  const ask = () => {
    frame ??= requestAnimationFrame(paint);
  };
  const paint = () => {
    frame = null;
    const state = bench.getState();
    const pixelRatio = devicePixelRatio;
    const resized = fitCanvas(canvases.marks, state.canvas, pixelRatio);
    if (pictureIsOld || resized) {
      fitCanvas(canvases.picture, state.canvas, pixelRatio);
      const now = paintPicture(contexts.picture, picture.getState(), state.view, state.canvas, pixelRatio, ground);
      if (now !== shown) tell(now);
      shown = now;
      pictureIsOld = false;
    }
    clear(contexts.marks);
    paintMarks(contexts.marks, state, state.view, pixelRatio);
    paintLoupe(state, pixelRatio);
  };

  const paintLoupe = (state: BenchState, pixelRatio: number) => {
    const at = loupeCenter(state);
    canvases.loupe.hidden = at === null;
    if (at === null) return;
    canvases.loupe.dataset['corner'] = loupePlace(state, at);
    const size = { width: LOUPE_CSS, height: LOUPE_CSS };
    fitCanvas(canvases.loupe, size, pixelRatio);
    const view: View = {
      zoom: state.loupeZoom,
      offset: { xCss: LOUPE_CSS / 2 - state.loupeZoom * at.xPx, yCss: LOUPE_CSS / 2 - state.loupeZoom * at.yPx },
    };
    paintPicture(contexts.loupe, picture.getState(), view, size, pixelRatio, ground);
    paintMarks(contexts.loupe, state, view, pixelRatio, true);
    strokeHairs({ context: contexts.loupe, view }, at, LOUPE_CSS, 6);
  };

  const stops = [
    bench.subscribe((now, before) => {
      if (now.view !== before.view || now.canvas !== before.canvas) pictureIsOld = true;
      ask();
    }),
    picture.subscribe(() => {
      pictureIsOld = true;
      ask();
    }),
  ];
  ask();
  return () => {
    for (const stop of stops) stop();
    if (frame !== null) cancelAnimationFrame(frame);
  };
}

/** The loupe looks at the point being dragged, at the pointer while a point is to be placed, else at the selected point; where lengths are read nothing is pointed at. */
export function loupeCenter(state: BenchState): ImagePoint | null {
  if (state.view.zoom >= state.loupeZoom || state.pointing.kind === 'panning' || state.pointing.kind === 'pinching') return null;
  const selectedAt = state.selected === null ? null : handlePosition(state.edited.document, state.selected);
  if (state.pointing.kind === 'draggingHandle') return selectedAt;
  if (state.task === 'lengths') return null;
  const places = state.placing !== null || placingLandmark(state) !== null;
  return places && state.hover !== null ? state.hover : selectedAt;
}

function contextOf(canvas: HTMLCanvasElement): CanvasRenderingContext2D {
  const context = canvas.getContext('2d');
  if (context === null) throw new Error('Expected a 2d context for the photo but the browser gave none.');
  return context;
}

/** Gives the canvas the size it is shown at in device pixels; answers whether that was a change. */
function fitCanvas(canvas: HTMLCanvasElement, size: Size, pixelRatio: number): boolean {
  const width = Math.max(1, Math.round(size.width * pixelRatio));
  const height = Math.max(1, Math.round(size.height * pixelRatio));
  if (canvas.width === width && canvas.height === height) return false;
  canvas.width = width;
  canvas.height = height;
  return true;
}

function clear(context: CanvasRenderingContext2D): void {
  context.setTransform(1, 0, 0, 1, 0, 0);
  context.clearRect(0, 0, context.canvas.width, context.canvas.height);
}
