import { describe, expect, it } from 'vitest';
import type { LiveSign } from '../../../../../src/domain/sexing/live/liveSign.ts';
import { conflictSides } from '../../../../../src/renderer/pages/examination/record/conflictSides.ts';
import { determination } from '../../../../domain/sexing/readings.ts';

const sign = (part: Pick<LiveSign, 'id' | 'finding'> & Partial<LiveSign>): LiveSign => ({
  ...{ specimenId: 'specimen-1', seenOn: '2026-05-30', observer: 'Jo Quill', photoIds: [], notes: '' },
  ...{ signedAt: '2026-05-30T10:00:00.000Z', withdrawn: null },
  ...part,
});
const BULBS = sign({ id: 'bulbs', finding: { kind: 'palpal-bulbs', seen: true, ultimateMoltId: null } });
const GUESS = sign({ id: 'guess', finding: { kind: 'impression', from: 'build', towards: 'male' } });
const female = determination({ id: 'f', sex: 'female', level: 'strong' });

const idsOf = (...given: Parameters<typeof conflictSides>) =>
  conflictSides(...given).sides.map(({ sex, readings, signs }) => [sex, [...readings, ...signs].map(({ id }) => id)]);

describe('the sides of a contradiction', () => {
  it('name the signs of the animal beside the skins they stand against', () => {
    expect(idsOf([female], [BULBS])).toEqual([
      ['female', ['f']],
      ['male', ['bulbs']],
    ]);
    expect(conflictSides([female], [BULBS]).bulbsSeen).toBe(true);
  });

  it('name two signs of the animal where no skin was read', () => {
    expect(idsOf([], [BULBS, sign({ id: 'sac', finding: { kind: 'egg-sac', fertile: 'no' } })])).toEqual([
      ['female', ['sac']],
      ['male', ['bulbs']],
    ]);
  });

  it('leave out a leaning beside anything firm, and what was withdrawn', () => {
    const withdrawn = { at: '2026-06-01T10:00:00.000Z', reason: 'A slip.' };
    const male = determination({ id: 'm', sex: 'male', level: 'probable' });
    const { sides, bulbsSeen } = conflictSides([female, male], [GUESS, { ...BULBS, withdrawn }]);
    expect(sides.map(({ signs }) => signs)).toEqual([[], []]);
    expect(bulbsSeen).toBe(false);
  });
});
