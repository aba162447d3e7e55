/** Gives the focus to the first field of a form that is told not to fit; to none where all fit. */
export function focusFirstFault(form: HTMLFormElement | null): void {
  form?.querySelector<HTMLElement>('[aria-invalid]')?.focus();
}
