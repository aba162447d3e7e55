import type { Molt } from '../domain/molting/molt.ts';

/** "Shed instar 7"; where the instar is not known, its place among those recorded. */
export function moltName(molt: Pick<Molt, 'instarShed'>, recordedMolt: number): string {
  return molt.instarShed === null ? `Molt ${recordedMolt} of those recorded` : `Shed instar ${molt.instarShed}`;
}

/** The one thing nobody may forget about a skin. */
export function whatSkinShows(molt: Pick<Molt, 'instarShed'>): string {
  const shown = molt.instarShed === null ? 'the instar that ended with this molt' : `instar ${molt.instarShed}, which has ended`;
  return `Shows ${shown}: the animal came out of it larger.`;
}
