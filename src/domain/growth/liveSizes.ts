import { z } from 'zod';
import { CalendarDay } from '../dates.ts';
import type { Acquisition } from '../molting/instarAnchors.ts';
import { type DatedMolt, inDateOrder, instarOfAnimalPhoto } from '../molting/instars.ts';
import type { Photo } from '../photo/photo.ts';
import { placeMoltsAnyhow } from './positions.ts';
import { SizeName, type SkinReading, SkinSizes, sizesOf } from './skinSizes.ts';

/**
 * Sizes of the living animal from a photo: of the instar after the last molt before it, one step above that molt's skin. Kept
 * apart from the rungs, whose sizes come from skins alone: a leg or a span from life has an error of another kind.
 */
export const LiveSize = z
  .object({
    photoId: z.string(),
    takenOn: CalendarDay.nullable(),
    afterMoltId: z.string().nullable().describe('The last molt surely before the photo; null where there is none'),
    step: z
      .int()
      .nullable()
      .describe('On the scale of the rungs; null where a molt may lie on either side of the photo, or none before it'),
    instarFrom: z.int().nullable(),
    instarTo: z.int().nullable(),
    ...SkinSizes.shape,
  })
  .meta({ id: 'LiveSize' });
export type LiveSize = z.infer<typeof LiveSize>;

export interface LivePhoto {
  readonly photo: Pick<Photo, 'id' | 'subject' | 'takenOn'>;
  readonly readings: readonly SkinReading[];
}

/**
 * Places measured photos of the living animal among its molts; photos of skins and photos without a size are left out.
 *
 * @param molts all of the animal, in any order.
 */
export function placeLiveSizes(photos: readonly LivePhoto[], molts: readonly DatedMolt[], acquisition?: Acquisition): LiveSize[] {
  const ordered = inDateOrder(molts);
  const positions = placeMoltsAnyhow(ordered, acquisition);
  return photos.flatMap(({ photo, readings }) => {
    const sizes = sizesOf(readings);
    if (photo.subject.kind !== 'animal' || SizeName.options.every((size) => sizes[size] === null)) return [];
    const { takenOn } = photo;
    const surely = takenOn === null ? 0 : ordered.filter((molt) => molt.happenedTo < takenOn).length;
    const perhaps = takenOn === null ? ordered.length : ordered.filter((molt) => molt.happenedFrom <= takenOn).length;
    const before = positions[surely - 1];
    const instars = takenOn === null ? null : instarOfAnimalPhoto(takenOn, ordered, acquisition);
    return [
      {
        photoId: photo.id,
        takenOn,
        afterMoltId: ordered[surely - 1]?.id ?? null,
        step: before?.stepKnown && surely === perhaps ? before.step + 1 : null,
        instarFrom: instars?.from ?? null,
        instarTo: instars?.to ?? null,
        ...sizes,
      },
    ];
  });
}
