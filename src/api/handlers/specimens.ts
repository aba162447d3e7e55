import { checkMolt } from '../../domain/molting/sequence.ts';
import { type Result, unwrap } from '../../domain/result.ts';
import { checkSpecimenDates } from '../../domain/specimen/dates.ts';
import { type ApiContext, todayOf } from '../context.ts';
import type { specimenEndpoints } from '../contract/specimens.ts';
import type { HandlersFor } from '../route.ts';
import { specimenPageOf } from '../views/specimenPage.ts';
import { summaryOf } from '../views/summary.ts';

export function specimenHandlers(context: ApiContext): HandlersFor<keyof typeof specimenEndpoints> {
  const { archive } = context;
  // The check and what it allows are one transaction, so that nothing slips in between.
  const inOne = <Value>(work: () => Result<Value>): Value => unwrap(archive.transaction(work));
  return {
    'GET /api/specimens': () => archive.cabinet.entries().map((entry) => summaryOf(archive, entry)),
    'POST /api/specimens': ({ body }) => unwrap(archive.specimens.create(unwrap(checkSpecimenDates(body, todayOf(context))))),
    'GET /api/specimens/{specimenId}': ({ path }) => specimenPageOf(archive, path.specimenId),
    'PUT /api/specimens/{specimenId}': ({ path, body, version }) =>
      unwrap(archive.specimens.update(path.specimenId, version, unwrap(checkSpecimenDates(body, todayOf(context))))),
    'DELETE /api/specimens/{specimenId}': ({ path }) => unwrap(archive.removals.remove('specimen', path.specimenId)),

    'POST /api/specimens/{specimenId}/molts': ({ path, body }) =>
      inOne(() => {
        const { id } = unwrap(archive.specimens.get(path.specimenId));
        const sequence = { molts: archive.molts.ofSpecimen(id), replacing: null, today: todayOf(context) };
        return archive.molts.create(id, unwrap(checkMolt(body, sequence)));
      }),
    'PUT /api/molts/{moltId}': ({ path, body, version }) =>
      inOne(() => {
        const { id, specimenId } = unwrap(archive.molts.get(path.moltId));
        const sequence = { molts: archive.molts.ofSpecimen(specimenId), replacing: id, today: todayOf(context) };
        return archive.molts.update(id, version, unwrap(checkMolt(body, sequence)));
      }),
    'DELETE /api/molts/{moltId}': ({ path }) => unwrap(archive.removals.remove('molt', path.moltId)),

    'POST /api/molts/{moltId}/exuvia': ({ path, body }) => unwrap(archive.exuviae.create(path.moltId, body)),
    'PUT /api/exuviae/{exuviaId}': ({ path, body, version }) => unwrap(archive.exuviae.update(path.exuviaId, version, body)),
    'DELETE /api/exuviae/{exuviaId}': ({ path }) => unwrap(archive.removals.remove('exuvia', path.exuviaId)),
  };
}
