import {
  type GenusFlags,
  type GenusProfile,
  type GenusProfileDraft,
  type HooksState,
  PLAIN_FLAGS,
  type ReceptacleForm,
} from '../../../../domain/sexing/genus/profile.ts';
import { decimalFrom } from '../../../forms/reading.ts';

export const FLAGS = Object.keys(PLAIN_FLAGS) as (keyof GenusFlags)[];
export const MOST_PITFALLS = 10;
const LARGEST_CARAPACE_MM = 100;

/** A profile while it is edited. */
export interface ProfileForm {
  readonly asShipped: boolean;
  readonly forms: readonly ReceptacleForm[];
  readonly receptacles: string;
  readonly hooks: HooksState;
  readonly hooksWords: string;
  /** Each with what it rested on before; null for one that is new. One left empty goes. */
  readonly pitfalls: readonly { readonly words: string; readonly before: GenusProfileDraft['pitfalls'][number] | null }[];
  readonly adult: string;
  readonly flags: GenusFlags;
  readonly note: string;
  /** Null until another name is given than that of whoever uses this window. */
  readonly by: string | null;
}

export function formOf({ receptacles, hooks, pitfalls, adultCarapaceMm, flags }: GenusProfile): ProfileForm {
  return {
    asShipped: false,
    forms: receptacles.forms,
    receptacles: receptacles.words,
    hooks: hooks.state,
    hooksWords: hooks.words,
    pitfalls: pitfalls.map((before) => ({ words: before.words, before })),
    adult: adultCarapaceMm === null ? '' : String(adultCarapaceMm),
    flags,
    note: '',
    by: null,
  };
}

/** What has to be put right, by field. */
export function errorsIn({ adult, note, by }: ProfileForm): Readonly<Record<string, string>> {
  const length = decimalFrom(adult);
  return {
    ...(adult.trim() !== '' &&
      !(length > 0 && length <= LARGEST_CARAPACE_MM) && { adult: `A length in millimeters, above 0 and up to ${LARGEST_CARAPACE_MM}.` }),
    ...(note.trim() === '' && { note: 'Say why: others will read this profile.' }),
    ...((by ?? '').trim() === '' && { by: 'Say who changes it.' }),
  };
}

/** Only the cells that were changed rest on the keeper's word from now on. */
export function draftFrom(form: ProfileForm, before: GenusProfile): GenusProfileDraft {
  const keeper = { kind: 'keeper' as const, note: form.note.trim() };
  const formsChanged = form.receptacles.trim() !== before.receptacles.words || form.forms.join() !== before.receptacles.forms.join();
  const hooksChanged = form.hooks !== before.hooks.state || form.hooksWords.trim() !== before.hooks.words;
  const flagsChanged = FLAGS.some((flag) => form.flags[flag] !== before.flags[flag]);
  return {
    receptacles: {
      forms: [...form.forms],
      words: form.receptacles.trim(),
      basis: formsChanged ? keeper : before.receptacles.basis,
    },
    hooks: { state: form.hooks, words: form.hooksWords.trim(), basis: hooksChanged ? keeper : before.hooks.basis },
    pitfalls: form.pitfalls.flatMap(({ words, before: earlier }) => {
      const said = words.trim();
      if (said === '') return [];
      return [earlier?.words === said ? earlier : { words: said, basis: keeper }];
    }),
    flags: form.flags,
    flagsBasis: flagsChanged ? keeper : before.flagsBasis,
    adultCarapaceMm: form.adult.trim() === '' ? null : decimalFrom(form.adult),
    earlyColorBasis: before.earlyColorBasis,
  };
}
