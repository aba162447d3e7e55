import type { SkinGrade } from '../../../../domain/molting/exuvia.ts';

/** The grade that was read, where the record of the skin says another or none; null where there is nothing to write. */
export function gradingOf(read: SkinGrade | null, onRecord: SkinGrade | null): { read: SkinGrade; onRecord: SkinGrade | null } | null {
  return read === null || read === onRecord ? null : { read, onRecord };
}
