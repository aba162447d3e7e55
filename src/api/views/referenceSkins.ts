import type { CabinetEntry } from '../../archive/records/animals.ts';
import { instarsOfSkins } from '../../domain/molting/instars.ts';
import { sizeClassOfSkin } from '../../domain/sexing/evidence/skinFindings.ts';
import { profileFor } from '../../domain/sexing/genus/find.ts';
import type { GenusProfile } from '../../domain/sexing/genus/profile.ts';
import { signOf } from '../../domain/sexing/sign.ts';
import type { Specimen } from '../../domain/specimen/specimen.ts';
import type { ReferenceSkin } from '../contract/sexing.ts';
import { genusBookOf, modelInForce, type SexingContext } from './sexingKnown.ts';

/** Photographed skins of other animals of the genus whose sex is established, to hold a skin against. */
export function referenceSkinsOf(context: SexingContext, specimen: Specimen, genus: GenusProfile): ReferenceSkin[] {
  // Animals without a name of a genus are of nobody knows which: none is a reference for another.
  if (genus.genus === '') return [];
  const { archive } = context;
  const book = genusBookOf(context);
  const { numbers } = modelInForce(context);
  const exuviae = new Map(archive.exuviae.list().map((exuvia) => [exuvia.moltId, exuvia]));
  const covers = archive.photos.coversOfSkins();

  const skinsOf = ({ specimen: other, molts, determinations, liveSigns }: CabinetEntry): ReferenceSkin[] => {
    const { sex, level } = signOf(determinations, liveSigns);
    if (level !== 'established' || (sex !== 'female' && sex !== 'male')) return [];
    const instars = instarsOfSkins(molts, other);
    return molts.flatMap((molt, index) => {
      const exuvia = exuviae.get(molt.id);
      const coverPhotoId = covers.get(exuvia?.id ?? '') ?? null;
      if (!exuvia?.recovered || coverPhotoId === null) return [];
      const read = determinations.findLast((determination) => determination.exuviaId === exuvia.id);
      const { id, code, taxon, name } = other;
      return [
        {
          exuviaId: exuvia.id,
          specimen: { id, code, taxon, name },
          instar: instars[index] ?? null,
          sex,
          sizeClass: read ? sizeClassOfSkin(read.checklist, genus, numbers) : null,
          coverPhotoId,
        },
      ];
    });
  };
  return archive.cabinet
    .entries()
    .filter((entry) => entry.specimen.id !== specimen.id && profileFor(entry.specimen.taxon, book).genus === genus.genus)
    .flatMap(skinsOf);
}
