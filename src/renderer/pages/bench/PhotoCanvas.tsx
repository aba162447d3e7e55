import { type PointerEvent, type ReactElement, useCallback, useEffect, useRef, useState } from 'react';
import { giveEdges, holdSnapBack } from '../../bench/deeds/pointing.ts';
import { handleAt, hoverAt, pointAt, REACH_CSS, setCanvas, zoomBy } from '../../bench/gestures.ts';
import { placingLandmark } from '../../bench/store.ts';
import { Asking } from './Asking.tsx';
import { PHOTO_ID } from './focusPhoto.ts';
import { NothingPlaced } from './NothingPlaced.tsx';
import style from './PhotoCanvas.module.css';
import { PictureTrouble } from './PictureTrouble.tsx';
import { PointingTools } from './PointingTools.tsx';
import { edgeFinderOn } from './picture/edges.ts';
import { startPainting } from './picture/painter.ts';
import type { Shown } from './picture/paintPicture.ts';
import type { OpenPicture } from './picture/picture.ts';
import { placeIn, wheelCss } from './pointers.ts';
import { useHeldKey } from './useHeldKey.ts';
import { useWork } from './useWork.ts';
import { ZoomButtons } from './ZoomButtons.tsx';

/** Fingers cover more than a pointer does. */
const TOUCH_REACH_CSS = 24;
/** While points are being placed, one that is placed can still be dragged from this near. */
const PLACING_REACH_CSS = 10;
/** A click this near to a placed point is on its mark; one farther away places the next point. */
const ON_MARK_CSS = { touch: 12, other: 4.5 } as const;

/** The photo with everything marked on it, and the loupe. */
export function PhotoCanvas({ picture, description }: { picture: OpenPicture; description: string }): ReactElement {
  const { bench } = useWork();
  const frame = useRef<HTMLDivElement>(null);
  const pictureCanvas = useRef<HTMLCanvasElement>(null);
  const marksCanvas = useRef<HTMLCanvasElement>(null);
  const loupeCanvas = useRef<HTMLCanvasElement>(null);
  const [shown, setShown] = useState<Shown>('nothing');
  const spaceIsDown = useRef(false);
  const hearSpace = useCallback((isDown: boolean) => {
    spaceIsDown.current = isDown;
  }, []);
  const hearFree = useCallback((isDown: boolean) => holdSnapBack(bench, isDown), [bench]);

  useEffect(() => {
    const element = frame.current;
    const canvases = { picture: pictureCanvas.current, marks: marksCanvas.current, loupe: loupeCanvas.current };
    if (element === null || canvases.picture === null || canvases.marks === null || canvases.loupe === null) return;
    const sizes = new ResizeObserver(() => setCanvas(bench, { width: element.clientWidth, height: element.clientHeight }));
    sizes.observe(element);
    const { picture: under, marks, loupe } = canvases;
    const stop = startPainting(bench, picture.store, { picture: under, marks, loupe }, (now) => {
      performance.mark(`bench-shows-${now}`);
      setShown(now);
    });
    // React listens to wheels passively, which would scroll the page as well.
    const wheel = (event: WheelEvent) => {
      event.preventDefault();
      const speed = event.ctrlKey ? 0.01 : 0.0018;
      zoomBy(bench, Math.exp(-speed * wheelCss(event)), placeIn(element, event));
    };
    element.addEventListener('wheel', wheel, { passive: false });
    giveEdges(bench, edgeFinderOn(picture.store));
    return () => {
      sizes.disconnect();
      stop();
      giveEdges(bench, null);
      element.removeEventListener('wheel', wheel);
    };
  }, [bench, picture]);

  useHeldKey('Space', hearSpace);
  useHeldKey('KeyF', hearFree);

  const press = (event: PointerEvent<HTMLCanvasElement>) => {
    if (event.button > 1) return;
    const at = placeIn(event.currentTarget, event);
    const state = bench.getState();
    event.currentTarget.setPointerCapture(event.pointerId);
    const isTouch = event.pointerType === 'touch';
    const places = placingLandmark(state) !== null;
    const reach = isTouch ? TOUCH_REACH_CSS : places ? PLACING_REACH_CSS : REACH_CSS;
    const beside = places && handleAt(state, at, isTouch ? ON_MARK_CSS.touch : ON_MARK_CSS.other) === null;
    const pans = event.button === 1 || spaceIsDown.current;
    // With Shift a click places a point wherever it falls, on another one too.
    const passesThrough = event.shiftKey && places;
    const on = passesThrough ? null : handleAt(state, at, reach);
    pointAt(bench, { kind: 'press', pointer: event.pointerId, at, on, beside, pans });
  };
  const move = (event: PointerEvent<HTMLCanvasElement>) => {
    const at = placeIn(event.currentTarget, event);
    if (event.pointerType !== 'touch' && bench.getState().pointing.kind === 'resting') hoverAt(bench, at);
    pointAt(bench, { kind: 'move', pointer: event.pointerId, at });
  };
  const release = (event: PointerEvent<HTMLCanvasElement>) => {
    pointAt(bench, { kind: 'release', pointer: event.pointerId, at: placeIn(event.currentTarget, event) });
  };

  return (
    <div className={style['place']}>
      <div ref={frame} className={style['photo']} role="application" aria-label="Photo with its points" data-picture={shown}>
        <canvas ref={pictureCanvas} className={style['picture']} />
        <canvas
          ref={marksCanvas}
          id={PHOTO_ID}
          className={style['marks']}
          aria-label={description}
          aria-describedby="bench-keys"
          tabIndex={0}
          data-takes-keys
          onPointerDown={press}
          onPointerMove={move}
          onPointerUp={release}
          onPointerCancel={() => pointAt(bench, { kind: 'abandon' })}
          onPointerLeave={() => hoverAt(bench, null)}
        />
        <canvas ref={loupeCanvas} className={style['loupe']} hidden />
        <NothingPlaced />
      </div>
      <div className={style['foot']}>
        <ZoomButtons />
        <PointingTools />
        <Asking />
      </div>
      <PictureTrouble store={picture.store} />
    </div>
  );
}
