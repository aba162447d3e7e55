import { addDays, type CalendarDay, dayOf } from '../dates.ts';
import { groundsIn } from '../growth/forecast/expectedMolt.ts';
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
  if (hold) {
    const hard = hold.fangs?.color === 'fangs-black';
    const action = hard ? 'wait' : 'note-fangs';
    const kind = hard || !hold.missing.includes('date') ? 'feeding-hold' : 'hardening';
    return [reason(kind === 'hardening' ? 4 : 5, hold.until, action, { kind, hold }), ...reasons];
  }
  if (suspicion.level === 'suspected' || suspicion.level === 'strongly-suspected') {
    reasons.push(reason(suspicion.level === 'suspected' ? 7 : 6, today, 'stop-offering-prey', { kind: 'premolt', suspicion }));
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

/** What the last molt left to be done; one step at a time. */
function skinNeeds(animal: FollowedAnimal, today: CalendarDay): { urgency: number; action: NextAction; need: SkinNeed }[] {
  const unrecorded = unrecordedMoltOf(animal);
  if (unrecorded !== null) return [{ urgency: 10, action: 'record-molt', need: { kind: 'molt-to-record', moltedOn: unrecorded } }];
  const { molts, skins } = animal.records;
  const molt = molts.find(({ id }) => id === animal.lastMolt?.moltId);
  if (!molt) return [];
  const moltedOn = molt.happenedTo;
  const skin = skins.find(({ moltId }) => moltId === molt.id);
  if (!skin) {
    const lookedFor = !molt.outcomes.includes('skin-not-recovered') && today <= addDays(moltedOn, SKIN_LOOKED_FOR_DAYS);
    return lookedFor ? [{ urgency: 11, action: 'record-skin', need: { kind: 'skin-to-recover', moltId: molt.id, moltedOn } }] : [];
  }
  if (!skin.exuvia.recovered) return [];
  const missing: Extract<Need, { kind: 'skin-to-read' }>['missing'] = [];
  if (!skin.photographed) missing.push('photo');
  if (!skin.measured) missing.push('measuring');
  if (!skin.sexed) missing.push('sexing');
  if (missing.length === 0) return [];
  return [{ urgency: 12, action: 'read-skin', need: { kind: 'skin-to-read', exuviaId: skin.exuvia.id, moltedOn, missing } }];
}
