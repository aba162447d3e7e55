import { z } from 'zod';
import { type CalendarDay, daysBetween } from '../dates.ts';
import type { Sex } from '../sexing/determination.ts';
import type { GrowthBelief } from './belief/growthBelief.ts';
import { consistencyOf, ReadingConsistency } from './consistency.ts';
import { findingsOf, GrowthFinding } from './findings.ts';
import { type MoltOnRecord, skinReadingsOn } from './ladder.ts';
import { fitAllometry, LegAllometry } from './legs/allometry.ts';
import { legSizesOf } from './legs/legSizes.ts';
import { LegRegrowth, regrowthOf } from './legs/regrowth.ts';
import { LiveSize } from './liveSizes.ts';
import { askMaturity, MaturityHint } from './maturityHint.ts';
import { measuredSteps } from './measuredStep.ts';
import { checkMissedMolts, MissedMoltCheck } from './missed/missedMolts.ts';
import { followsDirectly } from './positions.ts';
import { growthRatio } from './ratio.ts';
import { GrowthRatios, ratiosOf } from './ratios.ts';
import type { Ladder, Rung } from './rung.ts';
import { carapaceNow, groundOfSize, oneMoltFurther, SizeNow, spanNow } from './sizeNow.ts';
import { lengthsNamed } from './skinSizes.ts';
import { Curvature, testCurvature } from './trend/curvature.ts';
import { fitRobust, RobustFit } from './trend/robustFit.ts';
import { fitWeighted, WeightedFit } from './trend/weightedFit.ts';

/** Everything the skins of one animal say together, beside the ladder itself. All of carapace length unless named otherwise. */
export const GrowthReport = z
  .object({
    ratios: GrowthRatios,
    weighted: WeightedFit.nullable(),
    robust: RobustFit.nullable(),
    curvature: Curvature.nullable(),
    missed: z.array(MissedMoltCheck).describe('One for each step from one measured skin to the next'),
    consistency: z
      .array(ReadingConsistency.extend({ moltId: z.string() }))
      .describe('Of the carapace length on skins with several readings that can be compared'),
    legFirst: LegAllometry.nullable(),
    legFourth: LegAllometry.nullable(),
    regrowth: z.array(LegRegrowth),
    live: z.array(LiveSize).describe('From photos of the living animal; in no fit and no ratio'),
    maturity: MaturityHint.nullable(),
    carapaceNow: SizeNow.nullable().describe('Null where no skin shows it whose place is known'),
    spanNow: SizeNow.nullable().describe('Leg span, how the skin lay counted in'),
    inDoubt: z.array(z.string()).describe('Molts whose skins have a carapace that does not fit the skins around it'),
    findings: z.array(GrowthFinding),
  })
  .meta({ id: 'GrowthReport' });
export type GrowthReport = z.infer<typeof GrowthReport>;

/** What the skins alone do not tell. */
export interface GrowthContext {
  readonly today: CalendarDay;
  readonly sex: Sex;
  /** Whether its next molt is waited for here: not that of a dead animal, nor of one that was sold. */
  readonly isKept: boolean;
  /** Of its growth, by its own skins and its kin. */
  readonly belief: GrowthBelief;
  /** Whether a molt was watched to its end that is not on record: the animal is one further than its skins tell. */
  readonly moltedSince: boolean;
  readonly live: readonly LiveSize[];
}

/** @param records as `buildLadder` took them for this ladder. */
export function growthReportOf(ladder: Ladder, records: readonly MoltOnRecord[], context: GrowthContext): GrowthReport {
  const { rungs } = ladder;
  const sizes = measuredSteps(rungs);
  const skins = rungs.map(({ moltId }) => ({ moltId, readings: skinReadingsOn(records.find(({ molt }) => molt.id === moltId)) }));
  const recorded = groundOfSize(rungs, context.belief);
  const ground = context.moltedSince ? oneMoltFurther(recorded) : recorded;
  return {
    ratios: ratiosOf(sizes),
    weighted: fitWeighted(sizes),
    robust: fitRobust(sizes),
    curvature: testCurvature(sizes),
    missed: checkMissedMolts(sizes, context.belief.steps),
    consistency: skins.flatMap(({ moltId, readings }) => {
      const consistency = consistencyOf(lengthsNamed(readings, 'carapace-length'));
      return consistency ? [{ ...consistency, moltId }] : [];
    }),
    legFirst: fitAllometry(rungs, 'legFirstMm'),
    legFourth: fitAllometry(rungs, 'legFourthMm'),
    regrowth: regrowthOf(skins.map(({ moltId, readings }) => ({ moltId, legs: legSizesOf(readings) }))),
    live: [...context.live],
    maturity: maturityHintOf(rungs, context),
    carapaceNow: carapaceNow(ground),
    spanNow: spanNow(ground),
    inDoubt: context.belief.places.flatMap(({ moltId, inDoubt }) => (inDoubt ? [moltId] : [])),
    findings: findingsOf(
      rungs,
      records.map(({ molt }) => molt),
      context.today,
    ),
  };
}

function maturityHintOf(rungs: readonly Rung[], { today, sex, isKept, live }: GrowthContext): MaturityHint | null {
  const last = rungs.at(-1);
  const newest = live.findLast(({ step }) => last !== undefined && step === last.step + 1);
  const instars = [
    ...rungs.map(legShareOf),
    ...(newest && last ? [legShareOf({ ...newest, step: last.step + 1, stepKnown: last.stepKnown })] : []),
  ];
  const legGains = instars.slice(1).map((later, index) => {
    const earlier = instars[index];
    return earlier?.share && later.share && followsDirectly(earlier, later) ? growthRatio(later.share, earlier.share) : null;
  });
  const intervalDays = rungs.flatMap(({ daysSincePrevious, ...rung }, index) => {
    const previous = rungs[index - 1];
    if (!daysSincePrevious || !previous || !followsDirectly(previous, rung)) return [];
    if (previous.presumed || rung.presumed) return [];
    return [Math.round((daysSincePrevious.from + daysSincePrevious.to) / 2)];
  });
  const waitedDays = last && isKept ? Math.max(0, daysBetween(last.happenedTo, today)) : null;
  return askMaturity({ sex, legGains, intervalDays, waitedDays });
}

function legShareOf({
  step,
  stepKnown,
  doubted,
  carapaceLengthMm,
  legFirstMm,
}: Pick<Rung, 'step' | 'stepKnown' | 'doubted' | 'carapaceLengthMm' | 'legFirstMm'>) {
  const isSure = !doubted.includes('carapaceLengthMm') && !doubted.includes('legFirstMm');
  return { step, stepKnown, share: isSure && carapaceLengthMm && legFirstMm ? growthRatio(legFirstMm, carapaceLengthMm) : null };
}
