import sharp from 'sharp';
import { scaleCardLayout } from '../../src/domain/scaleCard/layout.ts';
import { type Drawing, drawnCard } from './drawnCard.ts';
import { type Pinhole, pinhole } from './pinhole.ts';

/** Over an A5 scale card, a little tilted. */
export const CARD_CAMERA = pinhole({
  tiltDeg: 8,
  axisDeg: 40,
  rollDeg: 3,
  distanceMm: 270,
  aim: { xMm: 105, yMm: 74 },
  focalPx: 1500,
  widthPx: 1400,
  heightPx: 1050,
});

export const CARD_LAYOUT = scaleCardLayout('a5');

/** A picture file of the scale card, drawn from its own geometry as the camera would see it. */
export async function cardPhoto(
  format: 'png' | 'jpeg' = 'png',
  camera: Pinhole = CARD_CAMERA,
  covered: Drawing['covered'] = [],
): Promise<Uint8Array<ArrayBuffer>> {
  const { widthPx: width, heightPx: height, light } = drawnCard(CARD_LAYOUT, camera, { grain: 0.006, covered });
  // IEC 61966-2-1.
  const encoded = (linear: number): number => (linear <= 0.0031308 ? 12.92 * linear : 1.055 * linear ** (1 / 2.4) - 0.055);
  const gray = Uint8Array.from(light, (linear) => Math.round(255 * encoded(Math.min(1, Math.max(0, linear)))));
  return new Uint8Array(
    await sharp(gray, { raw: { width, height, channels: 1 } })
      .toFormat(format)
      .toBuffer(),
  );
}
