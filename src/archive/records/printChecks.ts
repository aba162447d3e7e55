import type { Result } from '../../domain/result.ts';
import type { PrintCheck, PrintCheckDraft } from '../../domain/scaleCard/printCheck.ts';

/** How true printers print. Never changed: a printer is measured again instead. Calibrations keep their copy of one that is removed. */
export interface PrintChecks {
  add(draft: PrintCheckDraft): Result<PrintCheck>;
  /** The latest day first, of one day the one added last. */
  list(): readonly PrintCheck[];
}
