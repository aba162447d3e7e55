import type { Photo } from '../../../../domain/photo/photo.ts';
import { dayInWords } from '../../../../words/dates.ts';
import { VIEW_LABELS } from '../../../../words/labels.ts';

/** What tells one photo from another: file, view, day. */
export function photoWords({ originalName, subject, view, takenOn }: Pick<Photo, 'originalName' | 'subject' | 'view' | 'takenOn'>): string {
  const what = subject.kind === 'animal' ? 'the animal' : 'the skin';
  const seen = view === 'other' ? what : `${what}, ${VIEW_LABELS[view]}`;
  return [originalName, seen, takenOn === null ? 'day unknown' : dayInWords(takenOn)].join(', ');
}
