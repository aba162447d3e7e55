import { existsSync } from 'node:fs';
import type { Archive } from '../../archive/archive.ts';
import type { Staged } from '../../archive/records/originals.ts';
import type { FileOutcome } from '../../domain/intake/task.ts';
import type { Photo } from '../../domain/photo/photo.ts';
import { type Result, succeed } from '../../domain/result.ts';
import { examinePicture, type Picture } from '../../images/picture.ts';

/** Bytes at the door of the archive. */
export interface Arrival {
  readonly staged: Staged;
  readonly name: string;
  readonly sample: boolean;
}

export type Admission = Extract<FileOutcome, { kind: 'added' | 'already-here' }>;

/**
 * Takes staged bytes into the archive. The original is published and on the disk before its row is written, and the row is
 * written in one transaction with whatever `note` writes; so at every moment a recorded photo has its bytes. Content already
 * on record is published as well: where its original was lost or damaged since, it is whole again afterwards.
 *
 * @param note records what became of the file; a failure in it takes the row back.
 */
export async function admitPicture(archive: Archive, arrival: Arrival, note: (admission: Admission) => void): Promise<Result<Admission>> {
  const { staged, name } = arrival;
  const known = archive.photos.bySha256(staged.sha256);
  if (known) {
    const published = await archive.originals.publish(staged);
    return published.ok ? noteKnown(archive, known.id, note) : published;
  }
  const picture = await examinePicture({ path: await pathOf(archive, staged), name });
  if (!picture.ok) return picture;
  for (const { kind, bytes } of picture.value.renditions) await archive.renditions.put(staged.sha256, kind, bytes);
  const published = await archive.originals.publish(staged);
  if (!published.ok) return published;
  return archive.transaction(() => {
    // The same content may have come in beside this file, under another name.
    const meanwhile = archive.photos.bySha256(staged.sha256);
    if (meanwhile) return noted({ kind: 'already-here', photoId: meanwhile.id }, note);
    const photo = archive.photos.add(newPhotoFrom(arrival, picture.value));
    return photo.ok ? noted({ kind: 'added', photoId: photo.value.id }, note) : photo;
  });
}

/** A kill between publishing and the row leaves the bytes published and no longer staged. */
async function pathOf(archive: Archive, staged: Staged): Promise<string> {
  const stagedPath = archive.originals.stagedPath(staged);
  return existsSync(stagedPath) ? stagedPath : ((await archive.originals.pathOf(staged.sha256)) ?? stagedPath);
}

function noteKnown(archive: Archive, photoId: string, note: (admission: Admission) => void): Result<Admission> {
  return archive.transaction(() => noted({ kind: 'already-here', photoId }, note));
}

function noted(admission: Admission, note: (admission: Admission) => void): Result<Admission> {
  note(admission);
  return succeed(admission);
}

function newPhotoFrom({ staged, name, sample }: Arrival, picture: Picture): Omit<Photo, 'id' | 'version' | 'importedAt'> {
  return {
    subject: { kind: 'none' },
    view: 'other',
    takenOn: picture.facts.takenAt?.local.slice(0, 10) ?? null,
    notes: '',
    sha256: staged.sha256,
    originalName: name,
    mediaType: picture.mediaType,
    byteLength: staged.byteLength,
    widthPx: picture.widthPx,
    heightPx: picture.heightPx,
    facts: picture.facts,
    sample,
  };
}
