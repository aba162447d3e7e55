import { PrintCheck } from '../../domain/scaleCard/printCheck.ts';
import type { PrintChecks } from '../records/printChecks.ts';
import type { RecordContext } from './context.ts';
import { decoder } from './decoding.ts';

/** The columns are named as the first cards named their bars. */
const SELECT = `SELECT id, printer, across_mm AS barAMm, down_mm AS barBMm,
  reading_standard_uncertainty_mm AS readingStandardUncertaintyMm, checked_on AS checkedOn FROM print_check`;

export function printChecksIn({ catalogue, ambient, damage }: RecordContext): PrintChecks {
  const checks = decoder('print check', PrintCheck, (row) => row, damage);
  return {
    add: (draft) =>
      catalogue.atomically(() => {
        const id = ambient.newId();
        catalogue.run(
          `INSERT INTO print_check (id, printer, across_mm, down_mm, reading_standard_uncertainty_mm, checked_on)
           VALUES (:id, :printer, :barAMm, :barBMm, :readingStandardUncertaintyMm, :checkedOn)`,
          { id, ...draft },
        );
        return checks.one(catalogue.one(`${SELECT} WHERE id = :id`, { id }), id);
      }),
    list: () => checks.many(catalogue.all(`${SELECT} ORDER BY checked_on DESC, ordinal DESC`)),
  };
}
