import type { Archive } from '../../archive/archive.ts';
import { boardOf } from '../../domain/care/board.ts';
import { CAUTIOUS_FEEDING_TABLE } from '../../domain/care/feedingTable.ts';
import { type FollowedAnimal, follow, type Present } from '../../domain/care/followed.ts';
import type { Observation } from '../../domain/care/observation.ts';
import type { SexSign } from '../../domain/sexing/determination.ts';
import { signOf } from '../../domain/sexing/sign.ts';
import { isKept } from '../../domain/specimen/counts.ts';
import type { Specimen } from '../../domain/specimen/specimen.ts';
import { type ApiContext, todayOf } from '../context.ts';
import type { WatchBoard } from '../contract/watch.ts';
import { animalRecordsOf } from './animalRecords.ts';
import { expectedIn, intervalsOf } from './forecasts.ts';

/** A kept animal with where it stands and what lists show of it. */
export interface Watched {
  readonly specimen: Specimen;
  readonly sex: SexSign;
  readonly coverPhotoId: string | null;
  readonly observations: readonly Observation[];
  readonly followed: FollowedAnimal;
}

const LATEST_SHOWN = 5;

export function presentOf(context: Pick<ApiContext, 'archive' | 'ambient'>): Present {
  const table = context.archive.preferences.get().feedingTable ?? CAUTIOUS_FEEDING_TABLE;
  return { now: context.ambient.now(), today: todayOf(context), table };
}

/** Every animal that is still kept, by code. */
export function watchedAnimals(archive: Archive, present: Present): Watched[] {
  const all = archive.cabinet.entries();
  const intervals = intervalsOf(all, present.today);
  const entries = all.filter(({ specimen }) => isKept(specimen.status));
  const records = animalRecordsOf(archive, {
    entries,
    cabinet: all,
    today: present.today,
    expectedMolt: (entry) => expectedIn(intervals, entry),
  });
  return entries.map(({ specimen, coverPhotoId, determinations, liveSigns }, index): Watched => {
    const known = records[index];
    if (!known) throw new RangeError(`Expected records of each of ${entries.length} animals but received ${records.length}`);
    return {
      specimen,
      sex: signOf(determinations, liveSigns),
      coverPhotoId,
      observations: known.observations,
      followed: follow(known, present),
    };
  });
}

/** What was written down last stands first, whenever it was seen: there a slip of a moment ago is looked for. */
function notedLast(observations: readonly Observation[]): Observation[] {
  return observations
    .toSorted((a, b) => Date.parse(a.recordedAt) - Date.parse(b.recordedAt))
    .slice(-LATEST_SHOWN)
    .toReversed();
}

export function watchBoardOf(archive: Archive, present: Present): WatchBoard {
  const watched = watchedAnimals(archive, present);
  return {
    at: present.now,
    today: present.today,
    table: present.table,
    items: boardOf(
      watched.map(({ followed }) => followed),
      present.today,
    ),
    animals: watched.map(({ specimen, sex, coverPhotoId, observations, followed }) => {
      const { id, code, name, taxon, habit, sample } = specimen;
      const { lastMolt, span, timer, hold, fangsUnseenSince, suspicion, maturity, records } = followed;
      return {
        specimen: { id, code, name, taxon, habit, sample },
        sex,
        coverPhotoId,
        lastMoltOn: lastMolt?.on ?? null,
        span,
        timer,
        hold,
        fangsUnseenSince,
        suspicion,
        forecast: records.forecast,
        matureMaleBy: maturity?.kind === 'mature-male' ? maturity.knownBy : null,
        latest: notedLast(observations),
      };
    }),
  };
}
