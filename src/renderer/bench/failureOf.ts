import { type Failure, Refusal } from '../../domain/failure.ts';

/** What a promise that nobody awaits ended in. Anything but a refusal is a defect of ours; what was thrown is its reference. */
export function failureOf(error: unknown): Failure {
  return error instanceof Refusal ? error.failure : { code: 'defect', reference: String(error) };
}
