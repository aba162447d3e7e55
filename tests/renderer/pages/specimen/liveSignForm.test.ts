import { describe, expect, it } from 'vitest';
import { LiveSignDraft } from '../../../../src/domain/sexing/live/liveSign.ts';
import { blankSign, type LiveSignForm, readSign } from '../../../../src/renderer/pages/specimen/live/liveSignForm.ts';

const form = (changes: Partial<LiveSignForm>): LiveSignForm => ({ ...blankSign('2026-11-25', 'Ilse Brandmeier'), ...changes });

describe('a sign of the animal as it is filled in', () => {
  it.each<[string, Partial<LiveSignForm>, object]>([
    ['bulbs with their molt', { ultimateMoltId: 'molt-3' }, { kind: 'palpal-bulbs', seen: true, ultimateMoltId: 'molt-3' }],
    [
      'no bulbs, which no molt brought',
      { seen: 'no', ultimateMoltId: 'molt-3' },
      { kind: 'palpal-bulbs', seen: false, ultimateMoltId: null },
    ],
    ['no hooks', { kind: 'tibial-hooks', seen: 'no' }, { kind: 'tibial-hooks', seen: false }],
    ['a sperm web', { kind: 'sperm-web' }, { kind: 'sperm-web' }],
    ['an egg sac', { kind: 'egg-sac', fertile: 'no' }, { kind: 'egg-sac', fertile: 'no' }],
    ['a look from below', { kind: 'ventral-fusillae', legSpan: '61,5' }, { kind: 'ventral-fusillae', seen: true, legSpanMm: 61.5 }],
    ['an impression', { kind: 'impression', from: 'seller', towards: 'male' }, { kind: 'impression', from: 'seller', towards: 'male' }],
  ])('becomes a draft the archive takes: %s', (_, changes, finding) => {
    const { draft } = readSign(form(changes));
    expect(draft?.finding).toEqual(finding);
    expect(LiveSignDraft.parse(draft)).toEqual(draft);
  });

  it.each<[string, Partial<LiveSignForm>, string]>([
    ['without a day', { seenOn: '' }, 'seenOn'],
    ['seen by nobody', { observer: ' ' }, 'observer'],
    ['of no length', { kind: 'ventral-fusillae', legSpan: 'large' }, 'legSpan'],
    ['of a length beyond all animals', { kind: 'ventral-fusillae', legSpan: '501' }, 'legSpan'],
  ])('is refused %s', (_, changes, field) => {
    const { draft, errors } = readSign(form(changes));
    expect(draft).toBeNull();
    expect(Object.keys(errors ?? {})).toEqual([field]);
  });
});
