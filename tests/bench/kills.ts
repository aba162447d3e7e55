import { killRuns } from '../support/killRuns.ts';
import { atLeast, type Figure } from './figure.ts';

const KILLS = 30;
const SEED = 2026;

/** Share of kills after which everything that had been confirmed was there and whole. */
export async function kills(): Promise<Figure[]> {
  const { kills: killed, survived, troubles } = await killRuns(KILLS, SEED);
  for (const trouble of troubles) console.error(trouble);
  return [atLeast('kill-survived-pct', (100 * survived) / killed, '%', 100)];
}
