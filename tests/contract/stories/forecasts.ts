import { expect } from 'vitest';
import { addDays, type CalendarDay } from '../../../src/domain/dates.ts';
import { TEST_NOW } from '../../support/testCore.ts';
import { moltDraft, specimenDraft } from '../drafts.ts';
import { type Exchange, fails, type Memory, recall, succeeds } from '../exchange.ts';

const animal = (memory: Memory) => ({ specimenId: recall(memory, 'awaited animal') });
const TODAY: CalendarDay = TEST_NOW.slice(0, 10);

function molts(title: string, daysAgo: number, instarShed: number): Exchange {
  return succeeds('POST /api/specimens/{specimenId}/molts', title, (memory) => ({
    path: animal(memory),
    body: { ...moltDraft, happenedFrom: addDays(TODAY, -daysAgo), happenedTo: addDays(TODAY, -daysAgo), instarShed },
  }));
}

export const forecastStory: readonly Exchange[] = [
  succeeds(
    'POST /api/specimens',
    'adds an animal whose molts are awaited',
    () => ({ body: { ...specimenDraft, code: 'W-01', acquiredInstar: null } }),
    (added, _, memory) => {
      memory.set('awaited animal', added.id);
    },
  ),
  molts('adds a molt of long ago', 200, 5),
  molts('adds a molt of this month', 10, 6),
  succeeds(
    'GET /api/specimens/{specimenId}/forecasts',
    'has kept a forecast at the fresh molt alone',
    (memory) => ({ path: animal(memory) }),
    (kept) => {
      expect(kept).toHaveLength(1);
      expect(kept[0]?.basis.start).toMatchObject({ kind: 'molt', from: addDays(TODAY, -10) });
      expect(kept[0]?.forecast.due?.ownIntervals).toBe(1);
    },
  ),
  succeeds(
    'GET /api/specimens/{specimenId}',
    'shows the same forecast on the animal’s page',
    (memory) => ({ path: animal(memory) }),
    ({ forecast, summary }) => {
      expect(forecast?.due?.since).toMatchObject({ kind: 'molt' });
      expect(summary.nextMolt?.window90).toEqual(forecast?.due?.window90);
    },
  ),
  succeeds(
    'POST /api/specimens/{specimenId}/forecasts',
    'keeps another one on demand',
    (memory) => ({ path: animal(memory) }),
    (kept) => expect(kept.forecast.madeOn).toBe(kept.basis.madeOn),
  ),
  fails('POST /api/specimens/{specimenId}/forecasts', 'does not know another animal', 'not-found', 404, () => ({
    path: { specimenId: 'no such animal' },
  })),
  succeeds(
    'POST /api/specimens',
    'adds an animal that has died',
    () => ({ body: { ...specimenDraft, code: 'W-02', status: 'dead' as const } }),
    (added, _, memory) => {
      memory.set('dead animal', added.id);
    },
  ),
  fails('POST /api/specimens/{specimenId}/forecasts', 'forecasts nothing for the dead', 'animal-not-kept', 422, (memory) => ({
    path: { specimenId: recall(memory, 'dead animal') },
  })),
  succeeds(
    'GET /api/specimens/{specimenId}',
    'shows the dead without a forecast',
    (memory) => ({ path: { specimenId: recall(memory, 'dead animal') } }),
    ({ forecast, summary }) => expect([forecast, summary.nextMolt]).toEqual([null, null]),
  ),
  succeeds(
    'POST /api/specimens',
    'adds a male that has grown up',
    () => ({ body: { ...specimenDraft, code: 'W-03', acquiredInstar: null } }),
    (added, _, memory) => {
      memory.set('grown male', added.id);
    },
  ),
  succeeds('POST /api/specimens/{specimenId}/live-signs', 'signs a sperm web of his', (memory) => ({
    path: { specimenId: recall(memory, 'grown male') },
    body: { finding: { kind: 'sperm-web' as const }, seenOn: addDays(TODAY, -2), observer: 'R. Reader', photoIds: [], notes: '' },
  })),
  succeeds('POST /api/specimens/{specimenId}/molts', 'adds his fresh molt without keeping a forecast', (memory) => ({
    path: { specimenId: recall(memory, 'grown male') },
    body: { ...moltDraft, happenedFrom: addDays(TODAY, -10), happenedTo: addDays(TODAY, -10), instarShed: 9 },
  })),
  succeeds(
    'GET /api/specimens/{specimenId}/forecasts',
    'has kept none for him',
    (memory) => ({ path: { specimenId: recall(memory, 'grown male') } }),
    (kept) => expect(kept).toEqual([]),
  ),
  fails('POST /api/specimens/{specimenId}/forecasts', 'forecasts nothing for a mature male', 'animal-mature-male', 422, (memory) => ({
    path: { specimenId: recall(memory, 'grown male') },
  })),
  succeeds(
    'GET /api/specimens/{specimenId}',
    'says of him what he is known to be mature by, where a forecast would stand',
    (memory) => ({ path: { specimenId: recall(memory, 'grown male') } }),
    ({ forecast, summary }) => {
      expect([forecast, summary.nextMolt, summary.matureMaleBy]).toEqual([null, null, 'sperm-web']);
    },
  ),
  succeeds(
    'GET /api/specimens',
    'lists him without a next molt, and the one whose molts are awaited with one',
    () => ({}),
    (all) => {
      const due = all.flatMap(({ specimen: { code }, nextMolt, matureMaleBy }) =>
        code === 'W-01' || code === 'W-03' ? [[code, nextMolt !== null, matureMaleBy]] : [],
      );
      expect(due).toEqual([
        ['W-01', true, null],
        ['W-03', false, 'sperm-web'],
      ]);
    },
  ),
  succeeds(
    'POST /api/specimens',
    'adds an animal with bulbs',
    () => ({ body: { ...specimenDraft, code: 'W-05' } }),
    (added, _, memory) => {
      memory.set('contradicted male', added.id);
    },
  ),
  succeeds('POST /api/specimens/{specimenId}/molts', 'adds a molt of long ago', (memory) => ({
    path: { specimenId: recall(memory, 'contradicted male') },
    body: { ...moltDraft, happenedFrom: addDays(TODAY, -700), happenedTo: addDays(TODAY, -700), instarShed: 9 },
  })),
  succeeds('POST /api/specimens/{specimenId}/live-signs', 'signs its bulbs', (memory) => ({
    path: { specimenId: recall(memory, 'contradicted male') },
    body: {
      finding: { kind: 'palpal-bulbs' as const, seen: true, ultimateMoltId: null },
      ...{ seenOn: addDays(TODAY, -9), observer: 'R. Reader', photoIds: [], notes: '' },
    },
  })),
  succeeds('POST /api/specimens/{specimenId}/live-signs', 'signs an egg sac of the same animal', (memory) => ({
    path: { specimenId: recall(memory, 'contradicted male') },
    body: {
      finding: { kind: 'egg-sac' as const, fertile: 'not-known' as const },
      ...{ seenOn: addDays(TODAY, -8), observer: 'R. Reader', photoIds: [], notes: '' },
    },
  })),
  succeeds(
    'GET /api/specimens/{specimenId}',
    'never calls due an animal whose bulbs are contradicted',
    (memory) => ({ path: { specimenId: recall(memory, 'contradicted male') } }),
    ({ forecast, summary }) => {
      expect([forecast, summary.nextMolt, summary.matureMaleBy, summary.maleContradicted]).toEqual([null, null, null, true]);
    },
  ),
  fails(
    'POST /api/specimens/{specimenId}/forecasts',
    'forecasts nothing while nobody knows whether it molts',
    'male-contradicted',
    422,
    (memory) => ({
      path: { specimenId: recall(memory, 'contradicted male') },
    }),
  ),
  succeeds(
    'GET /api/watch',
    'watches it, and awaits no molt by the calendar',
    () => ({}),
    ({ animals, items }) => {
      expect(animals.find(({ specimen }) => specimen.code === 'W-05')).toMatchObject({ forecast: null, matureMaleBy: null });
      const id = animals.find(({ specimen }) => specimen.code === 'W-05')?.specimen.id;
      expect(
        items.filter(({ specimenId, need }) => specimenId === id && (need.kind === 'molt-due' || need.kind === 'molt-overdue')),
      ).toEqual([]);
    },
  ),
  succeeds(
    'GET /api/watch',
    'watches him without a forecast and says why',
    () => ({}),
    ({ animals }) =>
      expect(animals.find(({ specimen }) => specimen.code === 'W-03')).toMatchObject({ forecast: null, matureMaleBy: 'sperm-web' }),
  ),
  succeeds(
    'GET /api/forecasts/scores',
    'waits for the molt with both, and counts neither',
    () => ({}),
    ({ coverage, forecasts }, _, memory) => {
      const own = forecasts.filter(({ specimenId }) => specimenId === recall(memory, 'awaited animal'));
      expect(own.map(({ unscored, counts }) => [unscored, counts])).toEqual([
        ['waiting', false],
        ['waiting', false],
      ]);
      expect(coverage.due.scored).toBe(0);
    },
  ),
];
