import { type KeyboardEvent, type MouseEvent, type ReactElement, type ReactNode, useRef, useState } from 'react';
import type { Photo } from '../../../../domain/photo/photo.ts';
import { addressOf } from '../../../client/ask.ts';
import { IconButton } from '../../../parts/IconButton.tsx';
import style from './EvidencePicture.module.css';
import type { Marking } from './marking.ts';

type Place = Marking['points'][number];

const ZOOMS = [1, 2, 4, 8, 16] as const;
/** A press that moves less than this is a click or a tap. */
const STILL_PX = 6;
const ARROWS: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};

interface Props {
  photo: Pick<Photo, 'id' | 'widthPx' | 'heightPx'>;
  alt: string;
  /** In coordinates of the upright photo. */
  marks: readonly Marking[];
  /** Where a click, a tap or Enter places something; left out where the photo is only looked at. */
  onPlace?: ((at: Place) => void) | undefined;
  onTakeBack?: (() => void) | undefined;
  /** What stands in one line with the zoom, below the photo. */
  below?: ReactNode;
}

/**
 * One photo to be looked at closely, in its frame or enlarged in steps, with its marks. A click looks closer; enlarged it is moved
 * by dragging, by the wheel, or by the arrow keys. Where something is placed, a click or a tap places it; the arrow keys then move
 * a cross, and Enter places.
 */
export function EvidencePicture({ photo, alt, marks, onPlace, onTakeBack, below }: Props): ReactElement {
  const { widthPx, heightPx } = photo;
  const [step, setStep] = useState(0);
  const [cross, setCross] = useState<Place | null>(null);
  const frame = useRef<HTMLDivElement>(null);
  const sheet = useRef<HTMLButtonElement>(null);
  const pressed = useRef<{ x: number; y: number } | null>(null);
  const zoom = ZOOMS[step] ?? 1;

  /** Keeps a place of the photo in the middle of the frame; without one, what is there. */
  const goTo = (next: number, around?: Place) => {
    const element = frame.current;
    const from = sheet.current;
    if (!element || !from) return;
    const at = around ?? visibleMiddle(element, from, photo);
    setStep(next);
    requestAnimationFrame(() =>
      element.scrollTo(
        (at.xPx / widthPx) * from.clientWidth - element.clientWidth / 2,
        (at.yPx / heightPx) * from.clientHeight - element.clientHeight / 2,
      ),
    );
  };
  const click = (event: MouseEvent<HTMLButtonElement>) => {
    const from = pressed.current;
    pressed.current = null;
    if (!frame.current || !sheet.current) return;
    // Enter and Space click as well, and have no place of their own.
    const at = event.detail === 0 ? (cross ?? visibleMiddle(frame.current, sheet.current, photo)) : placeOf(event, sheet.current, photo);
    const dragged = from !== null && Math.hypot(event.clientX - from.x, event.clientY - from.y) > STILL_PX;
    if (event.detail > 0 && dragged) return;
    if (onPlace) onPlace(at);
    else if (step < ZOOMS.length - 1) goTo(step + 1, at);
  };
  const hearKey = (event: KeyboardEvent<HTMLButtonElement>) => {
    if (!onPlace || !frame.current || !sheet.current) return;
    const arrow = ARROWS[event.key];
    if (arrow) {
      const now = cross ?? visibleMiddle(frame.current, sheet.current, photo);
      const stride = (event.shiftKey ? 1 : 8) * (widthPx / (400 * zoom));
      const next = {
        xPx: Math.min(widthPx, Math.max(0, now.xPx + arrow[0] * stride)),
        yPx: Math.min(heightPx, Math.max(0, now.yPx + arrow[1] * stride)),
      };
      setCross(next);
      follow(frame.current, sheet.current, next, photo);
    } else if (event.key === 'Backspace' && onTakeBack) onTakeBack();
    else return;
    event.preventDefault();
  };

  return (
    <div className={style['viewer']}>
      <div ref={frame} className={style['frame']}>
        <button
          ref={sheet}
          type="button"
          className={style['sheet']}
          aria-label={`${alt}, ${zoom === 1 ? 'whole picture' : `enlarged ${zoom} times`}; ${onPlace ? 'place a mark' : 'look closer'}`}
          data-places={onPlace !== undefined}
          style={{ aspectRatio: `${widthPx} / ${heightPx}`, width: `calc(${zoom} * min(100cqw, 100cqh * ${widthPx / heightPx}))` }}
          onClick={click}
          onKeyDown={hearKey}
          onPointerDown={(event) => {
            pressed.current = { x: event.clientX, y: event.clientY };
            if (event.pointerType === 'mouse' && event.button === 0) event.currentTarget.setPointerCapture(event.pointerId);
          }}
          onPointerMove={(event) => {
            if (event.currentTarget.hasPointerCapture(event.pointerId)) frame.current?.scrollBy(-event.movementX, -event.movementY);
          }}
        >
          <img
            src={addressOf('GET /api/photos/{photoId}/renditions/{kind}', { photoId: photo.id, kind: 'screen' })}
            alt=""
            draggable={false}
          />
          <svg viewBox={`0 0 ${widthPx} ${heightPx}`} preserveAspectRatio="none" aria-hidden="true">
            {marks.map((marking) => (
              <MarkShape key={JSON.stringify(marking)} marking={marking} />
            ))}
            {cross && onPlace && <path className={style['cross']} d={crossAt(cross, widthPx / (60 * zoom))} />}
          </svg>
        </button>
      </div>
      <div className={style['tools']}>
        {below && <div className={style['below']}>{below}</div>}
        <IconButton icon="zoomOut" label="Smaller" disabled={step === 0} onClick={() => goTo(step - 1)} />
        <span className={style['zoom']}>{zoom === 1 ? 'whole' : `${zoom} ×`}</span>
        <IconButton icon="zoomIn" label="Larger" disabled={step === ZOOMS.length - 1} onClick={() => goTo(step + 1)} />
      </div>
    </div>
  );
}

