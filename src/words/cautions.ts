/** Matters a keeper is cautioned about where they can do harm. */
export const CAUTION_TOPICS = ['setae', 'eyes', 'asthma', 'solvents', 'animal', 'bites', 'law'] as const;
export type CautionTopic = (typeof CAUTION_TOPICS)[number];

export interface CautionWords {
  title: string;
  text: string;
}

/** Calm, short, and never more than a keeper can be told by a program: people who know come first. */
export const CAUTIONS: Readonly<Record<CautionTopic, CautionWords>> = {
  setae: {
    title: 'Skins keep their urticating setae',
    text: 'So do the mats on which New World species molt, and dry skins shed them when handled. Wear gloves, closed eye protection and, for dry skins, a filter mask. Work wet, blow or brush nothing dry, wipe the table damp, and keep your hands off your face until they are washed.',
  },
  eyes: {
    title: 'Something in the eye',
    text: 'Do not rub. Rinse with plenty of water and see an ophthalmologist, even if it seems to get better; say that barbed hairs may be in the eye.',
  },
  asthma: {
    title: 'Asthma or a known sensitivity',
    text: 'Leave dry skins to somebody else. Skins of Old World species carry no urticating setae, but dry skin is dust all the same.',
  },
  solvents: {
    title: 'The alcohol used for softening catches fire',
    text: 'No flame, fresh air, and the cap back on. Water with a drop of dish soap is usually enough. Never mix cleaning chemicals.',
  },
  animal: {
    title: 'The animal comes first',
    text: 'No handling before, during or after a molt until it has hardened; take the skin only when it is free and the animal well away from it. What this program says about times and signs is no diagnosis: ask a veterinarian for exotic animals when something looks wrong.',
  },
  bites: {
    title: 'Bites',
    text: 'Bites of some Old World species need medical advice. Seek medical care; this program cannot give it.',
  },
  law: {
    title: 'Crossing a border',
    text: 'Species protection law (CITES) and local rules can apply to skins too. Ask the authority of your country before sending one abroad; where local rules are stricter than what stands here, they hold.',
  },
};

/** Wherever somebody is about to fetch a skin. */
export const RECOVER_CAUTION = 'Take the skin only when the animal is well away from it, and without touching the animal.';

/** Where a skin that was just taken is put on record. */
export const RECOVER_HOW = `${RECOVER_CAUTION} Wait until it has left the skin by itself; use long forceps and gloves, and hold the skin by a leg.`;

/** Wherever a skin is in somebody's hands; the whole of it stands where the skin is made ready. */
export const HANDS_CAUTION =
  'While the skin is in your hands: gloves, closed eye protection, and a filter mask once it is dry; work wet, blow and brush nothing away, hands off your face. Something in the eye: do not rub, rinse with plenty of water, see an ophthalmologist.';
