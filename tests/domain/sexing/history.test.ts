import { describe, expect, it } from 'vitest';
import type { FailureCode } from '../../../src/domain/failure.ts';
import { darwinCoreSexOf } from '../../../src/domain/sexing/darwinCore.ts';
import { fatesOf } from '../../../src/domain/sexing/later.ts';
import { checkLiveSign } from '../../../src/domain/sexing/live/checkLiveSign.ts';
import { type LiveSign, LiveSignDraft, ultimateMoltOf } from '../../../src/domain/sexing/live/liveSign.ts';
import { signOf } from '../../../src/domain/sexing/sign.ts';
import { determination } from './readings.ts';

function live(finding: LiveSign['finding'], changes: Partial<LiveSign> = {}): LiveSign {
  const signed = { id: 'live', specimenId: 's', signedAt: '2026-08-01T12:00:00.000Z', withdrawn: null };
  return { ...signed, finding, seenOn: '2026-08-01', observer: 'K', photoIds: [], notes: '', ...changes };
}
const BULBS = { kind: 'palpal-bulbs', seen: true, ultimateMoltId: 'molt-9' } as const;

describe('the sign of an animal', () => {
  it('follows from signs of the animal as from skins', () => {
    expect(signOf([], [live(BULBS, { photoIds: ['p'] })])).toEqual({ sex: 'male', level: 'established', conflict: false });
    expect(signOf([], [live(BULBS)])).toMatchObject({ level: 'strong' });
    expect(signOf([], [live({ kind: 'egg-sac', fertile: 'no' })])).toMatchObject({ sex: 'female', level: 'established' });
  });

  it('says nothing for hooks that are not there', () => {
    expect(signOf([], [live({ kind: 'tibial-hooks', seen: false }, { hooksSpeak: true })]).sex).toBe('unsexed');
  });

  it('says nothing for hooks of a genus whose males are not known to carry them', () => {
    const hooks = (changes: Partial<LiveSign>) => signOf([], [live({ kind: 'tibial-hooks', seen: true }, changes)]);
    expect(hooks({ hooksSpeak: true })).toEqual({ sex: 'male', level: 'probable', conflict: false });
    expect(hooks({ hooksSpeak: false }).sex).toBe('unsexed');
    expect(hooks({}).sex).toBe('unsexed');
  });

  it('is in conflict when bulbs stand against a female on skins, until "anomalous" is signed by hand', () => {
    // Laborda & Pérez-Miles 2017, J. Arachnology 45:235-237: a bilateral gynandromorph, right side female, left side male.
    const history = [determination()];
    expect(signOf(history, [live(BULBS)])).toEqual({ sex: 'unsexed', level: null, conflict: true });
    const byHand = determination({ id: 'by-hand', sex: 'anomalous', level: null });
    expect(signOf([...history, byHand], [live(BULBS)])).toEqual({ sex: 'anomalous', level: null, conflict: false });
  });

  it('gives the values of Darwin Core', () => {
    const female = { sex: 'female', conflict: false } as const;
    expect(darwinCoreSexOf({ ...female, level: 'strong' }, true)).toBe('female');
    expect(darwinCoreSexOf({ ...female, sex: 'male', level: 'established' }, true)).toBe('male');
    expect(darwinCoreSexOf({ ...female, level: 'probable' }, true)).toBe('indeterminate');
    expect(darwinCoreSexOf({ sex: 'unsexed', level: null, conflict: true }, true)).toBe('indeterminate');
    expect(darwinCoreSexOf({ sex: 'anomalous', level: null, conflict: false }, true)).toBe('indeterminate');
    expect(darwinCoreSexOf({ sex: 'unsexed', level: null, conflict: false }, false)).toBeNull();
  });
});

