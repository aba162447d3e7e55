import type { Readable } from 'node:stream';
import type { RenditionKind } from '../../domain/photo/photo.ts';

/** Every rendition is a JPEG, upright, in sRGB. */
export const RENDITION_MEDIA_TYPE = 'image/jpeg';

export const CUT_MEDIA_TYPE = 'image/webp';

/** Smaller copies beside the originals. They can be made again at any time, so they are atomic but not synced. */
export interface Renditions {
  /** The whole new file or none. */
  put(sha256: string, kind: RenditionKind, bytes: Uint8Array): Promise<void>;
  /** null when it has to be made (again). */
  open(sha256: string, kind: RenditionKind): Promise<{ readonly stream: Readable; readonly byteLength: number } | null>;
  /** Which of the wanted ones are missing. */
  missing(sha256: string, kinds: readonly RenditionKind[]): Promise<readonly RenditionKind[]>;
  /**
   * Keeps a flat cut of a skin under the key of the marks it follows from, in place of any other cut of the photo.
   *
   * @param key letters, digits and hyphens.
   */
  putCut(sha256: string, key: string, bytes: Uint8Array): Promise<void>;
  hasCut(sha256: string, key: string): Promise<boolean>;
  /** null when it has to be made. */
  openCut(sha256: string, key: string): Promise<{ readonly stream: Readable; readonly byteLength: number } | null>;
}
