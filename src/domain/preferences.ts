import { z } from 'zod';
import { FeedingTable } from './care/feedingTable.ts';

export const Preferences = z
  .object({
    theme: z.enum(['system', 'light', 'dark']),
    inches: z.boolean().describe('Show inches beside millimeters'),
    begunEmpty: z.boolean().default(false).describe('Wants no sample cabinet offered when nothing is on record'),
    observer: z.string().trim().max(200).describe('Name put on new readings and determinations'),
    moltNotices: z.boolean().default(false).describe('Wants a desktop notification when a molt under way takes long'),
    feedingTable: FeedingTable.nullable().default(null).describe("The keeper's own waits after a molt; null for the cautious ones"),
  })
  .meta({ id: 'Preferences' });
export type Preferences = z.infer<typeof Preferences>;

export const FIRST_PREFERENCES: Preferences = {
  theme: 'system',
  inches: false,
  begunEmpty: false,
  observer: '',
  moltNotices: false,
  feedingTable: null,
};
