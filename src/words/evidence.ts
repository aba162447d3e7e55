import type { SignedAssessment } from '../domain/sexing/determination.ts';
import type { Gate } from '../domain/sexing/evidence/gates.ts';
import type { EvidenceItem, FindingKind, Silence, Weight } from '../domain/sexing/evidence/item.ts';
import { isEarlierForm } from '../domain/sexing/evidence/model.ts';
import type { Step } from '../domain/sexing/evidence/prospects.ts';
import type { Band } from '../domain/sexing/evidence/weigh.ts';
import { uncapitalized } from './labels.ts';

export const FINDING_WORDS: Readonly<Record<FindingKind, string>> = {
  'receptacles-seen': 'Receptacles seen',
  'strip-empty': 'Strip read as empty',
  'lip-alone': 'A lip without receptacles',
  'accessory-organs': 'Small paired bodies without a lip',
  'fusillae-outside': 'Fusillae on the outer side',
  'bulbs-on-skin': 'Bulbs on the palps',
  'palpal-bulbs': 'Palpal bulbs',
  'no-bulbs': 'Palpal bulbs looked for at adult size, none',
  'tibial-hooks': 'Hooks on the tibiae',
  'no-hooks': 'Hooks on the tibiae looked for, none',
  'egg-sac': 'An egg sac laid',
  'sperm-web': 'A sperm web',
  'ventral-fusillae': 'Fusillae seen from below',
  'no-ventral-fusillae': 'Looked for fusillae from below, none',
  'impression-ventral': 'Somebody’s impression from below',
  'impression-color': 'Impression by color',
  'impression-build': 'Impression by build',
  'impression-seller': 'The word of a seller',
};

export const SILENCE_WORDS: Readonly<Record<Silence, string>> = {
  'skin-of-another-animal': 'the skin is not certain to be this animal’s',
  'strip-not-readable': 'there was no strip to read',
  'place-not-found': 'without all four book lungs nobody knows that it was the right place',
  'read-from-outside': 'looked at from the outer side only, and it lies on the inner one',
  'read-from-inside': 'looked at from the inner side only, and they stand on the outer one',
  'organs-without-lip': 'only a lip would tell receptacles from the accessory organs of a male, and none was seen',
  'same-look-from-below': 'another finding of the same look from below counts already',
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
  decisive: 'very heavy',
};

export const GATE_WORDS: Readonly<Record<Gate, string>> = {
  'opinions-alone': 'Held down, because no skin speaks for it and nothing that only one sex has was seen: opinions make a leaning at most.',
  'look-alikes-alone':
    'Held down, because no lip was seen with the receptacles: paired bodies without one can be a male’s accessory organs, on however many skins.',
  'readers-disagree': 'Held down, because a second reader of the skin does not agree.',
  'male-by-absence':
    'Held down, because a male is read here by absence alone: whatever the skins say together, fusillae, hooks, a sperm web or bulbs are needed to go further.',
  'male-without-bulbs': 'Held down, because only palpal bulbs on the animal take a male to the top.',
  'female-on-one-skin':
    'Held down, because a female comes to the top only by receptacles on two skins that are not small (leg span from 40 mm, as shipped), or by an egg sac.',
  'small-skins': 'Held down, because all skins that speak for it are small, and small strips mislead either way.',
};

export const STEP_WORDS: Readonly<Record<Step, string>> = {
  'match-skin': 'The skin is certain to be this animal’s',
  'find-all-lungs': 'All four book lungs found',
  'look-inside': 'The same seen from the inner side',
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
export function weightInWords({ towards, weight, silence, weakened, gaveWay }: EvidenceItem): string {
  if (gaveWay)
    return `gave way to a better reading of the same skin${silence === null && towards !== null ? `; it spoke for a ${towards}` : ''}`;
  if (silence !== null) return `weighs nothing: ${SILENCE_WORDS[silence]}`;
  if (towards === null) return 'weighs nothing, either way';
  const less = weakened ? ', counted less beside a stronger skin of the same animal that agrees' : '';
  return weight === 'none' ? `next to nothing, for a ${towards}${less}` : `${WEIGHT_WORDS[weight]}, for a ${towards}${less}`;
}

/** Where one finding was made. */
export type PlaceOf = (item: EvidenceItem) => string;

/** What speaks for each sex in a conflict, so that neither side of it is left unnamed. */
export function sidesInWords(items: readonly EvidenceItem[], placeOf: PlaceOf): { readonly female: string; readonly male: string } {
  const side = (sex: 'female' | 'male') =>
    items
      .filter(({ towards }) => towards === sex)
      .map((item) => `${uncapitalized(FINDING_WORDS[item.kind])} ${placeOf(item)}`)
      .join('; ');
  return { female: side('female'), male: side('male') };
}

/** What the machine made of a determination when it was signed, by which rules, and what it then knew of the genus. */
export function assessmentInWords({ band, modelVersion, genus, ...result }: SignedAssessment): string {
  const earlier = isEarlierForm(modelVersion);
  if (band === null || earlier === null) return 'Signed before evidence was weighed by a model.';
  const version = genus?.profileVersion;
  const edit = version === 0 ? 'as shipped' : `edit ${version}`;
  const profile = genus === null || version === undefined ? '' : `; profile of ${genus.genus === '' ? 'no genus' : genus.genus}, ${edit}`;
  const since = earlier ? ' Its rules have changed since; what was signed stays as it is.' : '';
  return `All evidence then: ${bandInWords({ ...result, band })} (model ${modelVersion}${profile}).${since}`;
}
