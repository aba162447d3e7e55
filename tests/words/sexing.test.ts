import { describe, expect, it } from 'vitest';
import { PLAIN_FLAGS } from '../../src/domain/sexing/genus/profile.ts';
import { LevelReason } from '../../src/domain/sexing/reason.ts';
import { CAUTION_TOPICS, CAUTIONS } from '../../src/words/cautions.ts';
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

  it('send eyes to an ophthalmologist without rubbing, and bites to medical care', () => {
    expect(CAUTIONS.eyes.text).toMatch(/Do not rub\. Rinse.*ophthalmologist/);
    expect(CAUTIONS.bites.text).toContain('Seek medical care');
  });
});
