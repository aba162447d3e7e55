import { z } from 'zod';
import { CalendarDay } from '../../domain/dates.ts';
import { TaskSnapshot } from '../../domain/intake/task.ts';
import { Preferences } from '../../domain/preferences.ts';
import { Removal } from '../../domain/removal.ts';
import { BYTES, type Endpoint, EVENTS } from './endpoint.ts';

export const About = z
  .object({
    version: z.string(),
    archiveFolder: z.string(),
    today: CalendarDay,
    specimens: z.int(),
    samples: z.int(),
    photos: z.int(),
    unfinishedFiles: z.int().describe('Files an earlier run was stopped in the middle of'),
    unreadableRecords: z.array(z.string()).describe('Met since the start and left out of every list, as "kind id: what is wrong"'),
  })
  .meta({ id: 'About' });
export type About = z.infer<typeof About>;

export const archiveEndpoints = {
  'GET /api/about': { summary: 'What this archive is and holds', answer: About },
  'GET /api/presence': { summary: 'Held open by every page: a shell stays while somebody is here', answer: EVENTS },
  'GET /api/preferences': { summary: "The keeper's preferences", answer: Preferences },
  'PUT /api/preferences': { summary: 'Change the preferences', body: Preferences, answer: Preferences },
  'POST /api/sample-cabinet': { summary: 'Fill the archive with the invented sample cabinet', answer: TaskSnapshot, status: 202 },
  'DELETE /api/sample-cabinet': { summary: 'Remove everything that belongs to the sample cabinet', answer: Removal },
  'GET /api/openapi.json': { summary: 'This description', answer: BYTES },
} as const satisfies Record<string, Endpoint>;