describe('what becomes of a determination', () => {
  const first = determination({ id: 'first', signedAt: '2026-05-02T18:00:00.000Z' });
  const later = (changes: Parameters<typeof determination>[0]) =>
    determination({ id: 'later', exuviaId: 'skin-2', signedAt: '2026-06-02T18:00:00.000Z', ...changes });
  const fate = (...all: Parameters<typeof fatesOf>) => fatesOf(...all)[0];

  it.each([
    ['stands', []],
    ['confirmed', [later({})]],
    ['contradicted', [later({ sex: 'male', level: 'probable' })]],
    ['contradicted', [later({ sex: 'anomalous', level: null })]],
    ['superseded', [later({ exuviaId: 'skin-1', supersedes: 'first' })]],
    ['stands', [later({ exuviaId: 'skin-1' })]],
    ['stands', [later({ sex: 'male', level: 'leaning' })]],
    ['stands', [later({ withdrawn: { at: '2026-07-01T00:00:00.000Z', reason: 'x' } })]],
  ] as const)('%s', (expected, others) => expect(fate([first, ...others], [])?.fate).toBe(expected));

  it('bulbs contradict a female, an egg sac confirms her', () => {
    expect(fate([first], [live(BULBS)])).toEqual({ determinationId: 'first', fate: 'contradicted', by: ['live'] });
    expect(fate([first], [live({ kind: 'egg-sac', fertile: 'yes' })])?.fate).toBe('confirmed');
  });
});

describe('a clock that was set back', () => {
  const first = determination({ id: 'first', signedAt: '2026-05-02T18:00:00.000Z' });
  const second = determination({ id: 'second', exuviaId: 'skin-2', sex: 'male', level: 'probable', signedAt: '2019-01-01T18:00:00.000Z' });

  it('changes nothing: what was signed later, by the order of the archive, speaks of what was signed before', () => {
    expect(fatesOf([first, second], []).map(({ fate, by }) => [fate, by])).toEqual([
      ['contradicted', ['second']],
      ['stands', []],
    ]);
  });

  it('leaves signs of the animal to the day they were seen, and lets a proof contradict whenever it was seen', () => {
    const web = (seenOn: string) => live({ kind: 'sperm-web' }, { seenOn, signedAt: '2019-01-01T18:00:00.000Z' });
    const fate = (sign: LiveSign) => fatesOf([first], [sign])[0]?.fate;
    expect([fate(web('2026-05-02')), fate(web('2026-05-01'))]).toEqual(['contradicted', 'stands']);
    expect(fate(live(BULBS, { seenOn: '2025-05-02' }))).toBe('contradicted');
    expect(fate(live({ kind: 'egg-sac', fertile: 'yes' }, { seenOn: '2025-05-02' }))).toBe('stands');
  });
});

describe('a sign of the animal', () => {
  const context = {
    today: '2026-11-25',
    hatchedOn: '2023-05-01',
    molts: [{ id: 'molt-9', happenedFrom: '2026-07-01' }],
    animalPhotoIds: new Set(['portrait']),
  };
  const draft: LiveSignDraft = { finding: BULBS, seenOn: '2026-08-01', observer: 'K', photoIds: ['portrait'], notes: '' };

  it('is taken as it is, and tells the ultimate molt', () => {
    expect(checkLiveSign(draft, context)).toEqual({ ok: true, value: draft });
    expect(ultimateMoltOf([live(BULBS)])).toBe('molt-9');
    expect(ultimateMoltOf([live(BULBS, { withdrawn: { at: '2026-09-01T00:00:00.000Z', reason: 'x' } })])).toBeNull();
  });

  it.each<[FailureCode, LiveSignDraft]>([
    ['date-in-future', { ...draft, seenOn: '2026-11-26' }],
    ['date-before-hatching', { ...draft, seenOn: '2023-04-30' }],
    ['date-too-early', { ...draft, seenOn: '1949-12-31' }],
    ['photo-not-of-animal', { ...draft, photoIds: ['a photo of a skin'] }],
    ['not-found', { ...draft, finding: { ...BULBS, ultimateMoltId: 'of another animal' } }],
    ['bulbs-before-molt', { ...draft, seenOn: '2026-06-30' }],
  ])('is refused: %s', (code, wrong) => expect(checkLiveSign(wrong, context)).toMatchObject({ ok: false, failure: { code } }));

  it('names no ultimate molt without bulbs', () => {
    expect(LiveSignDraft.safeParse({ ...draft, finding: { ...BULBS, seen: false } }).success).toBe(false);
  });
});
