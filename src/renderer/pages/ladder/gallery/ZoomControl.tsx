import type { ReactElement } from 'react';
import { Button } from '../../../parts/Button.tsx';
import { IconButton } from '../../../parts/IconButton.tsx';
import style from './Gallery.module.css';

const STEP = 1.25;
const LEAST = 0.5;
const MOST = 12;

interface Props {
  /** Against the size at the opening. */
  zoom: number;
  /** At which all skins stand side by side. */
  fitting: number;
  pxPerMm: number;
  onZoom: (zoom: number) => void;
}

/** Enlarges all skins together, so that they stay comparable. */
export function ZoomControl({ zoom, fitting, pxPerMm, onZoom }: Props): ReactElement {
  const least = Math.min(LEAST, fitting);
  const change = (to: number) => onZoom(Math.min(MOST, Math.max(least, to)));
  return (
    <div className={style['zoom']}>
      <IconButton icon="zoomOut" label="Smaller, all together" disabled={zoom <= least} onClick={() => change(zoom / STEP)} />
      <input
        type="range"
        aria-label="Size of all skins"
        aria-valuetext={`${pxPerMm.toFixed(1)} pixels per millimeter`}
        min={Math.log(least)}
        max={Math.log(MOST)}
        step={Math.log(STEP) / 4}
        value={Math.log(zoom)}
        onChange={(event) => change(Math.exp(Number(event.target.value)))}
      />
      <IconButton icon="zoomIn" label="Larger, all together" disabled={zoom >= MOST} onClick={() => change(zoom * STEP)} />
      <Button kind="quiet" icon="fit" disabled={zoom === fitting} onClick={() => onZoom(fitting)}>
        Fit
      </Button>
    </div>
  );
}
