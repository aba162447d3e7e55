/** A file on disk and the name its owner gave it (for failures; its extension decides nothing). */
export interface PictureFile {
  readonly path: string;
  readonly name: string;
}
