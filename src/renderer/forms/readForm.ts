/** What a form gives: a draft that fits its schema, or what is wrong, field by field. */
export type ReadForm<Draft> =
  | { readonly draft: Draft; readonly errors: null }
  | { readonly draft: null; readonly errors: Readonly<Record<string, string>> };
