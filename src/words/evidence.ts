import type { EvidenceItem, FindingKind, Silence, Weight } from '../domain/sexing/evidence/item.ts';
import type { Step } from '../domain/sexing/evidence/prospects.ts';
import type { Band, Gate } from '../domain/sexing/evidence/weigh.ts';

export const FINDING_WORDS: Readonly<Record<FindingKind, string>> = {
  'receptacles-seen': 'Receptacles seen on the skin',
  'strip-empty': 'Strip read as empty',
  'lip-alone': 'A lip without receptacles',
  'accessory-organs': 'Small paired bodies without a lip',
  'fusillae-outside': 'Fusillae on the outer side of the skin',
  'bulbs-on-skin': 'Bulbs on the palps of the skin',
  'palpal-bulbs': 'Palpal bulbs on the animal',
  'no-bulbs': 'No bulbs on an animal of adult size',
  'tibial-hooks': 'Hooks on the tibiae of the animal',
  'no-hooks': 'No hooks on the animal',
  'egg-sac': 'An egg sac laid',
  'sperm-web': 'A sperm web',
  'ventral-fusillae': 'Fusillae seen from below on the animal',
  'no-ventral-fusillae': 'No fusillae seen from below on the animal',
  'impression-ventral': 'Somebody’s impression from below',
  'impression-color': 'Impression by color',
  'impression-build': 'Impression by build',
  'impression-seller': 'The word of a seller',
};

export const SILENCE_WORDS: Readonly<Record<Silence, string>> = {
  'skin-of-another-animal': 'the skin is not certain to be this animal’s',
  'strip-not-readable': 'there was no strip to read',
  'place-not-found': 'without all four book lungs nobody knows that it was the right place',
  'read-from-outside': 'seen from the outer side only',
  'genus-without-spermathecae': 'females of this genus have no receptacles',
  'as-likely-mistaken': 'on such a skin, read like this, a mistake is as likely',
  'grade-below-a': 'it counts on a strip of grade A only',
  'skin-too-small': 'the skin is too small for it',
  'bulbs-not-expected-on-skin': 'a skin shows the instar before the last molt, so bulbs are not expected on it',
  'no-hooks-says-nothing': 'males of many genera have none',
  'genus-hooks-not-known': 'it is not known that males of this genus have them',
  'animal-not-adult-size': 'the animal may still be growing, or its adult size is not known',
  'color-without-source': 'no source says that the sexes of this genus differ in color early',
};

export const WEIGHT_WORDS: Readonly<Record<Weight, string>> = {
  none: 'weighs nothing',
  slight: 'slight',
  fair: 'fair',
  heavy: 'heavy',
  decisive: 'decisive',
};

export const GATE_WORDS: Readonly<Record<Gate, string>> = {
  'male-by-absence':
    'Held down, because a male is read here by absence alone: whatever the skins say together, something seen is needed to go further.',
  'male-without-bulbs': 'Held down, because only palpal bulbs on the animal take a male to the top.',
  'female-on-one-skin': 'Held down, because one skin alone, whoever reads it, does not take a female to the top.',
  'small-skins': 'Held down, because all skins that speak for it are small, and small strips mislead either way.',
};

export const STEP_WORDS: Readonly<Record<Step, string>> = {
  'find-all-lungs': 'All four book lungs found',
  'look-for-lip': 'The uterus externus looked for, and seen',
  'look-outside': 'The outer side looked at, and fusillae seen',
  'use-stereomicroscope': 'The same seen under a stereomicroscope',
  'ask-blind-reader': 'A second reader, who does not know the answer, agrees',
  'compare-with-reference': 'Compared with a skin of known sex',
  'next-skin-with-receptacles': 'The next skin shows receptacles and a lip',
  'next-skin-empty': 'The next skin is empty and shows fusillae outside',
  'bulbs-appear': 'Palpal bulbs appear on the animal, with a photo',
  'egg-sac-laid': 'The animal lays an egg sac',
};

interface Result {
  readonly towards: 'female' | 'male' | null;
  readonly band: Band;
  readonly conflict: boolean;
}

/** "unsexed", "probable male", "leaning female"; never a number. */
export function bandInWords({ towards, band, conflict }: Result): string {
  if (conflict) return 'in conflict, so unsexed';
  if (towards === null || band === 'unsexed') return 'unsexed';
  return band === 'leaning' ? `unsexed, leaning ${towards}` : `${band} ${towards}`;
}

/** What one finding does: "heavy, for a female". */
export function weightInWords({ towards, weight, silence, weakened }: EvidenceItem): string {
  if (silence !== null) return `weighs nothing: ${SILENCE_WORDS[silence]}`;
  if (towards === null) return 'weighs nothing, either way';
  const less = weakened ? ', counted less beside a stronger skin of the same animal' : '';
  return weight === 'none' ? `next to nothing, for a ${towards}${less}` : `${WEIGHT_WORDS[weight]}, for a ${towards}${less}`;
}
