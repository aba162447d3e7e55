import { describe, expect, test } from 'vitest';
import { checkAcquisition } from '../../../src/domain/molting/acquisition.ts';
import { molts } from './molts.ts';

// That instars rise by one with every molt is common practice, no source.

const acquired = (acquiredInstar: number | null, acquiredOn: string | null = '2025-05-01') => ({ acquiredInstar, acquiredOn });

describe('the instar of an animal when it was acquired', () => {
  test.each([
    ['is the lowest that a later molt can shed', acquired(5), molts(['2025-06-01', 5]), true],
    ['may lie below it, where molts went unrecorded', acquired(3), molts(['2025-06-01', 5]), true],
    ['cannot lie above it', acquired(8), molts(['2025-06-01', 5], ['2025-10-01', 6]), false],
    ['counts later molts without a number', acquired(5), molts(['2025-06-01'], ['2025-10-01', 5]), false],
    ['lies above those shed before', acquired(6), molts(['2025-01-01', 5]), true],
    ['cannot have been shed before', acquired(5), molts(['2025-01-01', 5]), false],
    ['leaves open a molt that may have happened on the day', acquired(8), molts(['2025-04-30 to 2025-05-02', 5]), true],
    ['says nothing without its day', acquired(8, null), molts(['2025-06-01', 5]), true],
    ['says nothing where it is not known', acquired(null), molts(['2025-06-01', 5]), true],
  ])('%s', (_, acquisition, recorded, fits) => {
    expect(checkAcquisition(acquisition, recorded).ok).toBe(fits);
  });

  test('the failure names the molt', () => {
    expect(checkAcquisition(acquired(8), molts(['2025-06-01', 5]))).toMatchObject({
      failure: { code: 'acquired-instar-contradicted', acquiredInstar: 8, instarShed: 5, moltDate: '2025-06-01' },
    });
  });
});
