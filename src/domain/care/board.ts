import { addDays, type CalendarDay, dayOf } from '../dates.ts';
import { groundsIn } from '../growth/forecast/expectedMolt.ts';
import { canBeMeasured, hasStrip } from '../molting/exuvia.ts';
import type { MoltOutcome } from '../molting/molt.ts';
import { isFirm } from '../sexing/rank.ts';
import { type FollowedAnimal, unrecordedMoltOf } from './followed.ts';
import type { MoltTimer } from './moltTimer.ts';
import type { Need, NextAction, Reason, WatchItem } from './watchItem.ts';

/** A skin nobody has found so long after its molt is not looked for any more. Judgment. */
const SKIN_LOOKED_FOR_DAYS = 90;

/** Who needs what today, one entry for an animal, the most urgent first; equals by the earlier day, then by the order of the animals. */
export function boardOf(animals: readonly FollowedAnimal[], today: CalendarDay): WatchItem[] {
  return animals.flatMap((animal) => itemOf(animal, today)).toSorted(byUrgency);
}

interface Place {
  readonly urgency: number;
  readonly on: CalendarDay;
}

type PlacedReason = Reason & Place;

function byUrgency(a: Place, b: Place): number {
  return a.urgency - b.urgency || (a.on < b.on ? -1 : a.on > b.on ? 1 : 0);
}

function itemOf(animal: FollowedAnimal, today: CalendarDay): WatchItem[] {
  const [first, ...others] = reasonsOf(animal, today).toSorted(byUrgency);
  if (!first) return [];
  return [{ specimenId: animal.records.specimen.id, ...first, also: others.map(({ action, need }) => ({ action, need })) }];
}

/** While an animal molts nothing else about the living animal matters; while it is held, no next molt does. */
function reasonsOf(animal: FollowedAnimal, today: CalendarDay): PlacedReason[] {
  const { timer, hold, records, suspicion } = animal;
  const reason = (urgency: number, on: CalendarDay, action: NextAction, need: Need): PlacedReason => ({ urgency, on, action, need });
  if (timer) return [reason(...moltingPlace(timer), { kind: 'molting', timer })];
  const reasons = skinNeeds(animal, today).map(({ urgency, action, need }) => reason(urgency, need.moltedOn, action, need));
  const { endUnseen, diedOn } = animal;
  if (diedOn !== null) return [reason(4, diedOn, 'record-death', { kind: 'died-in-molt', diedOn }), ...reasons];
  if (endUnseen) reasons.push(reason(4, endUnseen.startedOn, 'record-molt', { kind: 'molt-end-unseen', ...endUnseen }));
  if (hold) {
    const hard = hold.fangs?.color === 'fangs-black';
    const action = hard ? 'wait' : 'note-fangs';
    const kind = hard || !hold.missing.includes('date') ? 'feeding-hold' : 'hardening';
    const held = reason(kind === 'hardening' ? 4 : 5, hold.until, action, { kind, hold });
    // Fangs that nobody looked at again since they were light do not hide that the next molt comes.
    const isNext = kind === 'feeding-hold' && suspicion.level === 'strongly-suspected';
    return [...(isNext ? [reason(4, today, 'stop-offering-prey', { kind: 'premolt', suspicion })] : []), held, ...reasons];
  }
  if (suspicion.level === 'suspected' || suspicion.level === 'strongly-suspected') {
    reasons.push(reason(suspicion.level === 'suspected' ? 7 : 6, today, 'stop-offering-prey', { kind: 'premolt', suspicion }));
  }
  const { fangsUnseenSince } = animal;
  if (fangsUnseenSince) {
    reasons.push(reason(13, fangsUnseenSince, 'note-fangs', { kind: 'fangs-unseen', moltedOn: fangsUnseenSince }));
  }
  const forecast = groundsIn(records.forecast);
  if (forecast && forecast.stage !== 'early') {
    const [urgency, kind] = forecast.stage === 'overdue' ? ([8, 'molt-overdue'] as const) : ([9, 'molt-due'] as const);
    reasons.push(reason(urgency, forecast.likely, 'watch-for-signs', { kind, forecast }));
  }
  return reasons;
}

