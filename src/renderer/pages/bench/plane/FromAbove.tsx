import { type ReactElement, useEffect, useMemo, useRef, useState } from 'react';
import type { Calibration } from '../../../../domain/measuring/calibrate.ts';
import { borderOfPicture, type ViewFromAbove, viewFromAbove } from '../../../../domain/measuring/fromAbove.ts';
import { landmarkHandlesOf } from '../../../bench/handles.ts';
import { saveFile } from '../../../leaving/save.ts';
import { Button } from '../../../parts/Button.tsx';
import { CheckField } from '../../../parts/CheckField.tsx';
import { Dialog } from '../../../parts/Dialog.tsx';
import { FailureNotice } from '../../../parts/Notice.tsx';
import { Select } from '../../../parts/Select.tsx';
import panelStyle from '../panel.module.css';
import type { OpenPicture } from '../picture/picture.ts';
import { useSettledDocument, useWork } from '../useWork.ts';
import { drawFromAbove } from './drawFromAbove.ts';
import style from './FromAbove.module.css';
import { paintGrid } from './paintGrid.ts';

const SCALES = [
  { value: '5', label: '5 pixels a millimeter' },
  { value: '10', label: '10 pixels a millimeter' },
  { value: '20', label: '20 pixels a millimeter' },
  { value: '40', label: '40 pixels a millimeter' },
] as const;

const EXTENTS = [
  { value: 'photo', label: 'all that is in the photo' },
  { value: 'points', label: 'the scale object and the points' },
] as const;

/** Around the scale object and the points. */
const MARGIN_MM = 12;

interface Drawn {
  readonly view: ViewFromAbove;
  readonly bitmap: ImageBitmap;
}

interface Props {
  calibration: Calibration;
  picture: OpenPicture;
  onClose: () => void;
}

/** @returns how far apart the lines of the grid are, mm; null without one. */
function paintView(context: CanvasRenderingContext2D, view: ViewFromAbove, bitmap: ImageBitmap, gridShrunk: number | null): number | null {
  context.clearRect(0, 0, view.widthPx, view.heightPx);
  context.drawImage(bitmap, 0, 0);
  return gridShrunk === null ? null : paintGrid(context, view, gridShrunk);
}

/** The plane of the scale object as it looks from straight above, with a millimeter grid: to judge the scale by, and to save. */
export function FromAbove({ calibration, picture, onClose }: Props): ReactElement {
  const { sheet } = useWork();
  const document = useSettledDocument();
  const [scale, setScale] = useState<(typeof SCALES)[number]['value']>('10');
  const [extent, setExtent] = useState<(typeof EXTENTS)[number]['value']>('photo');
  const [showsGrid, setShowsGrid] = useState(true);
  const [drawn, setDrawn] = useState<Drawn | null>(null);
  const [linesApartMm, setLinesApartMm] = useState<number | null>(null);
  const [trouble, setTrouble] = useState<unknown>(null);
  const canvas = useRef<HTMLCanvasElement>(null);
  const { photo } = sheet;
  const view = useMemo(() => {
    const points = landmarkHandlesOf(document).map(({ at }) => at);
    const shown = extent === 'photo' ? [...borderOfPicture(calibration, photo), ...points] : points;
    const middle = { xPx: photo.widthPx / 2, yPx: photo.heightPx / 2 };
    return viewFromAbove(calibration, shown, extent === 'photo' ? 0 : MARGIN_MM, Number(scale), middle);
  }, [calibration, document, extent, photo, scale]);

  useEffect(() => {
    if (view === null) return;
    const stop = new AbortController();
    let kept: ImageBitmap | null = null;
    setTrouble(null);
    drawFromAbove(view, picture.store.getState(), { width: photo.widthPx, height: photo.heightPx }, stop.signal).then(
      (bitmap) => {
        if (stop.signal.aborted) return bitmap?.close();
        kept = bitmap;
        setDrawn(bitmap === null ? null : { view, bitmap });
      },
      (error: unknown) => {
        if (!stop.signal.aborted) setTrouble(error);
      },
    );
    return () => {
      stop.abort();
      setDrawn(null);
      kept?.close();
    };
  }, [view, picture, photo]);

  useEffect(() => {
    const context = canvas.current?.getContext('2d');
    // What was drawn of the view before is already closed when another one is chosen.
    if (view === null || drawn?.view !== view || !context) return;
    const { bitmap } = drawn;
    // On the page the view is seen smaller than it is saved: there only lines that can be told apart are drawn.
    const sizes = new ResizeObserver(() => {
      const shrunk = Math.max(1, view.widthPx / (context.canvas.clientWidth * devicePixelRatio));
      setLinesApartMm(paintView(context, view, bitmap, showsGrid ? shrunk : null));
    });
    sizes.observe(context.canvas);
    return () => sizes.disconnect();
  }, [view, drawn, showsGrid]);

  const save = () => {
    const whole = window.document.createElement('canvas');
    const context = whole.getContext('2d');
    if (view === null || drawn?.view !== view || context === null) return;
    Object.assign(whole, { width: view.widthPx, height: view.heightPx });
    paintView(context, view, drawn.bitmap, showsGrid ? 1 : null);
    whole.toBlob((blob) => {
      if (blob === null) setTrouble(new Error('The browser could not write the picture.'));
      else saveFile(`${photo.originalName.replace(/\.[^.]+$/, '')}-from-above-${view?.pxPerMm.toFixed(1)}-px-per-mm.png`, blob);
    }, 'image/png');
  };

  return (
    <Dialog
      title="Seen from straight above"
      wide
      onClose={onClose}
      foot={
        <>
          <Button onClick={onClose}>Close</Button>
          <Button kind="primary" disabled={drawn === null} onClick={save}>
            Save as PNG
          </Button>
        </>
      }
    >
      <div className={style['sides']}>
        <div>
          <div className={style['choices']}>
            <Select label="Shows" value={extent} options={EXTENTS} onChange={setExtent} />
            <Select label="Scale" value={scale} options={SCALES} onChange={setScale} />
            <CheckField checked={showsGrid} onChange={setShowsGrid}>
              Grid in millimeters
            </CheckField>
          </div>
          <p className={panelStyle['soft']}>
            The face of the scale object, at one scale everywhere. What rises above it, as a carapace does, is drawn too large and displaced
            here: lengths are measured on the photo, with their heights.
            {calibration.lens.isCorrected && ' What the lens bent is straight here.'}
          </p>
          {trouble !== null && <FailureNotice error={trouble} />}
          {view === null ? (
            <p>Nothing of the plane lies on the visible side of its horizon.</p>
          ) : (
            <p className={panelStyle['soft']} role="status">
              {drawn === null ? 'Drawing …' : drawnInWords(view, Number(scale), linesApartMm)}
            </p>
          )}
        </div>
        {view !== null && (
          <canvas
            ref={canvas}
            width={view.widthPx}
            height={view.heightPx}
            className={style['drawing']}
            role="img"
            aria-label="The photo as if taken from straight above, with a grid in millimeters"
          />
        )}
      </div>
    </Dialog>
  );
}

function drawnInWords({ widthPx, heightPx, pxPerMm }: ViewFromAbove, wantedPxPerMm: number, linesApartMm: number | null): string {
  const smaller = pxPerMm < wantedPxPerMm - 0.05 ? ' (more would be too large a picture)' : '';
  const grid = linesApartMm === null ? '' : ` Lines ${linesApartMm} mm apart.`;
  return `${widthPx} × ${heightPx} pixels, ${pxPerMm.toFixed(1)} to a millimeter${smaller}.${grid}`;
}
