import { describe, expect, it } from 'vitest';
import type { Determination, Level, Sex } from '../../../src/domain/sexing/determination.ts';
import { fatesOf } from '../../../src/domain/sexing/later.ts';
import type { LiveSign } from '../../../src/domain/sexing/live/liveSign.ts';
import { contradictionsOf, opposedTo, signOf, signsAgainst } from '../../../src/domain/sexing/sign.ts';
import { CLEAR_FEMALE, determination } from './readings.ts';

const WITHDRAWN = { at: '2026-06-01T12:00:00.000Z', reason: 'skins mixed up' };

function read(id: string, sex: Sex, level: Level | null, changes: Partial<Determination> = {}): Determination {
  return determination({ id, sex, level, ...changes });
}

describe('the sign of an animal', () => {
  it('is unsexed without determinations', () => {
    expect(signOf([], [])).toEqual({ sex: 'unsexed', level: null, conflict: false });
  });

  it('is unsexed when every reading left it open', () => {
    expect(signOf([read('a', 'unsexed', null)], [])).toEqual({ sex: 'unsexed', level: null, conflict: false });
  });

  it('takes the best level of the sex named, and an open reading takes nothing away', () => {
    const history = [
      read('a', 'female', 'probable'),
      read('b', 'female', 'strong'),
      read('c', 'unsexed', null),
      read('d', 'female', 'leaning'),
    ];
    expect(signOf(history, [])).toEqual({ sex: 'female', level: 'strong', conflict: false });
  });

  it('never adds levels up: two probable readings stay probable', () => {
    expect(signOf([read('a', 'male', 'probable'), read('b', 'male', 'probable')], []).level).toBe('probable');
  });

  it('does not count a withdrawn reading', () => {
    const history = [read('a', 'male', 'established', { withdrawn: WITHDRAWN }), read('b', 'female', 'probable')];
    expect(signOf(history, [])).toEqual({ sex: 'female', level: 'probable', conflict: false });
  });

  it('does not count a corrected reading', () => {
    const history = [read('a', 'male', 'probable'), read('b', 'female', 'strong', { supersedes: 'a' })];
    expect(signOf(history, [])).toEqual({ sex: 'female', level: 'strong', conflict: false });
  });

  it('does not bring a corrected reading back when its correction is withdrawn', () => {
    const history = [read('a', 'male', 'probable'), read('b', 'female', 'strong', { supersedes: 'a', withdrawn: WITHDRAWN })];
    expect(signOf(history, [])).toEqual({ sex: 'unsexed', level: null, conflict: false });
  });
});

describe('a contradiction', () => {
  it('is never averaged: the animal is unsexed and in conflict, whatever the levels', () => {
    const history = [read('a', 'male', 'probable'), read('b', 'female', 'established')];
    expect(signOf(history, [])).toEqual({ sex: 'unsexed', level: null, conflict: true });
    expect(contradictionsOf(history, []).map(({ id }) => id)).toEqual(['a', 'b']);
  });

  it('does not depend on the order of the readings', () => {
    const history = [read('a', 'male', 'probable'), read('b', 'female', 'strong'), read('c', 'female', 'probable')];
    expect(signOf(history.toReversed(), [])).toEqual(signOf(history, []));
  });

  it('stands between two leanings as well', () => {
    expect(signOf([read('a', 'male', 'leaning'), read('b', 'female', 'leaning')], []).conflict).toBe(true);
  });

  it('is not made by a leaning from a small skin that a firm reading has overtaken', () => {
    const history = [read('a', 'male', 'leaning'), read('b', 'female', 'probable')];
    expect(signOf(history, [])).toEqual({ sex: 'female', level: 'probable', conflict: false });
    expect(contradictionsOf(history, [])).toEqual([]);
  });

  it('ends when one side is withdrawn', () => {
    const history = [read('a', 'male', 'strong', { withdrawn: WITHDRAWN }), read('b', 'female', 'strong')];
    expect(signOf(history, []).conflict).toBe(false);
  });
});

