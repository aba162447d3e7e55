import type { Archive } from '../../archive/archive.ts';
import { refuse } from '../../domain/failure.ts';
import type { SkinGrade } from '../../domain/molting/exuvia.ts';
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
          const { gradeForSkin, ...draft } = body;
          const signing = signingContextOf(archive, path.exuviaId, todayOf(context));
          const checked = unwrap(checkDetermination(draft, signing));
          if (gradeForSkin) gradeSkin(archive, path.exuviaId, { grade: checked.checklist.grade, version: gradeForSkin.version });
          return archive.determinations.sign(path.exuviaId, checked);
        }),
      ),
    'POST /api/determinations/{determinationId}/withdrawal': ({ path, body }) =>
      unwrap(archive.determinations.withdraw(path.determinationId, body.reason)),
  };
}

/** A new version of the skin's record; the earlier ones stay among its revisions. */
function gradeSkin(archive: Archive, exuviaId: string, { grade, version }: { grade: SkinGrade | null; version: number }): void {
  if (grade === null) return;
  const { recovered, completeness, storagePlace, notes } = unwrap(archive.exuviae.get(exuviaId));
  unwrap(archive.exuviae.update(exuviaId, version, { recovered, completeness, storagePlace, notes, grade }));
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
