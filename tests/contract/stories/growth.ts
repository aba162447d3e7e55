import { expect } from 'vitest';
import { Renumbering, reversed } from '../../../src/domain/molting/renumbering.ts';
import { moltDraft, specimenDraft } from '../drafts.ts';
import { type Exchange, fails, type Memory, recall, succeeds } from '../exchange.ts';

const animal = (memory: Memory) => ({ specimenId: recall(memory, 'grown animal') });
const kept = (memory: Memory) => Renumbering.parse(JSON.parse(recall(memory, 'renumbering')));

/** A molt on one day, clean, its number noted or not. */
function adds(name: string, day: string, instarShed: number | null): Exchange {
  return succeeds(
    'POST /api/specimens/{specimenId}/molts',
    `adds the ${name} molt of an animal that grows`,
    (memory) => ({ path: animal(memory), body: { ...moltDraft, happenedFrom: day, happenedTo: day, instarShed } }),
    (added, _, memory) => {
      memory.set(`${name} molt`, added.id);
    },
  );
}

/** The instars on the rungs, and what they leave out. */
function shows(title: string, instars: readonly (number | null)[], skipped: readonly number[]): Exchange {
  return succeeds(
    'GET /api/specimens/{specimenId}/ladder',
    title,
    (memory) => ({ path: animal(memory) }),
    ({ ladder, growth }) => {
      expect(ladder.rungs.map(({ instar }) => instar?.number ?? null)).toEqual(instars);
      expect(ladder.rungs.map(({ skippedInstars }) => skippedInstars)).toEqual(skipped);
      expect(growth.findings.map(({ kind }) => kind)).toEqual(['no-size']);
    },
  );
}

export const growthStory: readonly Exchange[] = [
  succeeds(
    'POST /api/specimens',
    'adds an animal that grows',
    () => ({ body: { ...specimenDraft, code: 'G-01', acquiredInstar: null } }),
    (added, _, memory) => {
      memory.set('grown animal', added.id);
    },
  ),
  adds('first', '2024-02-01', null),
  adds('second', '2024-05-01', null),
  succeeds(
    'POST /api/specimens/{specimenId}/gaps',
    'keeps a gap that has no number beside it as a presumed molt',
    (memory) => ({ path: animal(memory), body: { beforeMoltId: recall(memory, 'second molt'), skipped: 1 } }),
    (gap, _, memory) => {
      if (gap.kind !== 'presumed') throw new Error(`Expected a presumed molt but received ${gap.kind}`);
      expect(gap.moltIds).toHaveLength(1);
      memory.set('presumed molt', gap.moltIds[0] ?? '');
    },
  ),
  succeeds(
    'GET /api/specimens/{specimenId}/ladder',
    'has it as a rung of its own, between the two and without a number',
    (memory) => ({ path: animal(memory) }),
    ({ ladder }) => {
      expect(ladder.rungs.map(({ presumed, step, instar }) => [presumed, step, instar])).toEqual([
        [false, 0, null],
        [true, 1, null],
        [false, 2, null],
      ]);
      expect(ladder.rungs[1]).toMatchObject({ happenedFrom: '2024-02-01', happenedTo: '2024-05-01', recovered: false, exuviaId: null });
    },
  ),
  succeeds('DELETE /api/molts/{moltId}', 'takes it back as any molt is removed', (memory) => ({
    path: { moltId: recall(memory, 'presumed molt') },
  })),
  shows('has the two molts alone again', [null, null], [0, 0]),
  adds('third', '2024-09-01', 7),
  shows('counts the molts as if none were missing', [5, 6, 7], [0, 0, 0]),
  fails('POST /api/specimens/{specimenId}/gaps', 'refuses a gap before the first molt', 'gap-misplaced', 422, (memory) => ({
    path: animal(memory),
    body: { beforeMoltId: recall(memory, 'first molt'), skipped: 1 },
  })),
  fails('POST /api/specimens/{specimenId}/gaps', 'does not know the molt of another animal', 'not-found', 404, (memory) => ({
    path: animal(memory),
    body: { beforeMoltId: 'no such molt', skipped: 1 },
  })),
  fails('POST /api/specimens/{specimenId}/gaps', 'does not know another animal', 'not-found', 404, (memory) => ({
    path: { specimenId: 'no such animal' },
    body: { beforeMoltId: recall(memory, 'first molt'), skipped: 1 },
  })),
  succeeds(
    'POST /api/specimens/{specimenId}/gaps',
    'takes the gap in',
    (memory) => ({ path: animal(memory), body: { beforeMoltId: recall(memory, 'second molt'), skipped: 1 } }),
    (gap, _, memory) => {
      if (gap.kind !== 'renumbered') throw new Error(`Expected a renumbering but received ${gap.kind}`);
      const { renumbering } = gap;
      expect(renumbering.changes.map(({ from, to }) => [from, to])).toEqual([
        [null, 4],
        [null, 6],
      ]);
      memory.set('renumbering', JSON.stringify(renumbering));
    },
  ),
  shows('has the gap on the ladder', [4, 6, 7], [0, 1, 0]),
  fails(
    'POST /api/specimens/{specimenId}/renumberings',
    'refuses to start from numbers that are not there',
    'changed-meanwhile',
    412,
    (memory) => ({
      path: animal(memory),
      body: kept(memory),
    }),
  ),
  fails('POST /api/specimens/{specimenId}/renumberings', 'refuses numbers that fall', 'instars-out-of-order', 422, (memory) => ({
    path: animal(memory),
    body: { changes: [{ moltId: recall(memory, 'third molt'), from: 7, to: 5 }] },
  })),
  succeeds(
    'POST /api/specimens/{specimenId}/renumberings',
    'takes the gap back',
    (memory) => ({ path: animal(memory), body: reversed(kept(memory)) }),
    (renumbering, _, memory) => expect(renumbering).toEqual(reversed(kept(memory))),
  ),
  shows('counts as before', [5, 6, 7], [0, 0, 0]),
  succeeds('POST /api/specimens/{specimenId}/gaps', 'puts the gap on record once more', (memory) => ({
    path: animal(memory),
    body: { beforeMoltId: recall(memory, 'second molt'), skipped: 1 },
  })),
  succeeds(
    'POST /api/specimens/{specimenId}/closed-gaps',
    'takes a gap out whoever put it there',
    (memory) => ({ path: animal(memory), body: { beforeMoltId: recall(memory, 'second molt') } }),
    ({ changes }) =>
      expect(changes.map(({ from, to }) => [from, to])).toEqual([
        [6, 5],
        [7, 6],
      ]),
  ),
  shows('has no gap any more', [4, 5, 6], [0, 0, 0]),
  fails('POST /api/specimens/{specimenId}/closed-gaps', 'has no second gap to take out', 'gap-absent', 422, (memory) => ({
    path: animal(memory),
    body: { beforeMoltId: recall(memory, 'second molt') },
  })),
];
