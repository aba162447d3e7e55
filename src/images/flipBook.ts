import sharp from 'sharp';
import { PAPER } from './paper.ts';

/** One skin on its frame, all at the same scale. */
export interface FlipFrame {
  readonly cut: Buffer;
  readonly leftPx: number;
  readonly topPx: number;
  readonly widthPx: number;
  readonly heightPx: number;
  /** SVG in the frame's own pixels. */
  readonly drawing: string;
}

/** An endless animated WebP, a frame for each skin. */
export async function animatedWebp(
  frames: readonly FlipFrame[],
  size: { readonly widthPx: number; readonly heightPx: number },
  frameMs: number,
): Promise<Buffer> {
  const drawn: Buffer[] = [];
  for (const { cut, leftPx, topPx, widthPx, heightPx, drawing } of frames) {
    const skin = await sharp(cut)
      .resize(Math.max(1, Math.round(widthPx)), Math.max(1, Math.round(heightPx)), { fit: 'fill' })
      .toBuffer();
    drawn.push(
      await sharp({ create: { width: size.widthPx, height: size.heightPx, channels: 3, background: PAPER } })
        .composite([
          { input: skin, left: Math.round(leftPx), top: Math.round(topPx) },
          { input: Buffer.from(drawing), left: 0, top: 0 },
        ])
        .png({ compressionLevel: 1 })
        .toBuffer(),
    );
  }
  // A single page joins with nothing: then it is a picture that stands still.
  const [only] = drawn;
  return (drawn.length === 1 ? sharp(only) : sharp(drawn, { join: { animated: true } }))
    .webp({ quality: 84, effort: 3, loop: 0, delay: drawn.map(() => frameMs) })
    .toBuffer();
}
