import { readdirSync, readFileSync } from 'node:fs';
import { join, relative, resolve, sep } from 'node:path';

const ROOT = resolve(import.meta.dirname, '../..');

/** A file of ours: its path from the folder of package.json, with slashes, and its text. */
export interface SourceFile {
  readonly path: string;
  readonly text: string;
}

/** All files under a folder whose names end in one of the endings, in order of their paths. */
export function filesUnder(folder: string, endings: readonly string[]): readonly SourceFile[] {
  return readdirSync(join(ROOT, folder), { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && endings.some((ending) => entry.name.endsWith(ending)))
    .map((entry) => join(entry.parentPath, entry.name))
    .map((path) => ({ path: relative(ROOT, path).split(sep).join('/'), text: readFileSync(path, 'utf8') }))
    .toSorted((one, other) => (one.path < other.path ? -1 : 1));
}

/** The names of the folders directly in a folder. */
export function foldersIn(folder: string): readonly string[] {
  return readdirSync(join(ROOT, folder), { withFileTypes: true })
    .filter((entry) => entry.isDirectory())
    .map((entry) => entry.name)
    .toSorted();
}

export function textOf(path: string): string {
  return readFileSync(join(ROOT, path), 'utf8');
}
