import { type Failure, Refusal } from '../../domain/failure.ts';
import { wordsFor } from '../../words/failures.ts';

/** The fields that a refusal of the archive can speak of, by the kind of failure. */
function fieldOf(failure: Failure): string | null {
  switch (failure.code) {
    case 'code-taken':
      return 'code';
    case 'hatched-after-acquired':
      return 'hatchedOn';
    case 'date-in-future':
      return failure.field;
    case 'dates-reversed':
      return 'happenedTo';
    case 'molts-out-of-order':
      return 'happenedFrom';
    case 'instars-out-of-order':
    case 'instar-too-low':
      return 'instarShed';
    case 'outcomes-contradict':
      return 'outcomes';
    default:
      return null;
  }
}

/** Where what the archive refused belongs to one of these fields: its words, to stand there; else nothing. */
export function refusedFields(error: unknown, fields: readonly string[]): Readonly<Record<string, string>> {
  if (!(error instanceof Refusal)) return {};
  const field = fieldOf(error.failure);
  if (field === null || !fields.includes(field)) return {};
  const { happened, advice } = wordsFor(error.failure);
  return { [field]: `${happened} ${advice}` };
}
