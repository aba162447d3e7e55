import { type Exuvia, ExuviaDraft } from '../../../domain/molting/exuvia.ts';
import { fieldErrors } from '../../forms/fieldErrors.ts';
import type { ReadForm } from '../../forms/readForm.ts';
import { textOrNull } from '../../forms/reading.ts';

/** The fields of a skin as they stand in the form. */
export interface SkinForm {
  recovered: boolean;
  grade: NonNullable<ExuviaDraft['grade']> | '';
  completeness: NonNullable<ExuviaDraft['completeness']> | '';
  storagePlace: string;
  notes: string;
}

export function skinFormOf(exuvia: Exuvia | null): SkinForm {
  return {
    recovered: exuvia?.recovered ?? true,
    grade: exuvia?.grade ?? '',
    completeness: exuvia?.completeness ?? '',
    storagePlace: exuvia?.storagePlace ?? '',
    notes: exuvia?.notes ?? '',
  };
}

/** A skin that was not recovered has no grade, no completeness and no place. */
export function readSkinForm(form: SkinForm): ReadForm<ExuviaDraft> {
  const parsed = ExuviaDraft.safeParse({
    recovered: form.recovered,
    grade: form.recovered && form.grade !== '' ? form.grade : null,
    completeness: form.recovered && form.completeness !== '' ? form.completeness : null,
    storagePlace: form.recovered ? textOrNull(form.storagePlace) : null,
    notes: form.notes,
  });
  return parsed.success ? { draft: parsed.data, errors: null } : { draft: null, errors: fieldErrors(parsed.error.issues) };
}
