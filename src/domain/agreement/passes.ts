import { z } from 'zod';
import type { Quantity } from '../measuring/quantity.ts';
import { Agreement, limitsOfAgreement } from './limitsOfAgreement.ts';
import { TechnicalError, technicalErrorOf } from './technicalError.ts';

/** Sizes that are read alike, so that their errors may be pooled. */
export const SizeKind = z.enum(['carapace-length', 'carapace-width', 'leg', 'segment', 'span']).meta({ id: 'SizeKind' });
export type SizeKind = z.infer<typeof SizeKind>;

/** How well passes over the same photos agree, in mm. */
export const PassAgreement = z
  .object({
    within: z
      .array(
        z.object({
          observer: z.string(),
          kind: SizeKind,
          error: TechnicalError,
          things: z.int().describe('Sizes that this observer read more than once on one photo'),
        }),
      )
      .describe('Repeats of one observer'),
    between: z
      .array(z.object({ first: z.string(), second: z.string(), kind: SizeKind, agreement: Agreement }))
      .describe('Means of two observers on the same sizes, first minus second'),
  })
  .meta({ id: 'PassAgreement' });
export type PassAgreement = z.infer<typeof PassAgreement>;

/** What one pass over a photo gives. */
export interface MeasuredPass {
  readonly photoId: string;
  readonly observer: string;
  readonly quantities: readonly Pick<Quantity, 'name' | 'unit' | 'estimate'>[];
}

/** All values, mm, that one observer read of one size on one photo. */
interface Row {
  readonly observer: string;
  readonly kind: SizeKind;
  /** The size and the photo. */
  readonly thing: string;
  readonly valuesMm: number[];
}

/** The error of each observer's repeats and the agreement of every two observers, by kind of size. */
export function agreementOfPasses(passes: readonly MeasuredPass[]): PassAgreement {
  const rows = rowsOf(passes);
  const within = [...Map.groupBy(rows, ({ observer, kind }) => JSON.stringify([observer, kind])).values()].flatMap((own) => {
    const repeated = own.filter(({ valuesMm }) => valuesMm.length > 1);
    const [first] = repeated;
    const error = technicalErrorOf(repeated.map(({ valuesMm }) => valuesMm));
    return first && error ? [{ observer: first.observer, kind: first.kind, error, things: repeated.length }] : [];
  });
  const observers = [...new Set(rows.map(({ observer }) => observer))].toSorted();
  const between = observers.flatMap((first, index) =>
    observers.slice(index + 1).flatMap((second) =>
      SizeKind.options.flatMap((kind) => {
        const agreement = limitsOfAgreement(pairsOf(rows, kind, first, second));
        return agreement ? [{ first, second, kind, agreement }] : [];
      }),
    ),
  );
  return { within, between };
}

function rowsOf(passes: readonly MeasuredPass[]): Row[] {
  const rows = new Map<string, Row>();
  for (const { photoId, observer, quantities } of passes) {
    for (const { name, unit, estimate } of quantities) {
      const kind = unit === 'mm' ? kindOf(name) : null;
      if (kind === null) continue;
      const thing = JSON.stringify([photoId, name]);
      const key = JSON.stringify([observer, thing]);
      const row = rows.get(key) ?? { observer, kind, thing, valuesMm: [] };
      row.valuesMm.push(estimate.value);
      rows.set(key, row);
    }
  }
  return [...rows.values()];
}

function pairsOf(rows: readonly Row[], kind: SizeKind, first: string, second: string): [number, number][] {
  const meansBy = (observer: string) =>
    new Map(rows.filter((row) => row.observer === observer && row.kind === kind).map(({ thing, valuesMm }) => [thing, meanOf(valuesMm)]));
  const theirs = meansBy(second);
  return [...meansBy(first)].flatMap(([thing, mean]): [number, number][] => {
    const their = theirs.get(thing);
    return their === undefined ? [] : [[mean, their]];
  });
}

function kindOf(name: string): SizeKind | null {
  if (name === 'carapace-length' || name === 'carapace-width') return name;
  if (name.startsWith('span-')) return 'span';
  if (!name.startsWith('leg-')) return null;
  return name.split('-').length > 2 ? 'segment' : 'leg';
}

function meanOf(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}
