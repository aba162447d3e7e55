import { type ReactElement, useEffect, useRef, useState } from 'react';
import { silhouetteOf } from '../../../../domain/plate/silhouette.ts';
import { addressOf } from '../../../client/ask.ts';
import { CutImage } from './CutImage.tsx';
import type { PlateEntry } from './entries.ts';
import style from './Gallery.module.css';
import { useCutState } from './useCuts.tsx';

/** Where the outline is looked for: coarse enough to be done at once, fine enough for a leg. */
const OUTLINE_LONGEST_PX = 420;
/** Of the carapace length: surely on the skin. */
const SEED_RADIUS = 0.3;
/** Of the plate's width, where no carapace length is known. */
const UNMEASURED_SEED_RADIUS = 0.04;

/** The skin of a plate without its ground. Where it does not stand apart from it, the whole plate with soft edges. */
export function SkinCutout({ entry, alt }: { entry: PlateEntry; alt: string }): ReactElement {
  const made = useCutState(entry.item);
  const canvas = useRef<HTMLCanvasElement>(null);
  const [state, setState] = useState<'coming' | 'shown' | 'broken'>('coming');
  useEffect(() => {
    if (made !== 'ready') return;
    const image = new Image();
    let isWanted = true;
    image.onload = () => {
      if (!isWanted || !canvas.current) return;
      drawCutout(canvas.current, image, entry);
      setState('shown');
    };
    image.onerror = () => isWanted && setState('broken');
    image.src = addressOf('GET /api/photos/{photoId}/cuts/{cutKey}', { photoId: entry.photo.id, cutKey: entry.item.cutKey });
    return () => {
      isWanted = false;
    };
  }, [made, entry]);
  // The picture itself says what it is waiting for, or that it cannot be read.
  if (made !== 'ready' || state === 'broken') return <CutImage entry={entry} alt={alt} />;
  return <canvas ref={canvas} className={state === 'shown' ? style['shown'] : style['coming']} role="img" aria-label={alt} />;
}

function drawCutout(canvas: HTMLCanvasElement, image: HTMLImageElement, entry: PlateEntry): void {
  canvas.width = image.naturalWidth;
  canvas.height = image.naturalHeight;
  const context = canvas.getContext('2d');
  const cover = coverOf(image, entry);
  if (!context || !cover) return;
  context.drawImage(image, 0, 0);
  context.globalCompositeOperation = 'destination-in';
  context.imageSmoothingQuality = 'high';
  context.drawImage(cover, 0, 0, canvas.width, canvas.height);
}

/** A small picture of which only the cover counts. */
function coverOf(image: HTMLImageElement, { plate, rung }: PlateEntry): HTMLCanvasElement | null {
  const factor = Math.min(1, OUTLINE_LONGEST_PX / Math.max(image.naturalWidth, image.naturalHeight));
  const small = document.createElement('canvas');
  small.width = Math.max(1, Math.round(image.naturalWidth * factor));
  small.height = Math.max(1, Math.round(image.naturalHeight * factor));
  const context = small.getContext('2d', { willReadFrequently: true });
  if (!context) return null;
  context.drawImage(image, 0, 0, small.width, small.height);
  const pixels = context.getImageData(0, 0, small.width, small.height);
  const pxPerMm = small.width / plate.widthMm;
  const radiusMm = rung.carapaceLengthMm ? SEED_RADIUS * rung.carapaceLengthMm.value : UNMEASURED_SEED_RADIUS * plate.widthMm;
  const seed = { xPx: plate.carapaceFromLeftMm * pxPerMm, yPx: plate.carapaceAtMm * pxPerMm, radiusPx: radiusMm * pxPerMm };
  const picture = { widthPx: small.width, heightPx: small.height, rgba: pixels.data };
  const cover = (plate.turned ? silhouetteOf(picture, seed) : null) ?? softEdged(small.width, small.height);
  for (const [at, value] of cover.entries()) pixels.data[4 * at + 3] = value;
  context.putImageData(pixels, 0, 0);
  return small;
}

/** Full in the middle, nothing at the edges. */
function softEdged(widthPx: number, heightPx: number): Uint8ClampedArray {
  const cover = new Uint8ClampedArray(widthPx * heightPx);
  const marginPx = Math.max(1, 0.18 * Math.min(widthPx, heightPx));
  for (const at of cover.keys()) {
    const [x, y] = [at % widthPx, Math.floor(at / widthPx)];
    const share = (distancePx: number) => Math.min(1, distancePx / marginPx);
    cover[at] = 255 * share(Math.min(x, widthPx - 1 - x)) * share(Math.min(y, heightPx - 1 - y));
  }
  return cover;
}
