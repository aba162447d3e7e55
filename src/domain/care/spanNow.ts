import { z } from 'zod';
import type { LineBasis } from '../growth/belief/lineBasis.ts';
import { sharesAt } from '../growth/belief/shares.ts';
import { carapaceNow, type GroundOfSize, SizeNow, spanNow } from '../growth/sizeNow.ts';
import type { Sex } from '../sexing/determination.ts';

/** Whose growth a size was foretold by, for the most part. */
export const GrownBy = z.enum(['own-skins', 'kin', 'any-tarantula']).meta({ id: 'GrownBy' });
export type GrownBy = z.infer<typeof GrownBy>;

/**
 * Leg span of the living animal today, with the interval it lies in. Measured on the animal, or foretold from its last
 * measured skin, which shows the instar that has ended: then nine chances in ten.
 */
export const SpanNow = z
  .object({
    spanMm: z.number().positive(),
    lowMm: z.number().positive(),
    highMm: z.number().positive(),
    from: z.discriminatedUnion('kind', [
      z.object({ kind: z.literal('animal') }),
      z.object({
        kind: z.literal('skin'),
        measured: z.enum(['leg-span', 'carapace-length']),
        ...SizeNow.pick({ lengthMm: true, moltsSince: true }).shape,
        grownBy: GrownBy,
      }),
    ]),
  })
  .meta({ id: 'SpanNow' });
export type SpanNow = z.infer<typeof SpanNow>;

/**
 * Leg I and IV together over carapace length, from described specimens of Aphonopelma madera, A. moellendorfi and Catanduba
 * araguaia (Hamilton CA, Hendrixson BE, Bond JE 2016, ZooKeys 560:1-340; Yamamoto FU, Lucas SM, Brescovit AD 2012,
 * Zootaxa 3172:1-19): 5.2 to 5.6 in females, up to 7.5 in adult males.
 */
const LEGS_PER_CARAPACE = { female: { low: 5.2, high: 5.6 }, other: { low: 5.2, high: 7.5 } } as const;

/**
 * A span also reaches over the body between those legs: up to one more carapace length, judgment. Joints that stay bent
 * take from it again, so the lower end goes without.
 */
const BODY_PER_CARAPACE = 1;

/** The span of the living animal as foretold from its skins: the one the Ladder shows, else from a carapace. Null without either. */
export function spanFromSkins(ground: GroundOfSize, sex: Sex): SpanNow | null {
  const span = spanNow(ground);
  const size = span ?? carapaceNow(ground);
  if (!size) return null;
  const legs = LEGS_PER_CARAPACE[sex === 'female' ? 'female' : 'other'];
  const { low, high } = span ? { low: 1, high: 1 } : { low: legs.low, high: legs.high + BODY_PER_CARAPACE };
  const { middleMm, low90Mm, high90Mm, lengthMm, moltsSince } = size;
  const measured = span ? 'leg-span' : 'carapace-length';
  const instar = (span ? ground.span : ground.carapace)?.instar ?? 0;
  return {
    spanMm: (middleMm * (low + high)) / 2,
    lowMm: low90Mm * low,
    highMm: high90Mm * high,
    from: { kind: 'skin', measured, lengthMm, moltsSince, grownBy: grownBy(ground.growth, instar + moltsSince.most / 2) },
  };
}

function grownBy(growth: LineBasis, along: number): GrownBy {
  const { own, prior } = sharesAt(growth, along);
  const kin = 1 - own - prior;
  if (own >= kin && own >= prior) return 'own-skins';
  return kin >= prior ? 'kin' : 'any-tarantula';
}

/** The span of an animal measured alive; a half width of as much as the span leaves at least a tenth of it. */
export function spanFromAnimal({ spanMm, plusMinusMm }: { readonly spanMm: number; readonly plusMinusMm: number }): SpanNow {
  return { spanMm, lowMm: Math.max(spanMm - plusMinusMm, spanMm / 10), highMm: spanMm + plusMinusMm, from: { kind: 'animal' } };
}
