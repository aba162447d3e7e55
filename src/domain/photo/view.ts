import { fail, type Result, succeed } from '../result.ts';
import { type PhotoDraft, PhotoView } from './photo.ts';

/** The views a photo of this subject can have: the inner side of an abdomen shows on a shed skin alone. */
export function viewsOf(subject: PhotoDraft['subject']['kind']): readonly PhotoView[] {
  return subject === 'animal' ? PhotoView.options.filter((view) => view !== 'abdomen-inside') : PhotoView.options;
}

/** Failure: `view-not-of-animal`. */
export function checkView<Draft extends Pick<PhotoDraft, 'subject' | 'view'>>(draft: Draft): Result<Draft> {
  return viewsOf(draft.subject.kind).includes(draft.view) ? succeed(draft) : fail({ code: 'view-not-of-animal', view: draft.view });
}
