import type { Archive } from '../../archive/archive.ts';
import type { FoundScale, ScaleProposal } from '../../domain/finding/foundScale.ts';
import { checkRough } from '../../domain/finding/refine.ts';
import type { RoughScale } from '../../domain/finding/refinement.ts';
import type { Photo } from '../../domain/photo/photo.ts';
import { fail, type Result, succeed } from '../../domain/result.ts';
import { likelyPrintCheck, withPrintCheck } from '../../domain/scaleCard/printCheck.ts';
import { openScaleFinder, type ScaleFinder } from '../../images/scaleFinder.ts';
import { openFindingQueue } from './queue.ts';

/** Finding scale objects in photos of the archive: one picture at a time, beside the process that answers. */
export interface ScaleFinding {
  /**
   * What is found without a click, the clearest first. Fails with `not-found`, `original-missing`, `finding-stopped`, and as
   * `examinePicture` does.
   *
   * @param signal when it is aborted before the photo's turn comes, the photo is not looked at.
   */
  proposals(photoId: string, signal: AbortSignal): Promise<Result<readonly ScaleProposal[]>>;
  /** Fails with `not-found`, `original-missing`, `finding-stopped`, and as `checkRough` and `refineScale` do. */
  refine(photoId: string, rough: RoughScale, signal: AbortSignal): Promise<Result<FoundScale>>;
  /** Stops what waits and what is in hand: a photo that is never done must not keep the program open. */
  close(): Promise<void>;
}

/** Photos whose proposals are remembered: some kilobytes each, and a keeper goes to and fro between few. */
const REMEMBERED = 64;

/**
 * Proposals are remembered by the original's content until the program ends, not on disk: made again in a second or two, they
 * never outlive the way they were found.
 */
export function openScaleFinding(archive: Archive, finder: ScaleFinder = openScaleFinder()): ScaleFinding {
  const queue = openFindingQueue();
  const remembered = new Map<string, readonly ScaleProposal[]>();
  let closed = false;

  const remember = (sha256: string, proposals: readonly ScaleProposal[]): void => {
    remembered.set(sha256, proposals);
    const [oldest] = remembered.keys();
    if (remembered.size > REMEMBERED && oldest !== undefined) remembered.delete(oldest);
  };

  /** The card's true size follows from the printer that was measured, while it is the only one; the keeper is told and may choose another. */
  const printed = (proposal: ScaleProposal): ScaleProposal => {
    const { marks } = proposal;
    if (marks.kind !== 'points' || marks.object !== 'scale-card') return proposal;
    return { ...proposal, marks: withPrintCheck(marks, likelyPrintCheck(archive.printChecks.list())) };
  };

  const withPicture = async <Value>(photo: Photo, work: (picture: Picture) => Promise<Result<Value>>): Promise<Result<Value>> => {
    const path = await archive.originals.pathOf(photo.sha256);
    if (path === null) return fail({ code: 'original-missing', photoId: photo.id });
    const { widthPx, heightPx, facts } = photo;
    try {
      return await work({ file: { path, name: photo.originalName }, facts: { widthPx, heightPx, facts } });
    } catch (error) {
      if (closed) return fail({ code: 'finding-stopped' });
      throw error;
    }
  };

  const look = async (photo: Photo): Promise<Result<readonly ScaleProposal[]>> => {
    // Somebody who asked before may have had it looked at in the meantime.
    const known = remembered.get(photo.sha256);
    if (known) return succeed(known);
    const found = await withPicture(photo, (picture) => finder.propose(picture));
    if (found.ok) remember(photo.sha256, found.value);
    return found;
  };

  return {
    async proposals(photoId, signal) {
      const photo = archive.photos.get(photoId);
      if (!photo.ok) return photo;
      const known = remembered.get(photo.value.sha256);
      const found = known ? succeed(known) : await queue.add('whenever', signal, () => look(photo.value));
      return found.ok ? succeed(found.value.map(printed)) : found;
    },
    async refine(photoId, rough, signal) {
      const photo = archive.photos.get(photoId);
      if (!photo.ok) return photo;
      const checked = checkRough(rough, photo.value);
      if (!checked.ok) return checked;
      return queue.add('now', signal, () => withPicture(photo.value, (picture) => finder.refine(picture, rough)));
    },
    async close() {
      closed = true;
      await Promise.all([queue.close(), finder.close()]);
    },
  };
}

type Picture = Parameters<ScaleFinder['propose']>[0];
