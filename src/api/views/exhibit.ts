import type { Archive } from '../../archive/archive.ts';
import { refuse } from '../../domain/failure.ts';
import type { Rung } from '../../domain/growth/rung.ts';
import type { Plate } from '../../domain/plate/plate.ts';
import { type PlatedPhoto, platePhoto } from '../../domain/plate/platePhoto.ts';
import { unwrap } from '../../domain/result.ts';
import { type SheetWords, sheetWordsOf } from '../../exchange/contactSheet/sheetWords.ts';
import { pointingIn } from './pointing.ts';
import { skinRowOf } from './skinRow.ts';

export interface Exhibit {
  readonly skins: readonly { readonly rung: Rung; readonly plated: PlatedPhoto; readonly plate: Plate }[];
  readonly plated: readonly PlatedPhoto[];
  readonly plates: readonly Plate[];
  readonly words: SheetWords;
}

/** The skins that can be brought to scale, oldest first, one photo of each, with everything that is written beside them. */
export function exhibitOf(archive: Archive, specimenId: string): Exhibit {
  const specimen = unwrap(archive.specimens.get(specimenId));
  const { ladder, gallery } = skinRowOf(archive, specimen, pointingIn(archive));
  const skins = ladder.rungs.flatMap((rung) => {
    const plated = gallery.find(({ photo }) => photo.id === rung.photoId);
    const placed = plated && platePhoto(plated);
    return placed && 'plate' in placed ? [{ rung, plated, plate: placed.plate }] : [];
  });
  if (skins.length === 0) refuse({ code: 'nothing-at-scale' });
  return {
    skins,
    plated: skins.map(({ plated }) => plated),
    plates: skins.map(({ plate }) => plate),
    words: sheetWordsOf(
      specimen,
      skins.map(({ rung }) => rung),
    ),
  };
}
