import { join } from 'node:path';
import type { RenditionKind } from '../../domain/photo/photo.ts';

/** Where things lie in an archive's folder. Never built from anything a request says. */
export interface Layout {
  readonly folder: string;
  readonly originals: string;
  readonly renditions: string;
  /** Half-arrived bytes; same volume as the originals, so that publishing is a matter of names. */
  readonly incoming: string;
  /** Copies of the catalogue from before it was migrated. */
  readonly catalogueCopies: string;
}

export function layoutOf(folder: string): Layout {
  return {
    folder,
    originals: join(folder, 'originals'),
    renditions: join(folder, 'renditions'),
    incoming: join(folder, 'incoming'),
    catalogueCopies: join(folder, 'catalogue-copies'),
  };
}

const SHA256 = /^[0-9a-f]{64}$/;

export function originalFolder(layout: Layout, sha256: string): string {
  if (!SHA256.test(sha256)) throw new TypeError(`Expected a SHA-256 in lower-case hexadecimal but received ${sha256}`);
  return join(layout.originals, sha256.slice(0, 2));
}

export function originalPath(layout: Layout, sha256: string): string {
  return join(originalFolder(layout, sha256), sha256.slice(2));
}

export function renditionFolder(layout: Layout, sha256: string): string {
  if (!SHA256.test(sha256)) throw new TypeError(`Expected a SHA-256 in lower-case hexadecimal but received ${sha256}`);
  return join(layout.renditions, sha256.slice(0, 2));
}

export function renditionPath(layout: Layout, sha256: string, kind: RenditionKind): string {
  return join(renditionFolder(layout, sha256), `${sha256.slice(2)}-${kind}.jpg`);
}

const CUT_KEY = /^[0-9A-Za-z-]{1,100}$/;

/** What the names of all cuts of one original begin with. */
export function cutPrefix(sha256: string): string {
  return `${sha256.slice(2)}-cut-`;
}

export function cutPath(layout: Layout, sha256: string, key: string): string {
  if (!CUT_KEY.test(key)) throw new TypeError(`Expected letters, digits and hyphens but received ${key}`);
  return join(renditionFolder(layout, sha256), `${cutPrefix(sha256)}${key}.webp`);
}
