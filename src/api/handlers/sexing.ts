import type { Archive } from '../../archive/archive.ts';
import { refuse } from '../../domain/failure.ts';
import { unwrap } from '../../domain/result.ts';
import { checkDetermination, type SigningContext } from '../../domain/sexing/signing.ts';
import { type ApiContext, todayOf } from '../context.ts';
import type { sexingEndpoints } from '../contract/sexing.ts';
import type { HandlersFor } from '../route.ts';
import { examinationSheetOf } from '../views/examinationSheet.ts';
import { skinSummariesOf } from '../views/skinSummaries.ts';

export function sexingHandlers(context: ApiContext): HandlersFor<keyof typeof sexingEndpoints> {
  const { archive } = context;
  return {
    'GET /api/exuviae': () => skinSummariesOf(archive),
    'GET /api/exuviae/{exuviaId}/examination': ({ path }) => examinationSheetOf(archive, path.exuviaId),
    'POST /api/exuviae/{exuviaId}/determinations': ({ path, body }) =>
      unwrap(
        archive.transaction(() => {
          const signing = signingContextOf(archive, path.exuviaId, todayOf(context));
          return archive.determinations.sign(path.exuviaId, unwrap(checkDetermination(body, signing)));
        }),
      ),
    'POST /api/determinations/{determinationId}/withdrawal': ({ path, body }) =>
      unwrap(archive.determinations.withdraw(path.determinationId, body.reason)),
  };
}

function signingContextOf(archive: Archive, exuviaId: string, today: string): SigningContext {
  const exuvia = unwrap(archive.exuviae.get(exuviaId));
  if (!exuvia.recovered) refuse({ code: 'skin-not-recovered', moltId: exuvia.moltId });
  const { specimenId } = unwrap(archive.molts.get(exuvia.moltId));
  const skins = archive.exuviae.ofSpecimen(specimenId);
  return {
    taxon: unwrap(archive.specimens.get(specimenId)).taxon,
    exuviaId,
    skinsInOrder: archive.molts
      .ofSpecimen(specimenId)
      .flatMap((molt) => skins.filter((skin) => skin.moltId === molt.id).map(({ id }) => id)),
    determinations: archive.determinations.ofSpecimen(specimenId),
    today,
    skinPhotoIds: new Set(archive.photos.ofSkinsOf(specimenId).map(({ id }) => id)),
    animalPhotoIds: new Set(archive.photos.ofAnimal(specimenId).map(({ id }) => id)),
  };
}
