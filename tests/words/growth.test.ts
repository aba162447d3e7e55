import { describe, expect, it } from 'vitest';
import { findingsOf, type GrowthFinding } from '../../src/domain/growth/findings.ts';
import { buildLadder, type MoltOnRecord } from '../../src/domain/growth/ladder.ts';
import { measuredSteps } from '../../src/domain/growth/measuredStep.ts';
import { checkMissedMolts } from '../../src/domain/growth/missed/missedMolts.ts';
import { findingInWords, maturityInWords, missedInWords } from '../../src/words/growth.ts';
import { rungName } from '../../src/words/ladder.ts';
import { moltOn } from '../domain/growth/skins.ts';
import { beliefOfLadder } from '../support/believedGrowth.ts';

function saidOf(...molts: MoltOnRecord[]) {
  const ladder = buildLadder(molts);
  const { rungs } = ladder;
  const nameOf = (moltId: string) => {
    const rung = rungs.find((candidate) => candidate.moltId === moltId);
    if (!rung) throw new Error(`expected ${moltId} among the rungs`);
    return rungName(rung);
  };
  return {
    odd: findingsOf(
      rungs,
      molts.map(({ molt }) => molt),
      '2026-01-01',
    ).map((finding) => findingInWords(finding, nameOf)),
    missed: checkMissedMolts(measuredSteps(rungs), beliefOfLadder(ladder).steps).map((check) => ({
      check,
      words: missedInWords(check, nameOf),
    })),
  };
}

describe('findingInWords', () => {
  it('asks which of a day and a number is wrong where they contradict each other', () => {
    const { odd } = saidOf(moltOn('2024-01-01', 8, 5), moltOn('2024-06-01', 5, 6.5), moltOn('2025-01-01', null, 8.4));
    expect(odd[0]?.odd).toMatch(/^The instars noted at .* do not fit the order of their days\.$/);
    expect(odd[0]?.ask).toContain('follows the days alone');
  });

  it('asks about a shrinking carapace by the names of both instars', () => {
    const { odd } = saidOf(moltOn('2024-01-01', 5, 6), moltOn('2024-06-01', 6, 5), moltOn('2025-01-01', 7, 6.5));
    expect(odd.map((words) => words.odd)).toContain('From instar 5 to instar 6 the carapace shrinks, to 0.83 times its length.');
    expect(odd.find((words) => words.odd.includes('shrinks'))?.ask).toMatch(/Is the scale right\?/);
  });

  it.each([
    ['no skin', [moltOn('2024-01-01', 5, null)], 'No skin has a carapace length yet.'],
    ['one skin', [moltOn('2024-01-01', 5, 4)], 'One skin is measured so far.'],
    ['two skins', [moltOn('2024-01-01', 5, 4), moltOn('2024-06-01', 6, 5)], 'Two skins are measured so far.'],
    ['a molt of tomorrow', [moltOn('2026-02-01', 5, 4)], 'Instar 5 is dated 1 Feb 2026, which has not come yet.'],
    [
      'two molts on a day',
      [moltOn('2024-01-01', 5, 4), moltOn('2024-01-01', 6, 5)].map((molt, index) => ({ ...molt, molt: { ...molt.molt, id: `m${index}` } })),
      'Instar 5 and instar 6 were both shed on 1 Jan 2024.',
    ],
  ])('says plainly what a row with %s leaves open', (_, molts, sentence) => {
    expect(saidOf(...molts).odd.map((words) => words.odd)).toContain(sentence);
  });

  it('never lets a number that is none through', () => {
    const kinds: GrowthFinding[] = [
      { kind: 'no-interval' },
      { kind: 'absurd-ratio', earlierMoltId: 'a', laterMoltId: 'b', perInstar: 4.2 },
      { kind: 'dates-out-of-order', earlierMoltId: 'a', laterMoltId: 'b' },
      { kind: 'equal-sizes', earlierMoltId: 'a', laterMoltId: 'b' },
      { kind: 'place-unknown', moltIds: ['a', 'b'] },
    ];
    for (const kind of kinds) {
      const { odd, ask } = findingInWords(kind, (id) => `Instar ${id}`);
      expect(`${odd} ${ask}`).not.toMatch(/NaN|undefined|null/);
    }
  });
});

describe('missedInWords', () => {
  it('calls a clear rise and fall likely, with the chance and the classical criterion', () => {
    const sizes = [4, 5, 6.25, 9.77, 12.2, 15.26];
    const { missed } = saidOf(...sizes.map((size, index) => moltOn(`202${index}-01-01`, index + 3, size, 0.02)));
    const flagged = missed.filter(({ check }) => check.suggestedSkipped > 0);
    expect(flagged.map(({ words }) => words.title)).toEqual(['Likely: a missed molt between instar 5 and instar 6']);
    expect(flagged[0]?.words.grounds).toMatch(/Chance of at least one missing molt: \d+ %\. By Crosby's criterion/);
  });
});

describe('irregular growth in words', () => {
  it('names no chance that rounds to nothing', () => {
    // Sizes as published of a complete series (Lourenco WR, Goodman SM 2006, Zool. Anz. 244:181-185: Grosphus hirtus, males).
    const { missed } = saidOf(...[1.4, 2, 2.5, 3.2, 3.7, 4.6].map((size, index) => moltOn(`202${index}-01-01`, index + 1, size, 0.01)));
    const irregular = missed.filter(({ check }) => check.verdict === 'irregular');
    expect(irregular).not.toHaveLength(0);
    for (const { words } of irregular) expect(words.grounds).toContain('Grosphus hirtus (−13 %)');
    for (const { words } of missed) expect(words.grounds).not.toContain(' 0 %.');
    for (const { check, words } of irregular) {
      if ((check.probabilities[0] ?? 0) > 0.995) expect(words.grounds).toContain('A missing molt is very unlikely.');
    }
  });
});

describe('maturityInWords', () => {
  it('asks and does not tell', () => {
    expect(maturityInWords({ legsGainedPercent: 14.2, waitedDays: null, longestIntervalDays: null })).toMatch(
      /^Could this be a mature male\? The reasons to ask: leg I gained 14 %/,
    );
  });
});
