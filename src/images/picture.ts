import type { CameraFacts, MediaType, RenditionKind } from '../domain/photo/photo.ts';
import type { Result } from '../domain/result.ts';

/** A file on disk and the name its owner gave it (for failures; its extension decides nothing). */
export interface PictureFile {
  readonly path: string;
  readonly name: string;
}

/** An upright JPEG in sRGB. */
export interface Rendition {
  readonly kind: RenditionKind;
  readonly bytes: Buffer;
}

export interface Picture {
  readonly mediaType: MediaType;
  /** Of the upright frame. */
  readonly widthPx: number;
  readonly heightPx: number;
  readonly facts: CameraFacts;
  /** Thumbnail and screen, and `full` for kinds that no browser shows upright by itself. */
  readonly renditions: readonly Rendition[];
}

/**
 * Everything an import needs to know about one file, decoding it once and wholly, so that damage is found at the door.
 * Fails with `file-empty`, `file-truncated`, `file-not-an-image`, `file-kind-not-kept`, `picture-too-large`, `file-unreadable`.
 */
export declare function examinePicture(file: PictureFile): Promise<Result<Picture>>;

/** Makes one rendition again, of a file that has passed `examinePicture`. */
export declare function makeRendition(file: PictureFile, kind: RenditionKind): Promise<Result<Rendition>>;
