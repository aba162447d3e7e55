import { type Failure, Refusal } from '../../domain/failure.ts';
import { wordsFor } from '../../words/failures.ts';

/** The fields that a refusal of the archive can speak of; it stands at the first one that the form has. */
function fieldsOf(failure: Failure): readonly string[] {
  switch (failure.code) {
    case 'code-taken':
      return ['code'];
    case 'hatched-after-acquired':
      return ['hatchedOn', 'acquiredOn'];
    case 'date-in-future':
    case 'date-too-early':
      return [failure.field];
    case 'date-before-hatching':
      return [failure.field, 'hatchedOn'];
    case 'dates-reversed':
      return ['happenedTo'];
    case 'molts-out-of-order':
    case 'molts-too-close':
      return ['happenedFrom'];
    case 'instars-out-of-order':
    case 'instar-too-low':
      return ['instarShed'];
    case 'acquired-instar-contradicted':
      return ['acquiredInstar', 'instarShed'];
    case 'outcomes-contradict':
      return ['outcomes'];
    default:
      return [];
  }
}

/** Where what the archive refused belongs to one of these fields: its words, to stand there; else nothing. */
export function refusedFields(error: unknown, fields: readonly string[]): Readonly<Record<string, string>> {
  if (!(error instanceof Refusal)) return {};
  const field = fieldsOf(error.failure).find((one) => fields.includes(one));
  if (field === undefined) return {};
  const { happened, advice } = wordsFor(error.failure);
  return { [field]: `${happened} ${advice}` };
}
