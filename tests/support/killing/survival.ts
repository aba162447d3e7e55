import { readdir } from 'node:fs/promises';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import type { Archive } from '../../../src/archive/archive.ts';
import { openArchive } from '../../../src/archive/open.ts';
import { createAmbient } from '../../../src/core/ambient.ts';
import { readingSavedAs } from './reading.ts';

/** Everything that was ever confirmed: hashes of photos, versions of readings, by their ids. */
export interface Promises {
  readonly photos: Map<string, string>;
  readonly readings: Map<string, number>;
}

/** Opens an archive whose program was killed and says what does not hold; nothing, when it survived. */
export async function troublesAfterKill(folder: string, promises: Promises): Promise<string[]> {
  const opened = await openArchive(folder, createAmbient({ now: null, seed: null }));
  if (!opened.ok) return [`does not open: ${JSON.stringify(opened.failure)}`];
  const archive = opened.value;
  try {
    return [
      ...photoTroubles(archive, promises),
      ...readingTroubles(archive, promises),
      ...(await fileTroubles(archive)),
      ...(await leftoverTroubles(archive, folder)),
      ...archive.damaged(),
    ];
  } finally {
    archive.close();
  }
}

/** To be asked when the archive is closed: what SQLite itself finds wrong in the catalogue. */
export function catalogueTroubles(folder: string): string[] {
  const catalogue = new Database(join(folder, 'catalogue.db'), { readonly: true });
  try {
    const integrity = catalogue.pragma('integrity_check', { simple: true });
    const foreignKeys = catalogue.pragma('foreign_key_check') as unknown[];
    return [...(integrity === 'ok' ? [] : [String(integrity)]), ...foreignKeys.map((row) => JSON.stringify(row))];
  } finally {
    catalogue.close();
  }
}

function photoTroubles(archive: Archive, { photos }: Promises): string[] {
  return [...photos].flatMap(([id, sha256]) => {
    const photo = archive.photos.get(id);
    if (!photo.ok) return [`photo ${id} was confirmed: ${photo.failure.code}`];
    return photo.value.sha256 === sha256 ? [] : [`photo ${id} holds other bytes than were confirmed`];
  });
}

/** A save that was not confirmed may have been made; then it was made whole. */
function readingTroubles(archive: Archive, { readings }: Promises): string[] {
  const lost = [...readings].flatMap(([id, version]) => {
    const reading = archive.readings.get(id);
    if (!reading.ok) return [`reading ${id} was confirmed: ${reading.failure.code}`];
    return reading.value.version >= version ? [] : [`reading ${id} is back at version ${reading.value.version} of ${version}`];
  });
  const all = archive.photos.list({ unassigned: false }).flatMap((photo) => archive.readings.ofPhoto(photo.id));
  const torn = all.filter(({ version, observer, landmarks }) => {
    const whole = readingSavedAs(version);
    return observer !== whole.observer || JSON.stringify(landmarks) !== JSON.stringify(whole.landmarks);
  });
  return [...lost, ...torn.map(({ id, version }) => `reading ${id} is not what was saved as version ${version}`)];
}

/** Hashes every original that a photo names. */
async function fileTroubles(archive: Archive): Promise<string[]> {
  const { sound, harm } = await archive.originals.check();
  const missing = archive.photos.count() - sound - harm.length;
  return [...harm.map((failure) => JSON.stringify(failure)), ...(missing === 0 ? [] : [`${missing} photos were not checked`])];
}

/** After opening, `incoming` holds nothing but whole files that an unfinished import still needs. */
async function leftoverTroubles(archive: Archive, folder: string): Promise<string[]> {
  const needed = new Set(archive.imports.unfinished().flatMap(({ staged }) => (staged ? [staged.stagedName] : [])));
  const found = await readdir(join(folder, 'incoming'));
  return found.filter((name) => !needed.has(name)).map((name) => `incoming/${name} was not swept`);
}
