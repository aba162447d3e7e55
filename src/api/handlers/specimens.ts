import { checkApart } from '../../domain/care/apart.ts';
import { refuse } from '../../domain/failure.ts';
import { checkAcquisition } from '../../domain/molting/acquisition.ts';
import type { MoltDraft } from '../../domain/molting/molt.ts';
import { checkRecovery } from '../../domain/molting/outcomes.ts';
import { checkMolt } from '../../domain/molting/sequence.ts';
import { type Result, succeed, unwrap } from '../../domain/result.ts';
import { checkHatching, checkSpecimenDates } from '../../domain/specimen/dates.ts';
import type { Specimen } from '../../domain/specimen/specimen.ts';
import { type ApiContext, todayOf } from '../context.ts';
import type { specimenEndpoints } from '../contract/specimens.ts';
import type { HandlersFor } from '../route.ts';
import { dueIn, intervalsOf, keepForecastAfter } from '../views/forecasts.ts';
import { pointingIn } from '../views/pointing.ts';
import { specimenPageOf } from '../views/specimenPage.ts';
import { summaryOf } from '../views/summary.ts';

export function specimenHandlers(context: ApiContext): HandlersFor<keyof typeof specimenEndpoints> {
  const { archive } = context;
  // The check and what it allows are one transaction, so that nothing slips in between.
  const inOne = <Value>(work: () => Result<Value>): Value => unwrap(archive.transaction(work));
  /** Fits among the other molts of its animal, on record and watched, the day it hatched, and the instar in which it was acquired. */
  const checkedMolt = (draft: MoltDraft, specimen: Specimen, replacing: string | null): MoltDraft => {
    const molts = archive.molts.ofSpecimen(specimen.id);
    const fitting = unwrap(checkMolt(draft, { molts, replacing, today: todayOf(context) }));
    unwrap(checkAcquisition(specimen, [...molts.filter(({ id }) => id !== replacing), fitting]));
    unwrap(checkHatching(specimen.hatchedOn, [fitting]));
    const before = molts.find(({ id }) => id === replacing);
    const movesDays = before?.happenedFrom !== fitting.happenedFrom || before.happenedTo !== fitting.happenedTo;
    // What was on record before does not keep anything else of it from being changed.
    if (movesDays) unwrap(checkApart(fitting, { molts, observations: archive.observations.ofSpecimen(specimen.id), replacing }));
    return fitting;
  };
  return {
    'GET /api/specimens': () => {
      const pointing = pointingIn(archive);
      const entries = archive.cabinet.entries();
      const intervals = intervalsOf(entries, todayOf(context));
      return entries.map((entry) => summaryOf(entry, pointing, dueIn(intervals, entry)));
    },
    'POST /api/specimens': ({ body }) => unwrap(archive.specimens.create(unwrap(checkSpecimenDates(body, todayOf(context))))),
    'GET /api/specimens/{specimenId}': ({ path }) => specimenPageOf(archive, path.specimenId, todayOf(context)),
    'PUT /api/specimens/{specimenId}': ({ path, body, version }) =>
      inOne(() => {
        const draft = unwrap(checkSpecimenDates(body, todayOf(context)));
        const molts = archive.molts.ofSpecimen(path.specimenId);
        unwrap(checkAcquisition(draft, molts));
        // What was on record against the day before does not keep anything else from being changed.
        if (draft.hatchedOn !== unwrap(archive.specimens.get(path.specimenId)).hatchedOn) unwrap(checkHatching(draft.hatchedOn, molts));
        return archive.specimens.update(path.specimenId, version, draft);
      }),
    'DELETE /api/specimens/{specimenId}': ({ path }) => unwrap(archive.removals.remove('specimen', path.specimenId)),

    'POST /api/specimens/{specimenId}/molts': ({ path, body }) =>
      inOne(() => {
        const specimen = unwrap(archive.specimens.get(path.specimenId));
        const molt = unwrap(archive.molts.create(specimen.id, checkedMolt(body, specimen, null)));
        unwrap(keepForecastAfter(archive, specimen, molt, todayOf(context)));
        return succeed(molt);
      }),
    'PUT /api/molts/{moltId}': ({ path, body, version }) =>
      inOne(() => {
        const { id, specimenId } = unwrap(archive.molts.get(path.moltId));
        unwrap(checkRecovery(id, body.outcomes, archive.exuviae.ofMolt(id)?.recovered ?? false));
        return archive.molts.update(id, version, checkedMolt(body, unwrap(archive.specimens.get(specimenId)), id));
      }),
    'DELETE /api/molts/{moltId}': ({ path }) => unwrap(archive.removals.remove('molt', path.moltId)),

    'POST /api/molts/{moltId}/exuvia': ({ path, body }) =>
      inOne(() => {
        const { id, outcomes } = unwrap(archive.molts.get(path.moltId));
        unwrap(checkRecovery(id, outcomes, body.recovered));
        return archive.exuviae.create(id, body);
      }),
    'PUT /api/exuviae/{exuviaId}': ({ path, body, version }) =>
      inOne(() => {
        const { id, moltId } = unwrap(archive.exuviae.get(path.exuviaId));
        unwrap(checkRecovery(moltId, unwrap(archive.molts.get(moltId)).outcomes, body.recovered));
        const photos = archive.photos.ofExuvia(id).length;
        if (!body.recovered && photos > 0) refuse({ code: 'skin-photographed', exuviaId: id, photos });
        return archive.exuviae.update(id, version, body);
      }),
    'DELETE /api/exuviae/{exuviaId}': ({ path }) => unwrap(archive.removals.remove('exuvia', path.exuviaId)),
  };
}
