import { checkObservation } from '../../domain/care/appending.ts';
import { calendarEntriesOf, canceledEntriesOf } from '../../domain/care/calendar.ts';
import { pairingOf } from '../../domain/care/pairing.ts';
import { refuse } from '../../domain/failure.ts';
import { unwrap } from '../../domain/result.ts';
import { writeCalendar } from '../../exchange/calendar/writeCalendar.ts';
import { type ApiContext, todayOf } from '../context.ts';
import type { watchEndpoints } from '../contract/watch.ts';
import type { BytesAnswer, HandlersFor } from '../route.ts';
import { presentOf, watchBoardOf, watchedAnimals } from '../views/watchBoard.ts';

export function watchHandlers(context: ApiContext): HandlersFor<keyof typeof watchEndpoints> {
  const { archive } = context;
  return {
    'GET /api/watch': () => watchBoardOf(archive, presentOf(context)),
    'GET /api/watch/calendar.ics': () => calendarOf(context),
    'GET /api/watch/pairing': () =>
      pairingOf(
        watchedAnimals(archive, presentOf(context)).map(({ specimen, followed }) => ({
          specimenId: specimen.id,
          maturity: followed.maturity,
          molts: followed.records.molts,
          lastMolt: followed.lastMolt,
          forecast: followed.records.forecast,
        })),
        todayOf(context),
      ),
    'GET /api/specimens/{specimenId}/observations': ({ path }) => {
      const { id } = unwrap(archive.specimens.get(path.specimenId));
      return [...archive.observations.ofSpecimen(id)];
    },
    // The check and what it allows are one transaction, so that nothing slips in between.
    'POST /api/specimens/{specimenId}/observations': ({ path, body }) =>
      unwrap(
        archive.transaction(() => {
          const specimen = unwrap(archive.specimens.get(path.specimenId));
          if (body.source.kind === 'photo') {
            const { id: photoId, subject } = unwrap(archive.photos.get(body.source.photoId));
            const isOfAnimal = subject.kind === 'animal' && subject.specimenId === specimen.id;
            if (!isOfAnimal) refuse({ code: 'photo-not-of-animal', photoId });
          }
          const observations = archive.observations.ofSpecimen(specimen.id);
          const molts = archive.molts.ofSpecimen(specimen.id);
          const checked = unwrap(checkObservation(body, { specimen, observations, molts, now: context.ambient.now() }));
          return archive.observations.append(specimen.id, checked);
        }),
      ),
    'DELETE /api/observations/{observationId}': ({ path }) => unwrap(archive.removals.remove('observation', path.observationId)),
  };
}

function calendarOf(context: ApiContext): BytesAnswer {
  const present = presentOf(context);
  const watched = watchedAnimals(context.archive, present);
  const all = context.archive.cabinet.entries();
  const names = new Map(all.map(({ specimen }) => [specimen.id, specimen.name ? `${specimen.code} ${specimen.name}` : specimen.code]));
  const due = calendarEntriesOf(
    watched.map(({ followed }) => followed),
    present.today,
  );
  const canceled = canceledEntriesOf(
    all.map(({ specimen, molts }) => ({ specimenId: specimen.id, molts })),
    due,
    present.today,
  );
  const recordedAt = [
    ...all.flatMap(({ specimen, molts }) => [specimen.createdAt, ...molts.map(({ createdAt }) => createdAt)]),
    ...context.archive.observations.list().map((observation) => observation.recordedAt),
  ];
  const lastRecordedAt = recordedAt.reduce<string | null>((last, at) => (last === null || at > last ? at : last), null);
  const nameOf = (id: string) => names.get(id) ?? '';
  const text = new Blob([writeCalendar([...due, ...canceled], { nameOf, now: present.now, lastRecordedAt })]);
  return {
    mediaType: 'text/calendar; charset=utf-8',
    contentHash: null,
    open: async () => ({ stream: text.stream(), byteLength: text.size }),
  };
}
