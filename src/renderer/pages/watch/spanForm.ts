import { SpanTaken } from '../../../domain/care/observation.ts';
import type { SpanNow } from '../../../domain/care/spanNow.ts';
import { decimalFrom } from '../../forms/reading.ts';

export interface SpanTyped {
  readonly spanMm: string;
  readonly plusMinusMm: string;
}

export type SpanRead =
  | { readonly kind: 'refused'; readonly field: keyof SpanTyped; readonly words: string }
  /** `doubt`: what makes it look like a slip; it is noted when somebody insists. */
  | { readonly kind: 'read'; readonly span: SpanTaken; readonly doubt: string | null };

/** How far beyond what is known of the animal a span may lie before somebody is asked; own judgment. */
const ASKED_BEYOND = 1.5;

/** A span of the living animal as it was typed. No length is exact, so none is taken without how far it may be off. */
export function readSpan({ spanMm, plusMinusMm }: SpanTyped, known: SpanNow | null): SpanRead {
  const [span, half] = [decimalFrom(spanMm), decimalFrom(plusMinusMm)];
  if (!SpanTaken.shape.spanMm.safeParse(span).success)
    return { kind: 'refused', field: 'spanMm', words: 'A length in millimeters, above 0 and up to 500.' };
  if (!(half > 0))
    return {
      kind: 'refused',
      field: 'plusMinusMm',
      words: 'No length is exact: give how far it may be off, above 0 mm. A tenth of the span is soon reached on a living animal.',
    };
  if (half > span)
    return { kind: 'refused', field: 'plusMinusMm', words: 'More than the span itself: check both numbers, or note no span at all.' };
  const taken = SpanTaken.safeParse({ spanMm: span, plusMinusMm: half });
  if (!taken.success) return { kind: 'refused', field: 'plusMinusMm', words: 'A length in millimeters, above 0 and up to 250.' };
  return { kind: 'read', span: taken.data, doubt: doubtOf(taken.data, known) };
}

function doubtOf({ spanMm, plusMinusMm }: SpanTaken, known: SpanNow | null): string | null {
  if (known === null) return null;
  const { lowMm, highMm, from } = known;
  if (spanMm + plusMinusMm >= lowMm / ASKED_BEYOND && spanMm - plusMinusMm <= highMm * ASKED_BEYOND) return null;
  const by = from.kind === 'animal' ? 'By what was measured on it before' : 'By its last measured skin';
  return `${by}, its span is some ${lowMm.toFixed(0)} to ${highMm.toFixed(0)} mm now. Check the number, its unit, and that it is this animal. If it is right, note it all the same.`;
}
