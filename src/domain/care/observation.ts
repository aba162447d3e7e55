import { z } from 'zod';
import { Instant, Moment } from '../dates.ts';

/** Signs of premolt (common practice, no source). None of them proves it; lying on the back is the stage `turned-over`. */
export const PremoltSign = z
  .enum([
    'slow-and-hiding',
    'abdomen-dark-and-tight',
    'bald-patch-dark',
    'whole-animal-dark',
    'climbs-badly',
    'retreat-closed',
    'mat-laid',
    'setae-on-mat',
  ])
  .meta({ id: 'PremoltSign' });
export type PremoltSign = z.infer<typeof PremoltSign>;

/** What is seen of one molt, in this order: it lies turned over, the carapace opens, the legs are free, it is free of the skin. */
export const MoltStage = z.enum(['turned-over', 'carapace-open', 'legs-free', 'free-of-skin']).meta({ id: 'MoltStage' });
export type MoltStage = z.infer<typeof MoltStage>;

/** Colors of the fangs after a molt, in the order in which they come. */
export const FangColor = z.enum(['fangs-white', 'fangs-red-brown', 'fangs-black']).meta({ id: 'FangColor' });
export type FangColor = z.infer<typeof FangColor>;

export const ObservationKind = z
  .enum([
    'refused',
    'ate',
    'drank',
    'water-changed',
    ...PremoltSign.options,
    ...MoltStage.options,
    ...FangColor.options,
    'limb-lost',
    'span-measured',
    'mature',
    'sperm-web',
    'egg-sac',
  ])
  .meta({ id: 'ObservationKind' });
export type ObservationKind = z.infer<typeof ObservationKind>;

/** Where the time comes from. A camera that wrote no offset from UTC was taken to run on this machine's clock: `offsetAssumed`. */
export const ObservationSource = z
  .discriminatedUnion('kind', [
    z.object({ kind: z.literal('hand') }),
    z.object({ kind: z.literal('photo'), photoId: z.string(), offsetAssumed: z.boolean() }),
  ])
  .meta({ id: 'ObservationSource' });
export type ObservationSource = z.infer<typeof ObservationSource>;

/** Leg span of the living animal as a keeper took it, with the half width of what it may be wrong by. */
export const SpanTaken = z
  .object({ spanMm: z.number().positive().max(500), plusMinusMm: z.number().min(0).max(250) })
  .meta({ id: 'SpanTaken' });
export type SpanTaken = z.infer<typeof SpanTaken>;

/** One thing seen at one animal. Never changed: a wrong one is removed and made anew. */
export const ObservationDraft = z
  .object({
    kind: ObservationKind,
    moment: Moment,
    observer: z.string().trim().max(200),
    note: z.string().max(20_000),
    source: ObservationSource,
    span: SpanTaken.nullable().describe('Exactly with `span-measured`'),
  })
  .refine(({ kind, span }) => (kind === 'span-measured') === (span !== null), {
    message: 'Expected a leg span exactly where one was measured',
    path: ['span'],
  })
  .meta({ id: 'ObservationDraft' });
export type ObservationDraft = z.infer<typeof ObservationDraft>;

export const Observation = z
  .object({ ...ObservationDraft.shape, id: z.string(), specimenId: z.string(), recordedAt: Instant })
  .meta({ id: 'Observation' });
export type Observation = z.infer<typeof Observation>;

/** As much of an observation as following an animal needs. */
export type Seen = Pick<Observation, 'id' | 'kind' | 'moment' | 'span'>;

/** By the time it was seen; those of one instant stay as they stand, in the order of recording. */
export function inTimeOrder<O extends Pick<Observation, 'moment'>>(observations: readonly O[]): O[] {
  return observations.toSorted((a, b) => Date.parse(a.moment.at) - Date.parse(b.moment.at));
}

export function isStage(kind: ObservationKind): kind is MoltStage {
  return MoltStage.safeParse(kind).success;
}

export function isPremoltSign(kind: ObservationKind): kind is PremoltSign {
  return PremoltSign.safeParse(kind).success;
}

export function isFangColor(kind: ObservationKind): kind is FangColor {
  return FangColor.safeParse(kind).success;
}
