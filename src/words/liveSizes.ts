import type { LiveSize } from '../domain/growth/liveSizes.ts';
import { dayInWords } from './dates.ts';

/** "Instar 11, alive": the animal itself in the instar it lived in, not a skin. */
export function liveName({ instarFrom, instarTo }: Pick<LiveSize, 'instarFrom' | 'instarTo'>): string {
  if (instarFrom === null || instarTo === null) return 'Alive, instar not known';
  return instarFrom === instarTo ? `Instar ${instarFrom}, alive` : `Instar ${instarFrom} or ${instarTo}, alive`;
}

/** "photo of 3 Mar 2025". */
export function liveWhenInWords({ takenOn }: Pick<LiveSize, 'takenOn'>): string {
  return takenOn === null ? 'photo without a date' : `photo of ${dayInWords(takenOn)}`;
}

/** Why a live size stands outside the row of instars; null where it stands in it. */
export function unplacedInWords({ step, takenOn, afterMoltId }: Pick<LiveSize, 'step' | 'takenOn' | 'afterMoltId'>): string | null {
  if (step !== null) return null;
  if (takenOn === null) return 'between which molts is not known';
  return afterMoltId === null ? 'no molt on record before it' : 'a molt may lie on either side of it';
}
