import { describe, expect, it } from 'vitest';
import type { LiveSign } from '../../../../src/domain/sexing/live/liveSign.ts';
import { outcomesOf } from '../../../../src/domain/sexing/outcomes/outcomes.ts';
import { CLEAR_FEMALE, determination } from '../readings.ts';

function live(finding: LiveSign['finding'], seenOn = '2026-08-01'): LiveSign {
  const signed = { id: `live-${finding.kind}`, specimenId: 's', signedAt: `${seenOn}T12:00:00.000Z`, withdrawn: null };
  return { ...signed, finding, seenOn, observer: 'K', photoIds: [], notes: '' };
}

const SAC = live({ kind: 'egg-sac', fertile: 'no' });
const BULBS = live({ kind: 'palpal-bulbs', seen: true, ultimateMoltId: null });

describe('the outcome log', () => {
  it('scores what was read before the proof, by method, size class and sex', () => {
    const log = outcomesOf([
      { specimenId: 'a', determinations: [determination({ id: 'a1' })], liveSigns: [SAC] },
      { specimenId: 'b', determinations: [determination({ id: 'b1' })], liveSigns: [BULBS] },
    ]);
    expect(log).toMatchObject({ provedAnimals: 2, contradictoryProofs: [] });
    expect(log.counts).toEqual([
      {
        method: 'skin-loupe',
        sizeClass: 'D',
        sex: 'female',
        right: 1,
        total: 2,
        low: expect.closeTo(0.0126, 4),
        high: expect.closeTo(0.9874, 4),
      },
    ]);
  });

  it('leaves out what was read later, what proves itself, and animals without proof', () => {
    const later = determination({ id: 'later', readOn: '2026-09-01' });
    const itself = determination({ id: 'proof', readOn: '2026-07-01', checklist: { ...CLEAR_FEMALE, eggSacLaid: 'yes' } });
    const log = outcomesOf([
      { specimenId: 'a', determinations: [itself, later], liveSigns: [SAC] },
      { specimenId: 'b', determinations: [determination()], liveSigns: [] },
      { specimenId: 'c', determinations: [determination({ sex: 'unsexed', level: null })], liveSigns: [{ ...SAC }] },
    ]);
    expect([log.counts, log.provedAnimals]).toEqual([[], 2]);
  });

  it('counts claims that were taken back: leaving them out would flatter', () => {
    const withdrawn = determination({ id: 'w', withdrawn: { at: '2026-06-01T00:00:00.000Z', reason: 'doubt' } });
    expect(outcomesOf([{ specimenId: 'a', determinations: [withdrawn], liveSigns: [BULBS] }]).counts).toMatchObject([
      { right: 0, total: 1 },
    ]);
  });

  it('counts a skin once for each sex, however often its reading was signed again', () => {
    const again = ['a1', 'a2', 'a3'].map((id, index) => determination({ id, supersedes: index === 0 ? null : `a${index}` }));
    const turned = determination({ id: 'a4', supersedes: 'a3', sex: 'male', level: 'leaning' });
    const other = determination({ id: 'b1', exuviaId: 'skin-2' });
    const { counts } = outcomesOf([{ specimenId: 'a', determinations: [...again, turned, other], liveSigns: [SAC] }]);
    expect(counts.map(({ sex, right, total }) => [sex, right, total])).toEqual([
      ['female', 2, 2],
      ['male', 0, 1],
    ]);
  });

  it('scores nothing of an animal with bulbs and an egg sac, and names it', () => {
    const log = outcomesOf([{ specimenId: 'odd', determinations: [determination()], liveSigns: [BULBS, SAC] }]);
    expect(log).toEqual({ counts: [], provedAnimals: 0, contradictoryProofs: ['odd'] });
  });

  it('hears no proof that was corrected: neither as one, nor against another', () => {
    const slip = determination({ id: 'slip', sex: 'male', level: 'strong', checklist: { ...CLEAR_FEMALE, palpalBulbsOnAnimal: 'yes' } });
    const corrected = determination({ id: 'right', supersedes: 'slip' });
    expect(outcomesOf([{ specimenId: 'a', determinations: [slip, corrected], liveSigns: [] }]).provedAnimals).toBe(0);
    const log = outcomesOf([{ specimenId: 'a', determinations: [slip, corrected], liveSigns: [SAC] }]);
    expect(log).toMatchObject({ provedAnimals: 1, contradictoryProofs: [] });
    expect(log.counts.map(({ sex, right, total }) => [sex, right, total])).toEqual([
      ['female', 1, 1],
      ['male', 0, 1],
    ]);
  });

  it('hears no withdrawn proof', () => {
    const taken = { ...BULBS, withdrawn: { at: '2026-09-01T00:00:00.000Z', reason: 'swollen palps' } };
    expect(outcomesOf([{ specimenId: 'a', determinations: [determination()], liveSigns: [taken] }]).provedAnimals).toBe(0);
  });
});
