import { describe, expect, it } from 'vitest';
import type { SpanNow } from '../../../../src/domain/care/spanNow.ts';
import { readSpan } from '../../../../src/renderer/pages/watch/spanForm.ts';

const KNOWN: SpanNow = { spanMm: 130, lowMm: 110, highMm: 150, from: { kind: 'animal' } };
const read = (spanMm: string, plusMinusMm: string, known: SpanNow | null = null) => readSpan({ spanMm, plusMinusMm }, known);

describe('a span of the living animal', () => {
  it('is taken with how far it may be off, decimals after a comma or a point', () => {
    expect(read('25,5', '2.5')).toEqual({ kind: 'read', span: { spanMm: 25.5, plusMinusMm: 2.5 }, doubt: null });
  });

  it.each(['0', '', '-1', 'no'])('is refused with “± %s”: no length is exact', (half) => {
    expect(read('25', half)).toMatchObject({ kind: 'refused', field: 'plusMinusMm', words: expect.stringContaining('No length is exact') });
  });

  it.each([
    ['0', '2', 'spanMm'],
    ['501', '2', 'spanMm'],
    ['', '2', 'spanMm'],
    ['25', '26', 'plusMinusMm'],
  ])('of %s ± %s is refused at the field that is wrong', (spanMm, half, field) => {
    expect(read(spanMm, half)).toMatchObject({ kind: 'refused', field });
  });

  it('far from what is on record is asked about, not refused', () => {
    expect(read('8', '1', KNOWN)).toMatchObject({ kind: 'read', doubt: expect.stringContaining('110 to 150 mm') });
    expect(read('400', '10', KNOWN)).toMatchObject({ kind: 'read', doubt: expect.stringContaining('note it all the same') });
    for (const usual of ['100', '130', '200']) expect(read(usual, '10', KNOWN)).toMatchObject({ kind: 'read', doubt: null });
  });
});
