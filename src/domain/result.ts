import { type Failure, refuse } from './failure.ts';

/** What a function of the domain answers when it can fail in a way a person must be told about. */
export type Result<Value> = { readonly ok: true; readonly value: Value } | { readonly ok: false; readonly failure: Failure };

export function succeed<Value>(value: Value): Result<Value> {
  return { ok: true, value };
}

export function fail(failure: Failure): Result<never> {
  return { ok: false, failure };
}

/** The value, where a promise or a transaction must unwind otherwise. */
export function unwrap<Value>(result: Result<Value>): Value {
  return result.ok ? result.value : refuse(result.failure);
}

/** Ends an exhaustive switch: a new member of the union stops compiling here. */
export function assertNever(value: never): never {
  throw new TypeError(`Expected every case to be handled but received ${JSON.stringify(value)}`);
}