/** Where a click fell, in coordinates of the upright photo. */
function placeOf(event: MouseEvent, sheet: HTMLElement, { widthPx, heightPx }: Props['photo']): Place {
  const box = sheet.getBoundingClientRect();
  const within = (share: number, length: number) => Math.min(length, Math.max(0, share * length));
  return {
    xPx: within((event.clientX - box.left) / box.width, widthPx),
    yPx: within((event.clientY - box.top) / box.height, heightPx),
  };
}

function MarkShape({ marking: { kind, points } }: { marking: Marking }): ReactElement | null {
  if (points.length === 0 || kind === 'none') return null;
  const dots = points.map(({ xPx, yPx }) => `M${xPx} ${yPx}h0`).join('');
  const line = points.map(({ xPx, yPx }) => `${xPx} ${yPx}`).join('L');
  return (
    <>
      {kind === 'outline' && (
        <>
          <path className={style['under']} d={`M${line}${points.length > 2 ? 'Z' : ''}`} />
          <path className={style['line']} d={`M${line}${points.length > 2 ? 'Z' : ''}`} />
        </>
      )}
      <path className={kind === 'point' ? style['pointUnder'] : style['cornerUnder']} d={dots} />
      <path className={kind === 'point' ? style['point'] : style['corner']} d={dots} />
    </>
  );
}

function crossAt({ xPx, yPx }: Place, arm: number): string {
  return `M${xPx - arm} ${yPx}h${2 * arm}M${xPx} ${yPx - arm}v${2 * arm}`;
}

/** Keeps the cross in sight while it is moved. */
function follow(frame: HTMLElement, sheet: HTMLElement, at: Place, { widthPx, heightPx }: Props['photo']): void {
  const x = (at.xPx / widthPx) * sheet.clientWidth;
  const y = (at.yPx / heightPx) * sheet.clientHeight;
  const left = x < frame.scrollLeft || x > frame.scrollLeft + frame.clientWidth ? x - frame.clientWidth / 2 : frame.scrollLeft;
  const top = y < frame.scrollTop || y > frame.scrollTop + frame.clientHeight ? y - frame.clientHeight / 2 : frame.scrollTop;
  frame.scrollTo(left, top);
}

/** The place of the photo that lies in the middle of what is seen of it. */
function visibleMiddle(frame: HTMLElement, sheet: HTMLElement, { widthPx, heightPx }: Props['photo']): Place {
  const outer = frame.getBoundingClientRect();
  const inner = sheet.getBoundingClientRect();
  const middle = (from: number, to: number, start: number, length: number) =>
    ((Math.max(from, start) + Math.min(to, start + length)) / 2 - start) / length;
  return {
    xPx: middle(outer.left, outer.right, inner.left, inner.width) * widthPx,
    yPx: middle(outer.top, outer.bottom, inner.top, inner.height) * heightPx,
  };
}