describe('what a reading tells of the animal itself', () => {
  const bulbs = { ...CLEAR_FEMALE, palpalBulbsOnAnimal: 'yes' } as const;

  it('counts whatever the reading concludes: bulbs contradict a female, and make a male of an animal that was left unsexed', () => {
    const female = read('a', 'female', 'strong');
    const open = read('b', 'unsexed', null, { exuviaId: 'skin-2', checklist: bulbs });
    expect(signOf([female, open], [])).toEqual({ sex: 'unsexed', level: null, conflict: true });
    expect(contradictionsOf([female, open], []).map(({ id }) => id)).toEqual(['a', 'b']);
    expect(opposedTo(female, [female, open])).toEqual([open]);
    expect(signOf([open], [])).toEqual({ sex: 'male', level: 'strong', conflict: false });
    expect(fatesOf([female, open], [])[0]).toMatchObject({ fate: 'contradicted', by: ['b'] });
    const sac = read('c', 'unsexed', null, { checklist: { ...CLEAR_FEMALE, eggSacLaid: 'yes' } });
    expect(signOf([read('d', 'male', 'strong'), sac], []).conflict).toBe(true);
  });
});

describe('the readings on the other side', () => {
  it('are named for a leaning against a firm reading too, though the rule calls that no contradiction', () => {
    const leaning = read('a', 'male', 'leaning');
    const strong = read('b', 'female', 'strong');
    const history = [leaning, strong, read('c', 'unsexed', null)];
    expect(contradictionsOf(history, [])).toEqual([]);
    expect(opposedTo(leaning, history)).toEqual([strong]);
    expect(opposedTo(strong, history)).toEqual([leaning]);
  });

  it('are none for one that is open or no longer stands, and never one that no longer stands', () => {
    const withdrawn = read('a', 'male', 'strong', { withdrawn: WITHDRAWN });
    const standing = read('b', 'female', 'strong');
    const open = read('c', 'unsexed', null);
    const history = [withdrawn, standing, open];
    expect(history.map((determination) => opposedTo(determination, history))).toEqual([[], [], []]);
  });
});

describe('signs of the animal on the other side', () => {
  const bulbs: LiveSign = {
    ...{ id: 'b', specimenId: 'specimen-1', seenOn: '2026-06-01', observer: 'Jo Quill', photoIds: [], notes: '' },
    ...{ finding: { kind: 'palpal-bulbs', seen: true, ultimateMoltId: null }, signedAt: '2026-06-01T10:00:00.000Z', withdrawn: null },
  };

  // A sperm web observed together with bulbs establishes a male: a judgment of ours, as every level is.
  it('establish a male by bulbs and a sperm web together, neither of which does so without a photo', () => {
    const web: LiveSign = { ...bulbs, id: 'w', finding: { kind: 'sperm-web' } };
    const signs = [[bulbs], [web], [bulbs, web], [bulbs, { ...web, withdrawn: WITHDRAWN }]];
    expect(signs.map((liveSigns) => signOf([], liveSigns).level)).toEqual(['strong', 'probable', 'established', 'strong']);
    const without: LiveSign = { ...bulbs, finding: { kind: 'palpal-bulbs', seen: false, ultimateMoltId: null } };
    expect(signOf([], [without, web]).level).toBe('probable');
    expect(signOf([read('f', 'female', 'probable')], [bulbs, web]).conflict).toBe(true);
  });

  it('are named beside the reading they contradict, and not beside one they agree with or that only leans', () => {
    const [firm, agreeing, leaning] = [read('f', 'female', 'probable'), read('m', 'male', 'probable'), read('l', 'female', 'leaning')];
    const onRecord = { determinations: [firm, agreeing, leaning], liveSigns: [bulbs] };
    expect([firm, agreeing, leaning].map((one) => signsAgainst(one, onRecord))).toEqual([[bulbs], [], []]);
    expect(signsAgainst(firm, { ...onRecord, liveSigns: [{ ...bulbs, withdrawn: WITHDRAWN }] })).toEqual([]);
  });
});
