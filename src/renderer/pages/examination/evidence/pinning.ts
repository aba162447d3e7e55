import type { EvidencePin, PinnedQuestion, UnfinishedDetermination } from '../../../../domain/sexing/determination.ts';

/** The photos of a reading and what they are pinned to. */
export type Evidence = Pick<UnfinishedDetermination, 'evidencePhotoIds' | 'pins'>;

export function pinnedTo(question: PinnedQuestion, { pins }: Evidence): EvidencePin[] {
  return pins.filter((pin) => pin.question === question);
}

/** One pin for each question and photo; what is pinned is evidence. */
export function withPin(pin: EvidencePin, { evidencePhotoIds, pins }: Evidence): Evidence {
  const others = pins.filter(({ question, photoId }) => question !== pin.question || photoId !== pin.photoId);
  return {
    evidencePhotoIds: evidencePhotoIds.includes(pin.photoId) ? evidencePhotoIds : [...evidencePhotoIds, pin.photoId],
    pins: [...others, pin],
  };
}

/** The photo stays evidence of the reading as a whole. */
export function withoutPin(question: PinnedQuestion, photoId: string, { evidencePhotoIds, pins }: Evidence): Evidence {
  return { evidencePhotoIds, pins: pins.filter((pin) => pin.question !== question || pin.photoId !== photoId) };
}

/** A photo that is no evidence is pinned to nothing. */
export function choosing(photoId: string, chosen: boolean, { evidencePhotoIds, pins }: Evidence): Evidence {
  if (chosen) return { evidencePhotoIds: [...evidencePhotoIds.filter((id) => id !== photoId), photoId], pins };
  return { evidencePhotoIds: evidencePhotoIds.filter((id) => id !== photoId), pins: pins.filter((pin) => pin.photoId !== photoId) };
}

/** Only what lies on one of these photos. */
export function keeping(photoIds: readonly string[], { evidencePhotoIds, pins }: Evidence): Evidence {
  return {
    evidencePhotoIds: evidencePhotoIds.filter((id) => photoIds.includes(id)),
    pins: pins.filter(({ photoId }) => photoIds.includes(photoId)),
  };
}
