import { MoltStage, type ObservationDraft } from '../../../domain/care/observation.ts';
import type { Photo } from '../../../domain/photo/photo.ts';
import { momentFromField, momentOfCamera } from './wallClock.ts';

type StagePhoto = Pick<Photo, 'id' | 'originalName' | 'facts'>;

/** Of each kind: with a time that the camera wrote, and without one. */
const MOST_SHOWN = 24;

/**
 * The photos of an animal whose stage can be told, the latest first. Those without a time come before the others, for they are
 * what was just attached as often as not, and somebody has to say when they were taken.
 */
export function stagePhotos<P extends StagePhoto>(animalPhotos: readonly P[]): P[] {
  const latest = animalPhotos.toReversed();
  const kept = (timed: boolean) => latest.filter(({ facts }) => (facts.takenAt !== null) === timed).slice(0, MOST_SHOWN);
  return [...kept(false), ...kept(true)];
}

/** What was said of a photo: the stage it shows, and its time where the camera wrote none, as a field of date and time has it. */
export interface StageSaid {
  readonly stage: MoltStage | '';
  readonly time: string;
}

export const NOTHING_SAID: StageSaid = { stage: '', time: '' };

export interface PhotoDraft {
  readonly photo: string;
  readonly stage: MoltStage;
  readonly body: ObservationDraft;
}

/** What is to be noted, in the order of time, and the photos that have a stage and still lack a time. */
export function stageDrafts(
  photos: readonly StagePhoto[],
  said: Readonly<Record<string, StageSaid>>,
  observer: string,
): { readonly drafts: readonly PhotoDraft[]; readonly untimed: readonly string[] } {
  const drafts: PhotoDraft[] = [];
  const untimed: string[] = [];
  for (const { id, originalName, facts } of photos) {
    const { stage, time } = said[id] ?? NOTHING_SAID;
    if (stage === '') continue;
    const byCamera = facts.takenAt && momentOfCamera(facts.takenAt);
    const byHand = byCamera ? null : momentFromField(time);
    if (byCamera) {
      const source = { kind: 'photo', photoId: id, offsetAssumed: byCamera.offsetAssumed } as const;
      drafts.push({ photo: id, stage, body: { kind: stage, moment: byCamera.moment, observer, note: '', source, span: null } });
    } else if (byHand) {
      // The time is a keeper's word, not the photo's.
      const note = `Seen in ${originalName}`;
      drafts.push({ photo: id, stage, body: { kind: stage, moment: byHand, observer, note, source: { kind: 'hand' }, span: null } });
    } else untimed.push(id);
  }
  const inOrder = drafts.toSorted((a, b) => Date.parse(a.body.moment.at) - Date.parse(b.body.moment.at) || rank(a.stage) - rank(b.stage));
  return { drafts: inOrder, untimed };
}

/** Two stages in one picture, or in one second, come in their order. */
function rank(stage: MoltStage): number {
  return MoltStage.options.indexOf(stage);
}
