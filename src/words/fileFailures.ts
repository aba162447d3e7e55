import type { Failure } from '../domain/failure.ts';
import type { FailureWords } from './failureWords.ts';

export type FileFailure = Extract<
  Failure,
  {
    code:
      | 'file-empty'
      | 'file-truncated'
      | 'file-not-an-image'
      | 'file-kind-not-kept'
      | 'picture-too-large'
      | 'file-unreadable'
      | 'file-not-arrived'
      | 'intake-gone'
      | 'disk-full'
      | 'archive-in-use'
      | 'archive-not-ours'
      | 'archive-from-newer-version'
      | 'archive-damaged'
      | 'archive-folder-unusable'
      | 'original-missing'
      | 'original-damaged';
  }
>;

/** What is wrong with a file that is brought in, or with the archive that keeps them. */
export function wordsForFile(failure: FileFailure): FailureWords {
  switch (failure.code) {
    case 'file-empty':
      return { happened: `${failure.file} is empty.`, advice: 'Copy it from the camera again.' };
    case 'file-truncated':
      return { happened: `${failure.file} breaks off before its end.`, advice: 'Copy it from the camera again.' };
    case 'file-not-an-image':
      return {
        happened: `${failure.file} is not a picture${failure.kind === null ? '' : ` (${failure.kind})`}.`,
        advice: 'JPEG, PNG, WebP, TIFF and HEIC files are kept.',
      };
    case 'file-kind-not-kept':
      return {
        happened: `${failure.file} is a picture of a kind that is not kept (${failure.kind}).`,
        advice: 'Save it as JPEG, PNG, WebP, TIFF or HEIC.',
      };
    case 'picture-too-large':
      return {
        happened: `${failure.file} has ${Math.round(failure.megapixels)} megapixels; up to ${failure.limitMegapixels} are kept.`,
        advice: 'Bring it in at a smaller size.',
      };
    case 'file-unreadable':
      return {
        happened: `${failure.file} could not be read (${failure.reason}).`,
        advice: 'Open it in another program; if that fails too, copy it from the camera again.',
      };
    case 'file-not-arrived':
      return { happened: `${failure.file} did not arrive whole.`, advice: 'Drop it here again.' };
    case 'intake-gone':
      return { happened: 'What was dropped here is no longer waiting.', advice: 'Drop the files again.' };
    case 'disk-full':
      return { happened: 'The disk is full. Nothing half-written was kept.', advice: 'Make room, then try again.' };
    case 'archive-in-use':
      return { happened: `The archive in ${failure.folder} is open in another Exuviary.`, advice: 'Close the other one first.' };
    case 'archive-not-ours':
      return {
        happened: `The folder ${failure.folder} holds something else, not an archive of Exuviary.`,
        advice: 'Choose another folder.',
      };
    case 'archive-from-newer-version':
      return {
        happened: `This archive was written by a newer Exuviary (format ${failure.found}; this one knows ${failure.known}).`,
        advice: 'Update Exuviary. The archive was not touched.',
      };
    case 'archive-damaged':
      return {
        happened: `The catalogue of the archive is damaged: ${failure.detail}.`,
        advice: 'Close Exuviary, copy the whole folder as it is, then go back to a backup.',
      };
    case 'archive-folder-unusable':
      return {
        happened: `The folder ${failure.folder} cannot be used: ${failure.reason}.`,
        advice: 'Choose a folder that you may write to, on a disk that is there.',
      };
    case 'original-missing':
      return {
        happened: 'The original of this photo is missing from the archive folder.',
        advice: 'Put it back from a backup, or bring the same file in again.',
      };
    case 'original-damaged':
      return {
        happened: 'The original of this photo is damaged: its bytes have changed.',
        advice: 'Put it back from a backup, or bring the same file in again.',
      };
  }
}
