import { z } from 'zod';
import { Instant } from '../../domain/dates.ts';
import { Failure } from '../../domain/failure.ts';
import { BYTES, type Endpoint, EVENTS, NOTHING } from './endpoint.ts';

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
    kind: z.enum(['import', 'sample-cabinet']),
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

export const intakeEndpoints = {
  'POST /api/intakes': {
    summary: 'Open an intake: the list of files that will be sent',
    body: z.object({
      files: z
        .array(z.object({ name: z.string().min(1).max(500), byteLength: z.int().min(0) }))
        .min(1)
        .max(10_000),
    }),
    answer: z.object({ intakeId: z.string() }),
    status: 201,
  },
  'PUT /api/intakes/{intakeId}/files/{index}': { summary: 'The bytes of one file of the intake', body: BYTES, answer: NOTHING },
  'POST /api/imports': {
    summary: 'Import what an intake holds; or, with nothing named, go on with what an earlier run left unfinished',
    body: z.object({ intakeId: z.string().nullable() }),
    answer: TaskSnapshot,
    status: 202,
  },
  'GET /api/tasks': { summary: 'Running tasks and those that ended since the start', answer: z.array(TaskSnapshot) },
  'GET /api/tasks/{taskId}': { summary: 'One task', answer: TaskSnapshot },
  'GET /api/tasks/{taskId}/events': { summary: 'Snapshots of one task as they come', answer: EVENTS },
  'DELETE /api/tasks/{taskId}': { summary: 'Ask a task to stop after the item in hand', answer: TaskSnapshot, status: 202 },
} as const satisfies Record<string, Endpoint>;
