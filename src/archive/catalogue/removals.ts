import { refuse } from '../../domain/failure.ts';
import type { PendingRemoval, RemovableKind, Removal, RemovalCounts, RemovedThing } from '../../domain/removal.ts';
import { fail, type Result, succeed } from '../../domain/result.ts';
import type { Removals } from '../records/removals.ts';
import type { RecordContext } from './context.ts';
import { countsOf, type Gathered, gather, gatherSamples, readGathered } from './gathering.ts';
import { readThing, thingOf } from './removedThing.ts';
import { checkRestoredNotes } from './restoredNotes.ts';
import { deleteGathered, insertGathered } from './restoring.ts';

export function removalsIn(context: RecordContext): Removals {
  const { catalogue, ambient } = context;

  function take(gathered: Gathered, thing: RemovedThing): Removal {
    const id = ambient.newId();
    catalogue.run('INSERT INTO removal (id, at, body) VALUES (:id, :at, :body)', {
      id,
      at: ambient.now(),
      body: JSON.stringify({ ...gathered, thing }),
    });
    deleteGathered(catalogue, gathered);
    return { ...countsOf(gathered), id };
  }

  return {
    preview: (kind: RemovableKind, id: string): Result<RemovalCounts> => {
      const gathered = gather(catalogue, kind, id);
      return gathered.ok ? succeed(countsOf(gathered.value)) : gathered;
    },
    remove: (kind, id) =>
      catalogue.atomically(() => {
        const gathered = gather(catalogue, kind, id);
        return gathered.ok ? succeed(take(gathered.value, thingOf(catalogue, kind, id))) : gathered;
      }),
    removeSamples: () => catalogue.atomically(() => succeed(take(gatherSamples(catalogue), { kind: 'sample-cabinet' }))),
    pending: () =>
      catalogue.all('SELECT id, at, body FROM removal ORDER BY ordinal DESC').flatMap(({ id, at, body }): PendingRemoval[] => {
        const gathered = readGathered(body);
        const thing = readThing(body);
        return gathered && thing ? [{ ...countsOf(gathered), id: String(id), at: String(at), thing }] : [];
      }),
    restore: (removalId) =>
      catalogue.atomically(() => {
        const row = catalogue.one('SELECT body FROM removal WHERE id = :removalId', { removalId });
        if (!row) return fail({ code: 'removal-gone', removalId });
        const gathered = readGathered(row['body']) ?? refuse({ code: 'removal-gone', removalId });
        const restored = insertGathered(catalogue, gathered, removalId);
        if (!restored.ok) return restored;
        const fitting = checkRestoredNotes(context, gathered);
        if (!fitting.ok) return fitting;
        catalogue.run('DELETE FROM removal WHERE id = :removalId', { removalId });
        return restored;
      }),
  };
}
