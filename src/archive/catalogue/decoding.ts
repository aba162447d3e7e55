import { fail, type Result, succeed } from '../../domain/result.ts';
import type { Row } from './catalogue.ts';

/** Records that could not be read, by "kind id". One bad record must not hide the others, nor go unnoticed. */
export type DamageLog = Map<string, string>;

/** As much of a record's schema as reading needs. */
export interface Schema<Value> {
  safeParse(value: unknown):
    | { readonly success: true; readonly data: Value }
    | {
        readonly success: false;
        readonly error: { readonly issues: readonly { readonly path: readonly PropertyKey[]; readonly message: string }[] };
      };
}

/** Turns rows into records and checks them against the record's own schema on the way out. */
export interface Decoder<Value> {
  /** Fails with `not-found` for no row and with `archive-damaged` for one that can't be read. */
  one(row: Row | undefined, id: string): Result<Value>;
  /** Leaves out what can't be read and notes it. */
  many(rows: readonly Row[]): readonly Value[];
}

export function decoder<Value>(kind: string, schema: Schema<Value>, shape: (row: Row) => unknown, damage: DamageLog): Decoder<Value> {
  function decode(row: Row): Result<Value> {
    const name = `${kind} ${String(row['id'])}`;
    const read = attempt(schema, shape, row);
    if (read.ok) {
      damage.delete(name);
      return succeed(read.value);
    }
    damage.set(name, read.problem);
    return fail({ code: 'archive-damaged', detail: `${name}: ${read.problem}` });
  }
  return {
    one: (row, id) => (row ? decode(row) : fail({ code: 'not-found', what: kind, id })),
    many: (rows) =>
      rows.flatMap((row) => {
        const record = decode(row);
        return record.ok ? [record.value] : [];
      }),
  };
}

type Attempt<Value> = { readonly ok: true; readonly value: Value } | { readonly ok: false; readonly problem: string };

function attempt<Value>(schema: Schema<Value>, shape: (row: Row) => unknown, row: Row): Attempt<Value> {
  let shaped: unknown;
  try {
    shaped = shape(row);
  } catch (error) {
    if (error instanceof SyntaxError) return { ok: false, problem: 'a document in it is not JSON' };
    throw error;
  }
  const parsed = schema.safeParse(shaped);
  if (parsed.success) return { ok: true, value: parsed.data };
  const issue = parsed.error.issues[0];
  return { ok: false, problem: issue ? `${issue.path.map(String).join('.')}: ${issue.message}` : 'it does not fit its schema' };
}

/** A JSON column. */
export function parseDocument(value: unknown): unknown {
  if (typeof value !== 'string') throw new SyntaxError('Expected JSON text');
  return JSON.parse(value);
}
