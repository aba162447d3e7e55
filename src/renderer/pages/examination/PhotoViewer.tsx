import { type PointerEvent, type ReactElement, useRef, useState } from 'react';
import { addressOf } from '../../client/ask.ts';
import { IconButton } from '../../parts/IconButton.tsx';
import style from './PhotoViewer.module.css';

const ZOOMS = [1, 2, 4, 8] as const;

/**
 * One photo, large, to be looked at closely: fit to its frame or enlarged in steps. Enlarged it is moved by dragging, by
 * the wheel, or with the arrow keys while it has the focus.
 */
export function PhotoViewer({ photoId, alt }: { photoId: string; alt: string }): ReactElement {
  const [step, setStep] = useState(0);
  const frame = useRef<HTMLElement>(null);
  const zoom = ZOOMS[step] ?? 1;

  /** Keeps the middle of the frame in the middle. */
  const goTo = (next: number) => {
    const factor = (ZOOMS[next] ?? 1) / zoom;
    const element = frame.current;
    setStep(next);
    if (!element) return;
    const left = (element.scrollLeft + element.clientWidth / 2) * factor - element.clientWidth / 2;
    const top = (element.scrollTop + element.clientHeight / 2) * factor - element.clientHeight / 2;
    requestAnimationFrame(() => element.scrollTo(left, top));
  };
  const drag = (event: PointerEvent<HTMLElement>) => {
    if (!event.currentTarget.hasPointerCapture(event.pointerId)) return;
    event.currentTarget.scrollBy(-event.movementX, -event.movementY);
  };

  return (
    <div className={style['viewer']}>
      <section
        ref={frame}
        className={style['frame']}
        aria-label={`${alt}, ${zoom === 1 ? 'whole picture' : `enlarged ${zoom} times`}`}
        onPointerDown={(event) => {
          if (event.pointerType === 'mouse' && event.button === 0) event.currentTarget.setPointerCapture(event.pointerId);
        }}
        onPointerMove={drag}
      >
        <img
          src={addressOf('GET /api/photos/{photoId}/renditions/{kind}', { photoId, kind: 'screen' })}
          alt={alt}
          draggable={false}
          style={{ width: `${zoom * 100}%`, height: `${zoom * 100}%` }}
        />
      </section>
      <div className={style['tools']}>
        <IconButton icon="zoomOut" label="Smaller" disabled={step === 0} onClick={() => goTo(step - 1)} />
        <IconButton icon="zoomIn" label="Larger" disabled={step === ZOOMS.length - 1} onClick={() => goTo(step + 1)} />
      </div>
    </div>
  );
}
