import { describe, expect, it } from 'vitest';
import { PLAIN_FLAGS } from '../../src/domain/sexing/genus/profile.ts';
import { LevelReason } from '../../src/domain/sexing/reason.ts';
import { CAUTION_TOPICS, CAUTIONS, HANDS_CAUTION, RECOVER_HOW } from '../../src/words/cautions.ts';
import { genusWarnings } from '../../src/words/genus.ts';
import { NEED_WORDS, needsInWords } from '../../src/words/sexing.ts';

describe('what a level still needs, in words', () => {
  it('never shows a code', () => {
    for (const reason of LevelReason.options) expect(NEED_WORDS[reason]).not.toContain(reason);
  });

  it('names the two nearest ways', () => {
    expect(needsInWords([['egg-sac-not-laid'], ['size-unknown', 'second-skin-missing'], ['grade-below-a']])).toBe(
      'an egg sac laid; or the leg span or the carapace of this skin and another skin that shows the same as clearly',
    );
  });
});

describe('warnings of a genus', () => {
  it.each(['withoutSpermathecae', 'maleAccessoryOrgans', 'weaklySclerotized', 'formChangesWithAge'] as const)(
    'stand beside one that is %s',
    (flag) => {
      expect(genusWarnings({ ...PLAIN_FLAGS, [flag]: true })).toHaveLength(1);
    },
  );

  it('are not needed for a plain genus', () => {
    expect(genusWarnings(PLAIN_FLAGS)).toEqual([]);
  });
});

describe('cautions', () => {
  it('never promise safety and never tell anybody to pull', () => {
    const words = CAUTION_TOPICS.map((topic) => `${CAUTIONS[topic].title} ${CAUTIONS[topic].text}`).join(' ');
    expect(words).not.toMatch(/\b(harmless|no risk|completely safe|pull)\b/i);
  });

  it('say at every step with a skin in hand what to wear and what not to do (sexing.md 1.9; care.md 7)', () => {
    for (const said of [CAUTIONS.setae.text, HANDS_CAUTION])
      for (const part of [/gloves/i, /closed eye protection/, /filter mask/, /work wet/i, /hands off (your|the) face/])
        expect(said).toMatch(part);
    expect(HANDS_CAUTION).toMatch(/do not rub, rinse with plenty of water, see an ophthalmologist/);
    expect(RECOVER_HOW).toMatch(/without touching the animal.*left the skin by itself.*long forceps and gloves/);
  });

  it('send eyes to an ophthalmologist without rubbing, and bites to medical care', () => {
    expect(CAUTIONS.eyes.text).toMatch(/Do not rub\. Rinse.*ophthalmologist/);
    expect(CAUTIONS.bites.text).toContain('Seek medical care');
  });
});
