import { type Specimen, SpecimenDraft } from '../../../domain/specimen/specimen.ts';
import { fieldErrors } from '../../forms/fieldErrors.ts';
import type { ReadForm } from '../../forms/readForm.ts';
import { textOrNull, wholeOrNull } from '../../forms/reading.ts';

/** The fields as they stand in the form, numbers and days as text, '' where nothing is said. */
export interface SpecimenForm {
  code: string;
  taxon: string;
  name: string;
  origin: string;
  eggSacGroup: string;
  acquiredOn: string;
  acquiredInstar: string;
  hatchedOn: string;
  habit: NonNullable<SpecimenDraft['habit']> | '';
  status: SpecimenDraft['status'];
  notes: string;
}

export function formOf(specimen: Specimen | null): SpecimenForm {
  return {
    code: specimen?.code ?? '',
    taxon: specimen?.taxon ?? '',
    name: specimen?.name ?? '',
    origin: specimen?.origin ?? '',
    eggSacGroup: specimen?.eggSacGroup ?? '',
    acquiredOn: specimen?.acquiredOn ?? '',
    acquiredInstar: specimen?.acquiredInstar?.toString() ?? '',
    hatchedOn: specimen?.hatchedOn ?? '',
    habit: specimen?.habit ?? '',
    status: specimen?.status ?? 'living',
    notes: specimen?.notes ?? '',
  };
}

/** The draft, if the form can be one; else what is wrong, field by field. */
export function readSpecimenForm(form: SpecimenForm): ReadForm<SpecimenDraft> {
  const parsed = SpecimenDraft.safeParse({
    ...form,
    name: textOrNull(form.name),
    origin: textOrNull(form.origin),
    eggSacGroup: textOrNull(form.eggSacGroup),
    acquiredOn: textOrNull(form.acquiredOn),
    acquiredInstar: wholeOrNull(form.acquiredInstar),
    hatchedOn: textOrNull(form.hatchedOn),
    habit: form.habit === '' ? null : form.habit,
  });
  return parsed.success ? { draft: parsed.data, errors: null } : { draft: null, errors: fieldErrors(parsed.error.issues) };
}
