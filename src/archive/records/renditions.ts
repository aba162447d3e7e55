import type { Readable } from 'node:stream';
import type { RenditionKind } from '../../domain/photo/photo.ts';

/** Every rendition is a JPEG, upright, in sRGB. */
export const RENDITION_MEDIA_TYPE = 'image/jpeg';

/** Smaller copies beside the originals. They can be made again at any time, so they are atomic but not synced. */
export interface Renditions {
  /** The whole new file or none. */
  put(sha256: string, kind: RenditionKind, bytes: Uint8Array): Promise<void>;
  /** null when it has to be made (again). */
  open(sha256: string, kind: RenditionKind): Promise<{ readonly stream: Readable; readonly byteLength: number } | null>;
  /** Which of the wanted ones are missing. */
  missing(sha256: string, kinds: readonly RenditionKind[]): Promise<readonly RenditionKind[]>;
}
