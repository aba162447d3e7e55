import type { Archive } from '../../archive/archive.ts';
import type { CabinetEntry } from '../../archive/records/animals.ts';
import { byDate, instarsOfSkins } from '../../domain/molting/instars.ts';
import { standingOf } from '../../domain/sexing/standing.ts';
import type { SkinSummary } from '../contract/sexing.ts';

/** Every skin that was recovered, latest molt first; read in a fixed number of statements, however many there are. */
export function skinSummariesOf(archive: Archive): SkinSummary[] {
  const exuviae = new Map(archive.exuviae.list().map((exuvia) => [exuvia.moltId, exuvia]));
  const begun = archive.readingsUnderWay.begun();
  const covers = archive.photos.coversOfSkins();
  const skinsOf = ({ specimen, molts, determinations }: CabinetEntry): SkinSummary[] => {
    const standing = standingOf(determinations);
    const instars = instarsOfSkins(molts, specimen);
    return molts.flatMap((molt, index) => {
      const exuvia = exuviae.get(molt.id);
      if (!exuvia?.recovered) return [];
      return [
        {
          specimen: { id: specimen.id, code: specimen.code, taxon: specimen.taxon, name: specimen.name },
          molt,
          instar: instars[index] ?? null,
          recordedMolt: index + 1,
          exuvia,
          coverPhotoId: covers.get(exuvia.id) ?? null,
          standingDeterminations: standing.filter((determination) => determination.exuviaId === exuvia.id).length,
          begun: begun.has(exuvia.id),
        },
      ];
    });
  };
  return archive.cabinet
    .entries()
    .flatMap(skinsOf)
    .sort((a, b) => byDate(b.molt, a.molt));
}
