import { useState } from 'react';
import type { ReadForm } from './readForm.ts';

export interface OpenForm<Form, Draft, Basis> {
  readonly form: Form;
  /** By the name of the field; of the last attempt to save. */
  readonly errors: Readonly<Record<string, string>>;
  /** Something was written since the form was opened. */
  readonly changed: boolean;
  /** The record as the keeper saw it on opening: saving over a newer one is refused, however often it is tried. */
  readonly basedOn: Basis;
  put(part: Partial<Form>): void;
  /** The draft; null where it does not fit, with the errors then saying why. */
  draft(): Draft | null;
}

/** The state of a form over one record, or over none yet. */
export function useForm<Form extends object, Draft, Basis>(
  record: Basis,
  open: (record: Basis) => Form,
  read: (form: Form) => ReadForm<Draft>,
): OpenForm<Form, Draft, Basis> {
  const [basedOn] = useState(() => record);
  const [form, setForm] = useState(() => open(record));
  const [asOpened] = useState(form);
  const [errors, setErrors] = useState<Readonly<Record<string, string>>>({});
  return {
    form,
    errors,
    changed: form !== asOpened,
    basedOn,
    put: (part) => setForm((before) => ({ ...before, ...part })),
    draft() {
      const answer = read(form);
      setErrors(answer.errors ?? {});
      return answer.draft;
    },
  };
}
