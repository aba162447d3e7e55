import type { ReactElement } from 'react';
import { showAll, zoomBy } from '../../bench/gestures.ts';
import { ZOOM_STEP } from '../../bench/keys.ts';
import { IconButton } from '../../parts/IconButton.tsx';
import style from './PhotoCanvas.module.css';
import { useBench, useWork } from './useWork.ts';

export function ZoomButtons(): ReactElement {
  const { bench } = useWork();
  const percent = useBench((state) => Math.round(100 * state.view.zoom * devicePixelRatio));
  return (
    <fieldset className={style['zoom']}>
      <legend className="spoken-only">Zoom</legend>
      <IconButton icon="zoomOut" label="Smaller (−)" onClick={() => zoomBy(bench, 1 / ZOOM_STEP)} />
      <output className={style['percent']}>{percent} %</output>
      <IconButton icon="zoomIn" label="Larger (+)" onClick={() => zoomBy(bench, ZOOM_STEP)} />
      <IconButton icon="fit" label="Whole photo (0)" onClick={() => showAll(bench)} />
    </fieldset>
  );
}
