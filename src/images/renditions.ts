import sharp, { type Sharp } from 'sharp';
import { LARGEST_PICTURE_PX, RENDITION_LONGEST_PX, type RenditionKind } from '../domain/photo/photo.ts';
import { fail, type Result, succeed } from '../domain/result.ts';
import { withColorProfile } from './colorProfile.ts';
import { decodingFailure } from './damage.ts';
import type { Header } from './header.ts';
import { decodeHeic } from './heic.ts';
import type { PictureFile } from './pictureFile.ts';

/** Cached operations would keep files open and tens of megabytes busy; no file is decoded twice anyway. */
sharp.cache(false);

/**
 * `error`: a file cut short is refused, while the oddities that many cameras write pass. The limit is checked against the
 * header before; here it is the decoder's own second lock.
 */
const INPUT = { failOn: 'error', limitInputPixels: LARGEST_PICTURE_PX } as const;

/** JPEG: for 12 megapixels on two cores both smaller copies took 0.2 s, in WebP 0.5 s. 4:4:4 where edges are going to be measured. */
const QUALITY = {
  thumbnail: { quality: 80 },
  screen: { quality: 86 },
  full: { quality: 94, chromaSubsampling: '4:4:4' },
} as const satisfies Record<RenditionKind, object>;

/** For what is transparent. */
const BACKGROUND = { background: 'white' };

const NEARLY_LOSSLESS = { quality: 99, chromaSubsampling: '4:4:4' } as const;

/** The libraries' limit on the side of a JPEG (ISO/IEC 10918-1, B.2.2: 16 bits). */
const LONGEST_JPEG_SIDE_PX = 65_535;

/** A picture that can be drawn from, upright. */
export type Upright = () => Sharp;

/** Opens a file for drawing, turned as its header says. */
export async function openUpright(file: PictureFile, header: Header): Promise<Result<Upright>> {
  if (header.mediaType !== 'image/heic') return succeed(() => sharp(file.path, INPUT).autoOrient());
  const decoded = await decodeHeic(file.path);
  if (!decoded.decoded) return fail(await decodingFailure(file, header.mediaType, decoded.reason));
  const { widthPx: width, heightPx: height, rgba } = decoded;
  if (width !== header.widthPx || height !== header.heightPx) {
    const reason = `decoded to ${width} x ${height} pixels, announced as ${header.widthPx} x ${header.heightPx}`;
    return fail({ code: 'file-unreadable', file: file.name, reason });
  }
  const bare = () => sharp(rgba, { raw: { width, height, channels: 4 } });
  if (!header.colorProfile) return succeed(bare);
  // Bare pixels can't say which color space they are in; a JPEG can, and sharp then converts to sRGB.
  const tagged = withColorProfile(await bare().flatten(BACKGROUND).jpeg(NEARLY_LOSSLESS).toBuffer(), header.colorProfile);
  return succeed(() => sharp(tagged, INPUT));
}

async function draw(upright: Upright, kind: RenditionKind): Promise<Buffer> {
  const whole = upright().flatten(BACKGROUND);
  if (kind === 'full') return whole.jpeg(QUALITY.full).toBuffer();
  const longest = RENDITION_LONGEST_PX[kind];
  return whole.resize(longest, longest, { fit: 'inside', withoutEnlargement: true }).jpeg(QUALITY[kind]).toBuffer();
}

/** Draws each kind from the one before, so that the original is decoded once: give the largest first. */
export async function drawAll(
  upright: Upright,
  kinds: readonly RenditionKind[],
): Promise<readonly { readonly kind: RenditionKind; readonly bytes: Buffer }[]> {
  const drawn: { kind: RenditionKind; bytes: Buffer }[] = [];
  let source = upright;
  for (const kind of kinds) {
    const bytes = await draw(source, kind);
    drawn.push({ kind, bytes });
    source = () => sharp(bytes, INPUT);
  }
  return drawn;
}

/** Why a picture can't become a JPEG; null when it can. */
export function whyNoFull({ widthPx, heightPx }: Header): string | null {
  const longest = Math.max(widthPx, heightPx);
  return longest > LONGEST_JPEG_SIDE_PX ? `a side of ${longest} pixels; at most ${LONGEST_JPEG_SIDE_PX} can be shown` : null;
}
