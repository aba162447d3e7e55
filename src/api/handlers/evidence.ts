import { refuse } from '../../domain/failure.ts';
import { unwrap } from '../../domain/result.ts';
import { checkModelChange, modelAfter, shownNumbers } from '../../domain/sexing/evidence/model.ts';
import { genusOf, profileFor, profilesIn } from '../../domain/sexing/genus/find.ts';
import { checkLiveSign } from '../../domain/sexing/live/checkLiveSign.ts';
import { type ApiContext, todayOf } from '../context.ts';
import type { evidenceEndpoints, GenusPage, ModelPage } from '../contract/evidence.ts';
import type { HandlersFor } from '../route.ts';
import { genusBookOf } from '../views/sexingKnown.ts';

export function evidenceHandlers(context: ApiContext): HandlersFor<keyof typeof evidenceEndpoints> {
  const { archive } = context;
  return {
    'GET /api/specimens/{specimenId}/live-signs': ({ path }) => {
      const { id } = unwrap(archive.specimens.get(path.specimenId));
      return [...archive.liveSigns.ofSpecimen(id)];
    },
    'POST /api/specimens/{specimenId}/live-signs': ({ path, body }) =>
      unwrap(
        archive.transaction(() => {
          const { id, hatchedOn } = unwrap(archive.specimens.get(path.specimenId));
          const animalPhotoIds = new Set(archive.photos.ofAnimal(id).map((photo) => photo.id));
          const molts = archive.molts.ofSpecimen(id);
          const checked = unwrap(checkLiveSign(body, { today: todayOf(context), hatchedOn, molts, animalPhotoIds }));
          return archive.liveSigns.sign(id, checked);
        }),
      ),
    'POST /api/live-signs/{liveSignId}/withdrawal': ({ path, body }) => unwrap(archive.liveSigns.withdraw(path.liveSignId, body.reason)),

    'GET /api/genera': () => profilesIn(genusBookOf(context)),
    'GET /api/genera/{genus}': ({ path }) => genusPageOf(context, path.genus),
    'PUT /api/genera/{genus}': ({ path, body, version }) => {
      const genus = genusNamed(context, path.genus);
      unwrap(archive.genusEdits.add(genus, version, body));
      return genusPageOf(context, genus);
    },

    'GET /api/evidence-model': () => modelPageOf(context),
    'PUT /api/evidence-model': ({ body, version }) => {
      unwrap(archive.modelChanges.add(version, unwrap(checkModelChange(body))));
      return modelPageOf(context);
    },
  };
}

/** One word of letters, under its present name; a genus that has no profile yet can be given one. */
function genusNamed(context: ApiContext, wanted: string): string {
  if (!/^[A-Za-z]+$/.test(wanted)) refuse({ code: 'not-found', what: 'genus', id: wanted });
  return profileFor(genusOf(wanted), genusBookOf(context)).genus;
}

function genusPageOf(context: ApiContext, wanted: string): GenusPage {
  const book = genusBookOf(context);
  const genus = genusNamed(context, wanted);
  return {
    profile: profileFor(genus, book),
    shipped: book.shipped.find((candidate) => candidate.genus === genus) ?? null,
    edits: book.edits.filter((edit) => edit.genus === genus),
  };
}

function modelPageOf({ archive }: ApiContext): ModelPage {
  const changes = archive.modelChanges.list();
  const model = modelAfter(changes);
  return { version: model.version, revision: changes.at(-1)?.revision ?? 0, numbers: shownNumbers(model), changes: [...changes] };
}
