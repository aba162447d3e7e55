import type { Archive } from '../../archive/archive.ts';
import { refuse } from '../../domain/failure.ts';
import type { SkinGrade } from '../../domain/molting/exuvia.ts';
import { unwrap } from '../../domain/result.ts';
import { assessmentOf } from '../../domain/sexing/assessing.ts';
import type { GenusProfile } from '../../domain/sexing/genus/profile.ts';
import { checkDetermination, type SigningContext } from '../../domain/sexing/signing.ts';
import { type ApiContext, todayOf } from '../context.ts';
import type { sexingEndpoints } from '../contract/sexing.ts';
import type { HandlersFor } from '../route.ts';
import { animalSignsOf } from '../views/animalSigns.ts';
import { examinationSheetOf } from '../views/examinationSheet.ts';
import { genusProfileOf, modelInForce, skinsOnRecord } from '../views/sexingKnown.ts';
import { skinSummariesOf } from '../views/skinSummaries.ts';

export function sexingHandlers(context: ApiContext): HandlersFor<keyof typeof sexingEndpoints> {
  const { archive } = context;
  return {
    'GET /api/exuviae': () => skinSummariesOf(archive),
    'GET /api/exuviae/{exuviaId}/examination': ({ path }) => examinationSheetOf(context, path.exuviaId),
    'PUT /api/exuviae/{exuviaId}/examination': ({ path, body, version }) =>
      unwrap(archive.readingsUnderWay.put(path.exuviaId, version, body.reading)),
    'POST /api/exuviae/{exuviaId}/determinations': ({ path, body }) =>
      unwrap(
        archive.transaction(() => {
          const { gradeForSkin, readingVersion, ...draft } = body;
          const signing = signingContextOf(context, path.exuviaId);
          const checked = unwrap(checkDetermination(draft, signing));
          if (gradeForSkin) gradeSkin(archive, path.exuviaId, { grade: checked.checklist.grade, version: gradeForSkin.version });
          unwrap(archive.readingsUnderWay.finish(path.exuviaId, readingVersion));
          return archive.determinations.sign(path.exuviaId, checked, assessmentOf(checked, signing));
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

interface Signing extends SigningContext {
  readonly genus: GenusProfile;
}

function signingContextOf(context: ApiContext, exuviaId: string): Signing {
  const { archive } = context;
  const exuvia = unwrap(archive.exuviae.get(exuviaId));
  if (!exuvia.recovered) refuse({ code: 'skin-not-recovered', moltId: exuvia.moltId });
  const { specimenId, happenedFrom } = unwrap(archive.molts.get(exuvia.moltId));
  const skinPhotos = archive.photos.ofSkinsOf(specimenId);
  const animalPhotos = archive.photos.ofAnimal(specimenId);
  return {
    genus: genusProfileOf(context, unwrap(archive.specimens.get(specimenId))),
    model: modelInForce(context),
    exuviaId,
    skinsInOrder: skinsOnRecord(context, specimenId),
    determinations: archive.determinations.ofSpecimen(specimenId),
    liveSigns: animalSignsOf(archive, specimenId),
    today: todayOf(context),
    shedFrom: happenedFrom,
    skinPhotoIds: new Set(skinPhotos.map(({ id }) => id)),
    animalPhotoIds: new Set(animalPhotos.map(({ id }) => id)),
    photoSizes: new Map([...skinPhotos, ...animalPhotos].map((photo) => [photo.id, photo])),
  };
}
