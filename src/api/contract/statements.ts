import { z } from 'zod';
import { OutcomeLog } from '../../domain/sexing/outcomes/outcomes.ts';
import { StatementFacts, StatementPromise } from '../../domain/sexing/statement/statement.ts';
import { BYTES, type Endpoint } from './endpoint.ts';

export const Statement = z
  .object({
    facts: StatementFacts,
    title: z.string(),
    claim: z.string(),
    rows: z.array(z.object({ label: z.string(), text: z.string() })),
    closing: z.string(),
    text: z.string().describe('All of it as plain text'),
  })
  .meta({ id: 'Statement' });
export type Statement = z.infer<typeof Statement>;

export const statementEndpoints = {
  'GET /api/specimens/{specimenId}/sex-statement': {
    summary: 'What can honestly be said of the sex of an animal, for a buyer or a breeding partner',
    query: StatementPromise,
    answer: Statement,
  },
  'GET /api/specimens/{specimenId}/sex-statement.pdf': {
    summary: 'The same on one page, with up to three of its evidence photos',
    query: StatementPromise.extend({ paper: z.enum(['a4', 'letter']).default('a4') }),
    answer: BYTES,
  },
  'GET /api/outcomes': {
    summary: 'How often readings came true, of animals proved later by bulbs or an egg sac',
    answer: OutcomeLog,
  },
} as const satisfies Record<string, Endpoint>;
