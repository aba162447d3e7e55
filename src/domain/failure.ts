import { z } from 'zod';
import { FangColor, MoltStage, ObservationKind } from './care/observation.ts';
import { Instant, Moment } from './dates.ts';
import { MoltOutcome } from './molting/molt.ts';
import { PhotoView } from './photo/photo.ts';
import { Level, Sex, StripAnswer } from './sexing/determination.ts';
import { LevelReason } from './sexing/reason.ts';

/**
 * The closed list of things that can go wrong and that a person can be told about. Facts only: the words stand in the
 * renderer, the HTTP status in the api. Data rather than classes, because class identity survives neither JSON nor bundles.
 */
export const Failure = z
  .discriminatedUnion('code', [
    // What was sent
    z.object({ code: z.literal('input-invalid'), issues: z.array(z.object({ field: z.string(), problem: z.string() })) }),
    z.object({ code: z.literal('not-found'), what: z.string(), id: z.string() }),
    z.object({ code: z.literal('changed-meanwhile'), what: z.string(), id: z.string(), version: z.int() }),
    z.object({ code: z.literal('version-missing'), what: z.string() }),
    z.object({ code: z.literal('body-too-large'), limitBytes: z.int() }),
    z.object({ code: z.literal('no-such-route'), method: z.string(), path: z.string() }),
    z.object({ code: z.literal('refused-by-guard'), reason: z.string() }),
    // Records
    z.object({ code: z.literal('code-taken'), specimenCode: z.string() }),
    z.object({ code: z.literal('dates-reversed'), from: z.string(), to: z.string() }),
    z.object({ code: z.literal('hatched-after-acquired'), hatchedOn: z.string(), acquiredOn: z.string() }),
    z.object({ code: z.literal('date-in-future'), field: z.string(), date: z.string() }),
    z.object({ code: z.literal('date-too-early'), field: z.string(), date: z.string(), earliest: z.string() }),
    z.object({ code: z.literal('date-before-hatching'), field: z.string(), date: z.string(), hatchedOn: z.string() }),
    z.object({ code: z.literal('molts-out-of-order'), date: z.string(), neighbourDate: z.string() }),
    z.object({
      code: z.literal('instars-out-of-order'),
      instar: z.int(),
      neighbourInstar: z.int(),
      neighbourDate: z.string(),
      recordedBetween: z.int(),
    }),
    z.object({ code: z.literal('instar-too-low'), instar: z.int(), earlierMolts: z.int() }),
    z.object({ code: z.literal('instar-too-high'), instar: z.int() }),
    z.object({ code: z.literal('gap-misplaced'), moltDate: z.string() }),
    z.object({ code: z.literal('gap-uncounted'), moltDate: z.string() }),
    z.object({ code: z.literal('gap-absent'), moltDate: z.string() }),
    z.object({
      code: z.literal('acquired-instar-contradicted'),
      acquiredInstar: z.int(),
      acquiredOn: z.string(),
      instarShed: z.int(),
      moltDate: z.string(),
    }),
    z.object({ code: z.literal('outcomes-contradict'), one: MoltOutcome, other: MoltOutcome }),
    z.object({ code: z.literal('skin-recovered-or-not'), moltId: z.string() }),
    z.object({ code: z.literal('skin-photographed'), exuviaId: z.string(), photos: z.int() }),
    z.object({ code: z.literal('view-not-of-animal'), view: PhotoView }),
    z.object({ code: z.literal('skin-not-recovered'), moltId: z.string() }),
    z.object({ code: z.literal('skin-already-recorded'), moltId: z.string() }),
    z.object({ code: z.literal('photo-in-use'), photoId: z.string(), determinations: z.int(), liveSigns: z.int() }),
    z.object({ code: z.literal('animal-not-kept'), specimenCode: z.string() }),
    z.object({ code: z.literal('animal-mature-male'), specimenCode: z.string() }),
    z.object({ code: z.literal('male-contradicted'), specimenCode: z.string() }),
    z.object({ code: z.literal('molt-not-recorded'), specimenCode: z.string() }),
    // Determinations
    z.object({
      code: z.literal('level-not-supported'),
      sex: Sex,
      wanted: Level,
      highest: Level.nullable(),
      missing: z.array(z.array(LevelReason)).describe('What each way to the level lacks, the nearest first'),
    }),
    z.object({ code: z.literal('read-before-shed'), readOn: z.string(), shedFrom: z.string() }),
    z.object({ code: z.literal('level-without-sex') }),
    z.object({ code: z.literal('sex-without-level') }),
    z.object({ code: z.literal('strip-not-readable'), answered: z.array(StripAnswer) }),
    z.object({ code: z.literal('correction-misplaced'), id: z.string(), reason: z.enum(['other-skin', 'already-corrected', 'withdrawn']) }),
    z.object({ code: z.literal('evidence-of-another-animal'), photoId: z.string() }),
    z.object({ code: z.literal('pin-misplaced'), photoId: z.string(), reason: z.enum(['not-evidence', 'outside-photo']) }),
    z.object({ code: z.literal('photo-not-of-animal'), photoId: z.string() }),
    z.object({ code: z.literal('bulbs-before-molt'), seenOn: z.string(), moltedFrom: z.string() }),
    z.object({ code: z.literal('number-out-of-range'), number: z.string(), lowest: z.number(), highest: z.number() }),
    z.object({ code: z.literal('already-withdrawn'), id: z.string() }),
    // Observations
    z.object({ code: z.literal('seen-in-future'), moment: Moment, now: Instant }),
    z.object({ code: z.literal('seen-before-hatching'), moment: Moment, hatchedOn: z.string() }),
    z.object({ code: z.literal('molt-under-way'), startedAt: Moment }),
    z.object({ code: z.literal('molt-already-ended'), endedAt: Moment, again: Moment }),
    z.object({ code: z.literal('molt-ends-before-start'), startedAt: Moment, endedAt: Moment }),
    z.object({ code: z.literal('molts-too-close'), date: z.string(), neighbourDate: z.string(), apartDays: z.int() }),
    z.object({ code: z.literal('stages-out-of-order'), earlier: MoltStage, earlierAt: Moment, later: MoltStage, laterAt: Moment }),
    z.object({ code: z.literal('fangs-black-too-soon'), endedAt: Moment, moment: Moment }),
    z.object({ code: z.literal('fangs-out-of-order'), earlier: FangColor, earlierAt: Moment, later: FangColor, laterAt: Moment }),
    z.object({ code: z.literal('fangs-light-before-molt'), color: FangColor, moment: Moment, startedAt: Moment }),
    z.object({ code: z.literal('not-while-molting'), kind: ObservationKind, startedAt: Moment, moment: Moment }),
    // Measuring
    z.object({ code: z.literal('scale-points-coincide') }),
    z.object({ code: z.literal('corners-not-convex') }),
    z.object({ code: z.literal('corners-mirrored') }),
    z.object({ code: z.literal('corners-collinear') }),
    z.object({ code: z.literal('rim-not-elliptic') }),
    z.object({ code: z.literal('rim-not-found') }),
    z.object({ code: z.literal('rim-cut-off') }),
    z.object({ code: z.literal('points-on-a-line') }),
    z.object({
      code: z.literal('sides-not-found'),
      sides: z.array(z.int().min(0).max(3)).describe('From the first to the second corner is 0, and on'),
    }),
    z.object({
      code: z.literal('three-sides-implausible'),
      hidden: z.int().min(0).max(3).describe('The side that was not seen; from the first to the second corner is 0, and on'),
      reason: z
        .enum(['no-rectangle', 'tilt', 'scatter', 'far-from-handles', 'focal-length-unknown'])
        .describe('Lines of no rectangle; a camera held too low; a side that is not straight; a corner far from where it was marked'),
    }),
    z.object({ code: z.literal('ticks-not-found'), found: z.int(), needed: z.int() }),
    z.object({
      code: z.literal('points-outside-picture'),
      points: z.array(z.int().min(0)).describe('Numbers of the points, from 0'),
      widthPx: z.int(),
      heightPx: z.int(),
    }),
    z.object({ code: z.literal('finding-stopped') }),
    // Intake
    z.object({ code: z.literal('file-empty'), file: z.string() }),
    z.object({ code: z.literal('file-truncated'), file: z.string() }),
    z.object({ code: z.literal('file-not-an-image'), file: z.string(), kind: z.string().nullable().default(null) }),
    z.object({ code: z.literal('file-kind-not-kept'), file: z.string(), kind: z.string() }),
    z.object({ code: z.literal('picture-too-large'), file: z.string(), megapixels: z.number(), limitMegapixels: z.number() }),
    z.object({ code: z.literal('file-unreadable'), file: z.string(), reason: z.string() }),
    z.object({ code: z.literal('file-not-arrived'), file: z.string() }),
    z.object({ code: z.literal('intake-gone'), intakeId: z.string() }),
    z.object({ code: z.literal('task-not-found'), taskId: z.string() }),
    z.object({ code: z.literal('sample-already-here') }),
    // Archive
    z.object({ code: z.literal('disk-full') }),
    z.object({ code: z.literal('archive-in-use'), folder: z.string() }),
    z.object({ code: z.literal('archive-not-ours'), folder: z.string() }),
    z.object({ code: z.literal('archive-from-newer-version'), found: z.int(), known: z.int() }),
    z.object({ code: z.literal('archive-damaged'), detail: z.string() }),
    z.object({ code: z.literal('archive-folder-unusable'), folder: z.string(), reason: z.string() }),
    z.object({ code: z.literal('original-missing'), photoId: z.string() }),
    z.object({ code: z.literal('not-at-scale'), photoId: z.string() }),
    z.object({ code: z.literal('nothing-at-scale') }),
    z.object({ code: z.literal('original-damaged'), photoId: z.string() }),
    z.object({ code: z.literal('removal-gone'), removalId: z.string() }),
    z.object({ code: z.literal('removal-out-of-order'), removalId: z.string() }),
    // Ourselves
    z.object({ code: z.literal('unreachable') }),
    z.object({ code: z.literal('defect'), reference: z.string() }),
  ])
  .meta({ id: 'Failure' });
export type Failure = z.infer<typeof Failure>;
export type FailureCode = Failure['code'];

/**
 * Carries a failure where a promise or a transaction must unwind. The only thrown value that is part of the story;
 * anything else thrown is a defect.
 */
export class Refusal extends Error {
  readonly failure: Failure;

  constructor(failure: Failure) {
    super(failure.code);
    this.name = 'Refusal';
    this.failure = failure;
  }
}

export function refuse(failure: Failure): never {
  throw new Refusal(failure);
}
