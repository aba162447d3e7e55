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

/** "instar 5", or "instar 5 or 6" where a molt whose day is not known lies between. */
export function instarSpanInWords({ from, to }: { readonly from: number; readonly to: number }): string {
  return from === to ? `instar ${from}` : `instar ${from} or ${to}`;
}
