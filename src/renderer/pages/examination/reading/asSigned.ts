import { type Checklist, StripAnswer } from '../../../../domain/sexing/determination.ts';

/**
 * What a checklist says once it is weighed or signed. While a reading is under way everything answered is kept as it was, so that a
 * slip costs nothing; but on a strip of grade D whatever was answered is "cannot tell", and a form belongs to receptacles that were seen.
 */
export function asSigned(checklist: Checklist): Checklist {
  const read = checklist.grade === 'D' ? { ...checklist, ...withoutStrip(checklist) } : checklist;
  return read.receptaclesSeen === 'yes' ? read : { ...read, receptacleForm: null };
}

function withoutStrip(checklist: Checklist): Partial<Checklist> {
  return Object.fromEntries(StripAnswer.options.map((name) => [name, checklist[name] === 'not-looked' ? 'not-looked' : 'cannot-tell']));
}
