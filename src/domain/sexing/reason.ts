import { z } from 'zod';

/** Why a level is not reached: facts about the answers given, put into words by the renderer. */
export const LevelReason = z
  .enum([
    // Whose skin, and how well it could be read
    'skin-not-matched',
    'strip-not-readable',
    'grade-below-a',
    'grade-below-b',
    'book-lungs-not-found',
    'inner-side-not-viewed',
    'outer-side-not-viewed',
    'size-unknown',
    'skin-small',
    // What was seen
    'receptacles-not-seen',
    'receptacles-not-read-as-absent',
    'uterus-externus-not-seen',
    'uterus-externus-absent',
    'accessory-organs-seen',
    'accessory-organs-not-seen',
    'fusillae-not-seen',
    'female-sign-seen',
    'male-sign-seen',
    'bulbs-not-seen',
    'bulbs-photo-missing',
    'egg-sac-not-laid',
    // What the genus allows
    'genus-without-spermathecae',
    'genus-weakly-sclerotized',
    'genus-with-accessory-organs',
    // Who else says so
    'second-reader-disagrees',
    'second-skin-missing',
    'successive-skin-missing',
    // What it all comes to
    'evidence-too-weak',
    // Given by earlier forms of the rules: what was stored then stays readable
    'leg-span-unknown',
    'leg-span-small',
    'fusillae-not-read-as-absent',
  ])
  .meta({ id: 'LevelReason' });
export type LevelReason = z.infer<typeof LevelReason>;
