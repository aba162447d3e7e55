import type { Archive } from '../../archive/archive.ts';
import type { Renditions } from '../../archive/records/renditions.ts';
import { cutKeyOf, type PlatedPhoto, platePhoto } from '../../domain/plate/platePhoto.ts';
import { fail, type Result, succeed } from '../../domain/result.ts';
import { drawPlateCut } from '../../images/plateCut.ts';

export type KeptCut = NonNullable<Awaited<ReturnType<Renditions['openCut']>>>;

/** Lays skins flat, one photo at a time: two of 48 megapixels at once would only take twice the memory. */
export interface Cutter {
  /** The cut of a photo, made now if it is not kept. Fails with `not-at-scale`, `original-missing`, and as `examinePicture` does. */
  open(plated: PlatedPhoto): Promise<Result<KeptCut>>;
}

export function createCutter(archive: Archive): Cutter {
  let last: Promise<unknown> = Promise.resolve();

  const make = async (plated: PlatedPhoto): Promise<Result<null>> => {
    const { photo } = plated;
    const placed = platePhoto(plated);
    if ('reason' in placed) return fail({ code: 'not-at-scale', photoId: photo.id });
    const path = await archive.originals.pathOf(photo.sha256);
    if (path === null) return fail({ code: 'original-missing', photoId: photo.id });
    const drawn = await drawPlateCut({ path, name: photo.originalName }, placed.plate);
    if (!drawn.ok) return drawn;
    await archive.renditions.putCut(photo.sha256, cutKeyOf(plated), drawn.value);
    return succeed(null);
  };

  const openOrMake = async (plated: PlatedPhoto): Promise<Result<KeptCut>> => {
    const { sha256, id } = plated.photo;
    // Whoever asked before may have had it made in the meantime.
    const kept = await archive.renditions.openCut(sha256, cutKeyOf(plated));
    if (kept) return succeed(kept);
    const made = await make(plated);
    if (!made.ok) return made;
    const opened = await archive.renditions.openCut(sha256, cutKeyOf(plated));
    return opened ? succeed(opened) : fail({ code: 'original-missing', photoId: id });
  };

  return {
    async open(plated) {
      const kept = await archive.renditions.openCut(plated.photo.sha256, cutKeyOf(plated));
      if (kept) return succeed(kept);
      const turn = last.then(() => openOrMake(plated));
      last = turn.catch(() => undefined);
      return turn;
    },
  };
}
