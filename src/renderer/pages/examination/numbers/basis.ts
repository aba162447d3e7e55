import type { ShownNumber } from '../../../../domain/sexing/evidence/model.ts';

/** What a number rests on: "judgement", "source: …", or that a keeper set it and what was shipped. */
export function basisOf({ basis, shipped }: Pick<ShownNumber, 'basis' | 'shipped'>): string {
  if (basis === 'judgement') return 'Judgment';
  if (basis === 'keeper') return `Set here; shipped as ${shipped}`;
  return `Source: ${basis.source}`;
}