function moltingPlace({ state, startedAt }: MoltTimer): [urgency: number, on: CalendarDay, action: NextAction] {
  const on = dayOf(startedAt);
  switch (state) {
    case 'concern':
      return [1, on, 'ask-a-veterinarian'];
    case 'look-closer':
      return [2, on, 'look-in'];
    case 'clock-set-back':
      return [2, on, 'set-the-clock'];
    case 'usual':
      return [3, on, 'look-in'];
  }
}

type SkinNeed = Extract<Need, { kind: 'molt-to-record' | 'skin-to-recover' | 'skin-to-read' }>;
type RecoverNeed = Extract<Need, { kind: 'skin-to-recover' }>;
type ReadNeed = Extract<Need, { kind: 'skin-to-read' }>;

/** What its molts left to be done: the watched one to put on record, skins to recover, and the latest of those to read. */
function skinNeeds(animal: FollowedAnimal, today: CalendarDay): { urgency: number; action: NextAction; need: SkinNeed }[] {
  const unrecorded = unrecordedMoltOf(animal);
  const [latest, ...others] = skinsToRead(animal);
  const toRecord = { urgency: 10, action: 'record-molt', need: { kind: 'molt-to-record', moltedOn: unrecorded ?? today } } as const;
  return [
    ...(unrecorded === null ? [] : [toRecord]),
    ...skinsToRecover(animal, today).map((need) => ({ urgency: 11, action: 'record-skin', need }) as const),
    ...(latest ? [{ urgency: 12, action: 'read-skin', need: { ...latest, others: others.length } } as const] : []),
  ];
}

/** Of presumed molts nobody saw anything, and an animal that died in its molt is not free of its skin. */
const LEAVES_NO_SKIN: readonly MoltOutcome[] = ['skin-not-recovered', 'presumed', 'died'];

/** Skins of molts on record that nobody has found yet, the latest first. */
export function skinsToRecover({ records: { molts, skins } }: FollowedAnimal, today: CalendarDay): RecoverNeed[] {
  return latestFirst(molts).flatMap(({ id, happenedTo, outcomes }): RecoverNeed[] => {
    const isOver = outcomes.some((outcome) => LEAVES_NO_SKIN.includes(outcome)) || skins.some(({ moltId }) => moltId === id);
    return isOver || today > addDays(happenedTo, SKIN_LOOKED_FOR_DAYS)
      ? []
      : [{ kind: 'skin-to-recover', moltId: id, moltedOn: happenedTo }];
  });
}

/**
 * The latest first, without a limit of time. Sizes are asked while there is something to measure; an examination while there is a strip
 * to examine, of the last skin, and of earlier ones while the sex is open; a photo where one of the two is still to be done.
 */
function skinsToRead({ records: { molts, skins, sex } }: FollowedAnimal): Omit<ReadNeed, 'others'>[] {
  return latestFirst(molts).flatMap(({ id, happenedTo }, back) => {
    const skin = skins.find(({ moltId }) => moltId === id);
    if (!skin?.exuvia.recovered) return [];
    const toDo: ReadNeed['missing'] = [];
    if (!skin.measured && canBeMeasured(skin.exuvia)) toDo.push('measuring');
    if (!skin.sexed && hasStrip(skin.exuvia) && (back === 0 || !isFirm(sex.level))) toDo.push('sexing');
    if (toDo.length === 0) return [];
    const missing: ReadNeed['missing'] = skin.photoId === null ? ['photo', ...toDo] : toDo;
    return [{ kind: 'skin-to-read' as const, exuviaId: skin.exuvia.id, photoId: skin.photoId, moltedOn: happenedTo, missing }];
  });
}

function latestFirst<M extends { readonly happenedTo: CalendarDay }>(molts: readonly M[]): M[] {
  return molts.toSorted((a, b) => (a.happenedTo < b.happenedTo ? 1 : -1));
}
