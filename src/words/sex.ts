import type { SexSign } from '../domain/sexing/determination.ts';
import { LEVEL_LABELS, SEX_LABELS } from './labels.ts';

/** "female, strong"; "unsexed"; a contradiction between determinations is always said. */
export function sexInWords(sign: SexSign): string {
  const words = sign.level === null ? SEX_LABELS[sign.sex] : `${SEX_LABELS[sign.sex]}, ${LEVEL_LABELS[sign.level]}`;
  return sign.conflict ? `${words} (contradicted)` : words;
}
