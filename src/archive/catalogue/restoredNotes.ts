import { contradictionWith } from '../../domain/care/appending.ts';
import { fail, type Result, succeed } from '../../domain/result.ts';
import type { RecordContext } from './context.ts';
import type { Gathered } from './gathering.ts';
import { moltsIn } from './molts.ts';
import { observationsIn } from './observations.ts';

/**
 * Whether notes that were put back fit among what was noted of their animal meanwhile. Those that come back together with their
 * animal stood beside each other before.
 *
 * Failures: those of `contradictionWith`.
 */
export function checkRestoredNotes(context: RecordContext, { rows }: Gathered): Result<null> {
  const restored = new Set(rows.specimen.map(({ id }) => id));
  for (const { id, specimen_id } of rows.observation) {
    if (restored.has(specimen_id)) continue;
    const observations = observationsIn(context).ofSpecimen(String(specimen_id));
    const note = observations.find((one) => one.id === id);
    const failure = note && contradictionWith(note, { observations, molts: moltsIn(context).ofSpecimen(String(specimen_id)) });
    if (failure) return fail(failure);
  }
  return succeed(null);
}
