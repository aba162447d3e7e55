import { z } from 'zod';
import { Instant } from '../dates.ts';
import { Failure } from '../failure.ts';

/** What became of one file. */
export const FileOutcome = z
  .discriminatedUnion('kind', [
    z.object({ kind: z.literal('waiting') }),
    z.object({ kind: z.literal('added'), photoId: z.string() }),
    z.object({ kind: z.literal('already-here'), photoId: z.string() }),
    z.object({ kind: z.literal('refused'), failure: Failure }),
  ])
  .meta({ id: 'FileOutcome' });
export type FileOutcome = z.infer<typeof FileOutcome>;

/** Progress as a snapshot, never a delta: a lost event costs nothing. */
export const TaskSnapshot = z
  .object({
    id: z.string(),
    kind: z.enum(['import', 'sample-cabinet', 'gallery']),
    state: z.enum(['running', 'done', 'stopped', 'failed']),
    startedAt: Instant,
    endedAt: Instant.nullable(),
    done: z.int(),
    total: z.int(),
    current: z.string().nullable().describe('The file in hand'),
    remainingSeconds: z.number().nullable().describe('null until it can be told'),
    failure: Failure.nullable(),
    files: z.array(z.object({ name: z.string(), outcome: FileOutcome })),
  })
  .meta({ id: 'TaskSnapshot' });
export type TaskSnapshot = z.infer<typeof TaskSnapshot>;
