import type { SpecimenPage } from '../../../api/contract/specimens.ts';
import type { LifeEvent } from '../../../domain/care/lifeLine.ts';
import { ultimateMoltOf } from '../../../domain/sexing/live/liveSign.ts';
import { correctedIds } from '../../../domain/sexing/standing.ts';
import { listed } from '../../../words/counts.ts';
import { clockOf, dayInWords, momentInWords } from '../../../words/dates.ts';
import { estimateAsText } from '../../../words/estimates.ts';
import { instarInWords, moltName, recordedInWords } from '../../../words/instars.ts';
import { capitalized, LEVEL_LABELS, OUTCOME_LABELS, SEX_LABELS } from '../../../words/labels.ts';
import { findingInWords } from '../../../words/liveSigns.ts';
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
  /** What was noted on the Watch pad and can be removed here, named with its moment; null for what is removed where it is shown. */
  readonly observation: { readonly id: string; readonly what: string } | null;
}

/** As much of an animal's page as its line needs. */
type OnRecord = Pick<SpecimenPage, 'lifeLine' | 'molts' | 'observations' | 'liveSigns' | 'animalPhotos'>;

/** The latest first. Readings of one day are one entry: a skin is read in several passes. */
export function wholeLineOf(page: OnRecord): WholeLineEntry[] {
  const once = page.lifeLine.filter((event, index, all) => event.kind !== 'reading' || !isSameDay(event, all[index - 1]));
  return once.map((event) => ({ ...BLANK, key: `${event.kind} ${event.id}`, on: event.on, ...told(event, page) })).toReversed();
}

function isSameDay({ kind, on }: LifeEvent, before: LifeEvent | undefined): boolean {
  return before?.kind === kind && before.on === on;
}

type Told = Partial<WholeLineEntry> & Pick<WholeLineEntry, 'words'>;

const BLANK = { clock: null, note: null, photoId: null, to: null, observation: null } as const;

function told({ kind, id, on }: LifeEvent, page: OnRecord): Told {
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
      return { words: 'Photo of the animal', photoId: id, clock: photoClock(id, on, page) };
    case 'live-sign':
      return liveSignTold(id, page);
    case 'reading':
      return { words: `Measured on the Bench: ${skinsMeasured(on, page)}` };
    case 'determination':
      return determinationTold(id, page);
  }
}

function observationTold(id: string, { observations }: OnRecord): Told {
  const seen = observations.find((one) => one.id === id);
  if (!seen) return { words: 'Seen' };
  const span = seen.span ? ` ${seen.span.spanMm} ± ${seen.span.plusMinusMm} mm` : '';
  return {
    words: capitalized(SEEN_LABELS[seen.kind]) + span,
    note: seen.note || null,
    clock: clockOf(seen.moment),
    observation: { id, what: `"${SEEN_LABELS[seen.kind]}" of ${momentInWords(seen.moment)}` },
  };
}

/** As its camera wrote it; none where the day was put right since. */
function photoClock(id: string, on: string, { animalPhotos }: OnRecord): string | null {
  const local = animalPhotos.find((photo) => photo.id === id)?.facts.takenAt?.local;
  return local?.startsWith(`${on}T`) ? local.slice(11, 16) : null;
}

function liveSignTold(id: string, { liveSigns, molts }: OnRecord): Told {
  const sign = liveSigns.find((one) => one.id === id);
  if (!sign) return { words: 'Seen on the animal' };
  const { finding, observer, notes, withdrawn, photoIds } = sign;
  const ultimate = finding.kind === 'palpal-bulbs' ? molts.find(({ molt }) => molt.id === finding.ultimateMoltId) : undefined;
  const note = [
    withdrawn && `Withdrawn: ${withdrawn.reason}`,
    `Signed by ${observer}`,
    ultimate && `With the ultimate molt, on ${dayInWords(ultimate.molt.happenedTo)}`,
    notes,
  ].filter(Boolean);
  return { words: `Seen on the animal: ${findingInWords(finding)}`, note: note.join('. '), photoId: photoIds[0] ?? null };
}

function moltTold(id: string, { molts, liveSigns }: OnRecord): Told {
  const index = molts.findIndex(({ molt }) => molt.id === id);
  const entry = molts[index];
  if (!entry) return { words: 'Molt' };
  const outcomes = listed(entry.molt.outcomes.map((outcome) => OUTCOME_LABELS[outcome]));
  const notes = [outcomes && capitalized(outcomes), entry.molt.notes].filter((part) => part !== '').join('. ');
  const ultimate = ultimateMoltOf(liveSigns) === id ? '; the ultimate molt' : '';
  return { words: `Molt: ${moltName(entry.instar, index + 1)}${ultimate}`, note: notes || null };
}

function skinTold(id: string, { molts }: OnRecord): Told {
  const entry = molts.find(({ exuvia }) => exuvia?.id === id);
  if (!entry?.exuvia) return { words: 'Skin' };
  const { carapaceLengthMm, legSpanMm } = entry.sizes;
  const note = [
    carapaceLengthMm && `Carapace length ${estimateAsText(carapaceLengthMm, 'mm')}`,
    legSpanMm && `Leg span ${estimateAsText(legSpanMm, 'mm')}`,
    entry.exuvia.storagePlace && `Kept in ${entry.exuvia.storagePlace}`,
  ].filter((part) => part !== null && part !== '');
  const photoId = entry.photos[0]?.id ?? null;
  return { words: entry.exuvia.recovered ? 'Skin recovered' : 'Skin not recovered', photoId, note: note.join('. ') || null };
}

/** "the skin of instar 9", by molt: it can be years between the molt, the photo and the day it was measured. */
function skinsMeasured(day: string, { lifeLine, molts }: OnRecord): string {
  const measured = new Set(lifeLine.filter(({ kind, on }) => kind === 'reading' && on === day).map(({ exuviaId }) => exuviaId));
  const names = molts.flatMap(({ exuvia, instar }, index) => {
    if (!exuvia || !measured.has(exuvia.id)) return [];
    return [instar ? instarInWords(instar) : recordedInWords(index + 1)];
  });
  return `the ${names.length === 1 ? 'skin' : 'skins'} of ${listed(names)}`;
}

function determinationTold(id: string, { molts }: OnRecord): Told {
  const found = molts.flatMap(({ determinations }) => determinations).find((one) => one.id === id);
  if (!found) return { words: 'Skin examined' };
  const level = found.level === null ? '' : `, ${LEVEL_LABELS[found.level]}`;
  const corrected = correctedIds(molts.flatMap(({ determinations }) => determinations)).has(id) ? 'Corrected by a later one' : null;
  const fate = found.withdrawn === null ? corrected : 'Withdrawn';
  return { words: `Examined: ${SEX_LABELS[found.sex]}${level}`, note: fate, to: `/examination/${found.exuviaId}` };
}
