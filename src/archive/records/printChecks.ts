import type { Result } from '../../domain/result.ts';
import type { PrintCheck, PrintCheckDraft } from '../../domain/scaleCard/printCheck.ts';

/** How true printers print. Never changed: a printer is measured again instead. */
export interface PrintChecks {
  add(draft: PrintCheckDraft): Result<PrintCheck>;
  /** The latest day first, of one day the one added last. */
  list(): readonly PrintCheck[];
  /** For good. Fails with `not-found`. Calibrations keep their copy of it. */
  remove(printCheckId: string): Result<null>;
}
