import { describe, expect, test } from 'vitest';
import type { LastMolt } from '../../../src/domain/care/lastMolt.ts';
import { PremoltSign, type Seen } from '../../../src/domain/care/observation.ts';
import { premoltSuspicion, SIGN_POINTS } from '../../../src/domain/care/suspicion.ts';
import type { ExpectedMolt } from '../../../src/domain/growth/forecast/expectedMolt.ts';
import type { Habit } from '../../../src/domain/specimen/specimen.ts';
import { seen } from './seen.ts';

const TODAY = '2026-06-15';
const MOLTED: LastMolt = { on: '2026-01-10', run: null, moltId: 'm1' };

function suspicion(observations: readonly Seen[], forecast: ExpectedMolt | null = null, habit: Habit | null = 'terrestrial') {
  return premoltSuspicion({ observations, lastMolt: MOLTED, habit, forecast, today: TODAY });
}

describe('premolt', () => {
  test.each([
    ['slow-and-hiding', 1],
    ['abdomen-dark-and-tight', 2],
    ['bald-patch-dark', 2],
    ['whole-animal-dark', 2],
    ['climbs-badly', 1],
    ['retreat-closed', 1],
    ['mat-laid', 3],
    ['setae-on-mat', 3],
  ] as const)('is not suspected from "%s" alone, however clear: no single sign proves it', (sign, points) => {
    expect(suspicion([seen(sign, '2026-06-10T20:00')], null, 'arboreal')).toMatchObject({ points, level: 'little' });
  });

  test('has points for every sign there is', () => expect(Object.keys(SIGN_POINTS)).toEqual(PremoltSign.options));

  test('is suspected from a refusal and a dark abdomen, strongly with a mat', () => {
    const two = [seen('refused', '2026-06-01T20:00'), seen('abdomen-dark-and-tight', '2026-06-05T20:00')];
    expect(suspicion(two)).toMatchObject({ points: 3, level: 'suspected' });
    expect(suspicion([...two, seen('mat-laid', '2026-06-14T20:00')])).toMatchObject({ points: 6, level: 'strongly-suspected' });
  });

  test('says what it rests on and what it does not know', () => {
    const one = suspicion(
      [seen('ate', '2026-05-16T20:00'), seen('refused', '2026-06-01T20:00'), seen('refused', '2026-06-08T20:00')],
      null,
      null,
    );
    expect(one.items).toEqual([{ kind: 'refused', times: 2, since: '2026-06-01', points: 1 }]);
    expect(one).toMatchObject({ lastMealOn: '2026-05-16', daysSinceMeal: 30, unknown: ['signs', 'forecast', 'habit'] });
    expect(suspicion([])).toMatchObject({ points: 0, level: 'none', daysSinceMeal: null, unknown: ['last-meal', 'signs', 'forecast'] });
  });

  test('counts a third refusal double and forgets refusals at the next meal', () => {
    const refusals = ['2026-05-01', '2026-05-08', '2026-05-15'].map((day) => seen('refused', `${day}T20:00`));
    expect(suspicion(refusals).points).toBe(2);
    expect(suspicion([...refusals, seen('ate', '2026-05-22T20:00')]).points).toBe(0);
  });

  test('forgets refusals of more than 90 days ago', () => {
    const refused = ['2026-03-16', '2026-03-17', '2026-03-18'].map((day) => seen('refused', `${day}T20:00`));
    expect(suspicion(refused).items).toEqual([{ kind: 'refused', times: 2, since: '2026-03-17', points: 1 }]);
  });

  test('weighs a meal after the signs against them', () => {
    const signs = [seen('bald-patch-dark', '2026-06-01T20:00'), seen('retreat-closed', '2026-06-01T20:00')];
    expect(suspicion([...signs, seen('ate', '2026-06-10T20:00')])).toMatchObject({ points: 1, level: 'little' });
    expect(suspicion([seen('ate', '2026-05-10T20:00'), ...signs]).points).toBe(3);
  });

  test('is not strongly suspected of an animal that took prey after all its signs, however many: a meal takes half of them back', () => {
    const signs = (['mat-laid', 'setae-on-mat', 'abdomen-dark-and-tight', 'bald-patch-dark', 'whole-animal-dark'] as const).map((kind) =>
      seen(kind, '2026-06-08T20:00'),
    );
    expect(suspicion(signs)).toMatchObject({ points: 12, level: 'strongly-suspected' });
    const ate = [...signs, seen('ate', '2026-06-10T20:00')];
    expect(suspicion(ate)).toMatchObject({ points: 6, level: 'suspected' });
    expect(suspicion(ate).items).toContainEqual({ kind: 'ate-after-signs', on: '2026-06-10', points: -6 });
    const seenAgain = [...ate, seen('mat-laid', '2026-06-14T20:00')];
    expect(suspicion(seenAgain).items).toContainEqual({ kind: 'ate-after-signs', on: '2026-06-10', points: -5 });
    expect(suspicion(seenAgain)).toMatchObject({ points: 7, level: 'strongly-suspected' });
  });

  test('leaves out signs of before the last molt and signs of long ago', () => {
    expect(suspicion([seen('mat-laid', '2026-01-08T20:00'), seen('mat-laid', '2026-03-01T20:00')]).items).toEqual([]);
    expect(suspicion([seen('mat-laid', '2026-03-17T20:00')]).points).toBe(3);
  });

  test('leaves out what was noted on the day of a molt known by its day: that spoke for the molt of that day', () => {
    const onTheDay = [
      seen('mat-laid', '2026-06-14T08:00'),
      seen('refused', '2026-06-14T08:00'),
      seen('whole-animal-dark', '2026-06-14T09:00'),
    ];
    const of = (lastMolt: LastMolt) =>
      premoltSuspicion({ observations: onTheDay, lastMolt, habit: 'terrestrial', forecast: null, today: TODAY }).items;
    expect(of({ on: '2026-06-14', run: null, moltId: 'm1' })).toEqual([]);
    expect(of({ on: '2026-06-13', run: null, moltId: 'm1' })).toHaveLength(3);
  });

  test('takes bad climbing as a sign in arboreal animals alone', () => {
    const climbing = [seen('climbs-badly', '2026-06-10T20:00')];
    expect([suspicion(climbing, null, 'arboreal').points, suspicion(climbing, null, 'fossorial').points]).toEqual([1, 0]);
  });

  const EXPECTED = { from: '2026-06-16', likely: '2026-07-01', to: '2026-07-20', told: true, assumed: false } as const;

  test.each([
    ['early', 0],
    ['window', 1],
    ['past-likely', 2],
    ['overdue', 2],
  ] as const)('gives an interval that is "%s" its points', (stage, points) => {
    expect(suspicion([], { ...EXPECTED, stage }).points).toBe(points);
  });

  test('is not suspected by a forecast that is mostly assumed, however long the wait', () => {
    const refused = [seen('refused', '2026-06-01T20:00')];
    expect(suspicion(refused, { ...EXPECTED, stage: 'overdue' }).level).toBe('suspected');
    const assumed = suspicion(refused, { ...EXPECTED, stage: 'overdue', told: true, assumed: true });
    expect(assumed).toMatchObject({ points: 1, level: 'little' });
    expect(assumed.unknown).toContain('forecast');
  });
});
