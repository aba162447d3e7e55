import type { MoltEntry } from '../../../api/contract/specimens.ts';
import type { CalendarDay } from '../../../domain/dates.ts';
import type { ExuviaDraft } from '../../../domain/molting/exuvia.ts';
import type { MoltDraft } from '../../../domain/molting/molt.ts';
import type { Photo, PhotoDraft, PhotoSubject, PhotoView } from '../../../domain/photo/photo.ts';
import type { RemovalCounts } from '../../../domain/removal.ts';

export type Owner =
  | { readonly kind: 'animal'; readonly specimenId: string }
  | { readonly kind: 'skin'; readonly entry: MoltEntry }
  | { readonly kind: 'skin-of-new-molt'; readonly specimenId: string; readonly molt: MoltDraft };

export interface Assignment {
  readonly photos: readonly Photo[];
  readonly owner: Owner;
  /** By the photo's id; photos given together need not show the same side. */
  readonly views: ReadonlyMap<string, PhotoView>;
  /** The molt that an earlier attempt, which failed halfway, put on record for these photos. */
  readonly moltMadeBefore: string | null;
  /** For those photos whose camera wrote no date. */
  readonly takenOnIfUnknown: CalendarDay | null;
}

/** What was made for photos that were given away: a molt with its skin, or the skin of a molt that was there. */
export interface Made {
  readonly kind: 'molt' | 'exuvia';
  readonly id: string;
}

/** Told step by step, so that an assignment that fails halfway is gone on with and not begun anew. */
export interface AssignNews {
  /** The new molt is on record; what follows may still fail. */
  onMolt(moltId: string): void;
  /** The photos that were given away, as they are now; not all of them if something failed. Not called for none. */
  onPlaced(photos: readonly Photo[], made: Made | null): void;
}

/** The archive, as far as assigning needs it. */
export interface AssignPorts {
  addMolt(specimenId: string, molt: MoltDraft): Promise<{ readonly id: string }>;
  addSkin(moltId: string, skin: ExuviaDraft): Promise<{ readonly id: string }>;
  changePhoto(photo: Photo, draft: PhotoDraft): Promise<Photo>;
  previewRemoval(made: Made): Promise<RemovalCounts>;
  remove(made: Made): Promise<unknown>;
}

const NEW_SKIN: ExuviaDraft = { recovered: true, grade: null, completeness: null, storagePlace: null, notes: '' };

/** Gives photos to a skin or an animal, making molt and skin where they are new. Stops at the first step that fails. */
export async function assign(assignment: Assignment, ports: AssignPorts, news: AssignNews): Promise<void> {
  const { photos, owner, views, moltMadeBefore, takenOnIfUnknown } = assignment;
  const { subject, made } = await subjectOf(owner, moltMadeBefore, ports, news);
  const placed: Photo[] = [];
  try {
    for (const photo of photos) {
      const view = views.get(photo.id) ?? photo.view;
      placed.push(await ports.changePhoto(photo, { subject, view, takenOn: photo.takenOn ?? takenOnIfUnknown, notes: photo.notes }));
    }
  } finally {
    if (placed.length > 0) news.onPlaced(placed, made);
  }
}

/**
 * Puts photos back among those that wait. What was made for them goes too, as one removal that can be undone; but stays where other
 * photos or a determination hang on it by now.
 */
export async function takeBack(photos: readonly Photo[], made: Made | null, ports: AssignPorts): Promise<void> {
  if (made && hangsNothingElse(await ports.previewRemoval(made), photos.length)) {
    await ports.remove(made);
    return;
  }
  for (const photo of photos) {
    const { view, takenOn, notes } = photo;
    await ports.changePhoto(photo, { subject: { kind: 'none' }, view, takenOn, notes });
  }
}

function hangsNothingElse({ photosUnassigned, determinations }: RemovalCounts, photos: number): boolean {
  return photosUnassigned === photos && determinations === 0;
}

interface Place {
  readonly subject: PhotoSubject;
  readonly made: Made | null;
}

async function subjectOf(owner: Owner, moltMadeBefore: string | null, ports: AssignPorts, news: AssignNews): Promise<Place> {
  if (owner.kind === 'animal') return { subject: { kind: 'animal', specimenId: owner.specimenId }, made: null };
  const moltId = owner.kind === 'skin' ? owner.entry.molt.id : await newMolt(owner, ports, news);
  const madeMolt: Made | null = owner.kind !== 'skin' || moltId === moltMadeBefore ? { kind: 'molt', id: moltId } : null;
  const there = owner.kind === 'skin' ? owner.entry.exuvia : null;
  if (there) return { subject: { kind: 'skin', exuviaId: there.id }, made: madeMolt };
  const { id: exuviaId } = await ports.addSkin(moltId, NEW_SKIN);
  return { subject: { kind: 'skin', exuviaId }, made: madeMolt ?? { kind: 'exuvia', id: exuviaId } };
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
