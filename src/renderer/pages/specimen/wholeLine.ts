import type { SpecimenPage } from '../../../api/contract/specimens.ts';
import type { LifeEvent } from '../../../domain/care/lifeLine.ts';
import { listed } from '../../../words/counts.ts';
import { clockOf } from '../../../words/dates.ts';
import { moltName } from '../../../words/instars.ts';
import { capitalized, LEVEL_LABELS, OUTCOME_LABELS, SEX_LABELS } from '../../../words/labels.ts';
import { SEEN_LABELS } from '../../../words/observations.ts';

/** One line of everything on record. */
export interface WholeLineEntry {
  readonly key: string;
  readonly on: string;
  /** Time of day on the clock it was read on. */
  readonly clock: string | null;
  readonly words: string;
  readonly note: string | null;
  readonly photoId: string | null;
  /** Where more is told. */
  readonly to: string | null;
}

/** The latest first. */
export function wholeLineOf(page: SpecimenPage): WholeLineEntry[] {
  return page.lifeLine.map((event) => ({ ...BLANK, key: `${event.kind} ${event.id}`, on: event.on, ...told(event, page) })).toReversed();
}

type Told = Partial<WholeLineEntry> & Pick<WholeLineEntry, 'words'>;

const BLANK = { clock: null, note: null, photoId: null, to: null } as const;

function told({ kind, id }: LifeEvent, page: SpecimenPage): Told {
  switch (kind) {
    case 'hatched':
      return { words: 'Hatched' };
    case 'acquired':
      return { words: 'Acquired' };
    case 'observation':
      return observationTold(id, page);
    case 'molt':
      return moltTold(id, page);
    case 'skin':
      return skinTold(id, page);
    case 'photo':
      return { words: 'Photo of the animal', photoId: id };
    case 'reading':
      return { words: 'Skin measured' };
    case 'determination':
      return determinationTold(id, page);
  }
}

function observationTold(id: string, { observations }: SpecimenPage): Told {
  const seen = observations.find((one) => one.id === id);
  if (!seen) return { words: 'Seen' };
  const span = seen.span ? ` ${seen.span.spanMm} ± ${seen.span.plusMinusMm} mm` : '';
  return { words: capitalized(SEEN_LABELS[seen.kind]) + span, note: seen.note || null, clock: clockOf(seen.moment) };
}

function moltTold(id: string, { molts }: SpecimenPage): Told {
  const index = molts.findIndex(({ molt }) => molt.id === id);
  const entry = molts[index];
  if (!entry) return { words: 'Molt' };
  const outcomes = listed(entry.molt.outcomes.map((outcome) => OUTCOME_LABELS[outcome]));
  const notes = [outcomes && capitalized(outcomes), entry.molt.notes].filter((part) => part !== '').join('. ');
  return { words: `Molt: ${moltName(entry.instar, index + 1)}`, note: notes || null };
}

function skinTold(id: string, { molts }: SpecimenPage): Told {
  const entry = molts.find(({ exuvia }) => exuvia?.id === id);
  const photoId = entry?.photos[0]?.id ?? null;
  return { words: entry?.exuvia?.recovered ? 'Skin recovered' : 'Skin not recovered', photoId, note: entry?.exuvia?.storagePlace ?? null };
}

function determinationTold(id: string, { molts }: SpecimenPage): Told {
  const found = molts.flatMap(({ determinations }) => determinations).find((one) => one.id === id);
  if (!found) return { words: 'Skin examined' };
  const level = found.level === null ? '' : `, ${LEVEL_LABELS[found.level]}`;
  const withdrawn = found.withdrawn === null ? null : 'Withdrawn';
  return { words: `Examined: ${SEX_LABELS[found.sex]}${level}`, note: withdrawn, to: `/examination/${found.exuviaId}` };
}
