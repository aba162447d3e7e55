import type { Determination, SexSign } from '../domain/sexing/determination.ts';
import { LEVEL_LABELS, SEX_LABELS } from './labels.ts';

/** "female, strong"; "unsexed"; a contradiction between determinations is always said. */
export function sexInWords(sign: SexSign): string {
  const words = sign.level === null ? SEX_LABELS[sign.sex] : `${SEX_LABELS[sign.sex]}, ${LEVEL_LABELS[sign.level]}`;
  return sign.conflict ? `${words} (contradicted)` : words;
}

/** What it means that other readings name the other sex; the readings themselves are named after it. */
export function oppositionInWords({ level }: Pick<Determination, 'level'>, contradicts: boolean): string {
  if (contradicts) return 'Stands against another reading of this animal:';
  return level === 'leaning'
    ? 'Leans the other way than a surer reading of this animal. A leaning is a guess, so it does not contradict it:'
    : 'A leaning goes the other way. It is a guess, so it does not contradict this reading:';
}
