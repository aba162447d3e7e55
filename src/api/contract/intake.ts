import { z } from 'zod';
import { TaskSnapshot } from '../../domain/intake/task.ts';
import { BYTES, type Endpoint, EVENTS, NOTHING } from './endpoint.ts';

export const intakeEndpoints = {
  'POST /api/intakes': {
    summary: 'Open an intake: the list of files that will be sent',
    body: z.object({
      files: z
        .array(z.object({ name: z.string().min(1).max(500), byteLength: z.int().min(0) }))
        .min(1)
        .max(10_000),
    }),
    bodyLimitBytes: 16_777_216,
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
  'DELETE /api/imports': {
    summary: 'Give up the files that an earlier import left waiting, with the bytes it had received of them',
    answer: z.object({ files: z.int() }),
  },
  'GET /api/tasks': { summary: 'Running tasks and those that ended since the start', answer: z.array(TaskSnapshot) },
  'GET /api/tasks/{taskId}': { summary: 'One task', answer: TaskSnapshot },
  'GET /api/tasks/{taskId}/events': { summary: 'Snapshots of one task as they come', answer: EVENTS },
  'DELETE /api/tasks/{taskId}': { summary: 'Ask a task to stop after the item in hand', answer: TaskSnapshot, status: 202 },
} as const satisfies Record<string, Endpoint>;
