import type { MoltEntry } from '../../../api/contract/specimens.ts';
import type { CalendarDay } from '../../../domain/dates.ts';
import type { ExuviaDraft } from '../../../domain/molting/exuvia.ts';
import type { MoltDraft } from '../../../domain/molting/molt.ts';
import type { Photo, PhotoDraft, PhotoSubject, PhotoView } from '../../../domain/photo/photo.ts';

export type Owner =
  | { readonly kind: 'animal'; readonly specimenId: string }
  | { readonly kind: 'skin'; readonly entry: MoltEntry }
  | { readonly kind: 'skin-of-new-molt'; readonly specimenId: string; readonly molt: MoltDraft };

export interface Assignment {
  readonly photos: readonly Photo[];
  readonly owner: Owner;
  readonly view: PhotoView;
  /** For those photos whose camera wrote no date. */
  readonly takenOnIfUnknown: CalendarDay | null;
}

/** Told step by step, so that an assignment that fails halfway is gone on with and not begun anew. */
export interface AssignNews {
  /** The new molt is on record; what follows may still fail. */
  onMolt(moltId: string): void;
  /** The photos that were given away, as they are now; not all of them if something failed. Not called for none. */
  onPlaced(photos: readonly Photo[]): void;
}

/** The archive, as far as assigning needs it. */
export interface AssignPorts {
  addMolt(specimenId: string, molt: MoltDraft): Promise<{ readonly id: string }>;
  addSkin(moltId: string, skin: ExuviaDraft): Promise<{ readonly id: string }>;
  changePhoto(photo: Photo, draft: PhotoDraft): Promise<Photo>;
}

const NEW_SKIN: ExuviaDraft = { recovered: true, grade: null, completeness: null, storagePlace: null, notes: '' };

/** Gives photos to a skin or an animal, making molt and skin where they are new. Stops at the first step that fails. */
export async function assign({ photos, owner, view, takenOnIfUnknown }: Assignment, ports: AssignPorts, news: AssignNews): Promise<void> {
  const subject = await subjectOf(owner, ports, news);
  const placed: Photo[] = [];
  try {
    for (const photo of photos) {
      placed.push(await ports.changePhoto(photo, { subject, view, takenOn: photo.takenOn ?? takenOnIfUnknown, notes: photo.notes }));
    }
  } finally {
    if (placed.length > 0) news.onPlaced(placed);
  }
}

async function subjectOf(owner: Owner, ports: AssignPorts, news: AssignNews): Promise<PhotoSubject> {
  if (owner.kind === 'animal') return { kind: 'animal', specimenId: owner.specimenId };
  if (owner.kind === 'skin' && owner.entry.exuvia) return { kind: 'skin', exuviaId: owner.entry.exuvia.id };
  const moltId = owner.kind === 'skin' ? owner.entry.molt.id : await newMolt(owner, ports, news);
  return { kind: 'skin', exuviaId: (await ports.addSkin(moltId, NEW_SKIN)).id };
}

async function newMolt(
  { specimenId, molt }: Extract<Owner, { kind: 'skin-of-new-molt' }>,
  ports: AssignPorts,
  { onMolt }: AssignNews,
): Promise<string> {
  const { id } = await ports.addMolt(specimenId, molt);
  onMolt(id);
  return id;
}
