import { addDays, type CalendarDay } from '../../dates.ts';
import type { DatedMolt } from '../../molting/instars.ts';
import { type Generator, normalDeviate, seededGenerator } from '../../numerics/generator.ts';
import type { GrowthRecord, SkinSize } from '../belief/growthRecord.ts';
import { MIDDLE_INSTAR } from '../belief/line.ts';

/** Between genera, species of a genus, clutches of a species, animals of a clutch: standard deviations of a line's level. */
export interface TrueSpread {
  readonly genus: number;
  readonly species: number;
  readonly clutch: number;
  readonly animal: number;
  /** Of the trend, in parts of that of the level. */
  readonly trendShare: number;
}

/** ln of days or of ratios along the instars. */
export interface TrueLaw {
  readonly level: number;
  readonly trend: number;
  /** Standard deviation of single steps of the middle animal. */
  readonly scatter: number;
  /** Animals differ in it: standard deviation of its logarithm. */
  readonly scatterSpread: number;
  readonly spread: TrueSpread;
}

/** How the simulated animals grow and how they are kept on record. Logarithms are natural, lines stand at `MIDDLE_INSTAR`. */
export interface CabinetTruth {
  readonly animals: number;
  readonly genera: number;
  readonly speciesPerGenus: number;
  readonly clutchesPerSpecies: number;
  readonly interval: TrueLaw;
  readonly growth: TrueLaw;
  readonly firstLengthMm: number;
  /** Relative standard deviation of a reading. */
  readonly readingError: number;
  /** Share of molts, the first and last of an animal apart, that are not on record. */
  readonly missed: number;
  /** Share of missed molts that the keeper knows of: then the numbers leave room for them. */
  readonly missedKnown: number;
  /** Share of animals whose instars are numbered. */
  readonly numbered: number;
  /** Share of skins that were measured. */
  readonly measured: number;
  /** Share of molts whose day is known only as a span of up to a week. */
  readonly spans: number;
  /** Days of age up to which the animals are spread evenly on the day the records end. */
  readonly oldestDays: number;
}

/** Other than what the forecasts assume at first, so that they have something to learn. */
export const USUAL_TRUTH: CabinetTruth = {
  animals: 2000,
  genera: 12,
  speciesPerGenus: 3,
  clutchesPerSpecies: 6,
  interval: {
    level: Math.log(95),
    trend: 0.08,
    scatter: 0.25,
    scatterSpread: 0.2,
    spread: { genus: 0.3, species: 0.2, clutch: 0.08, animal: 0.12, trendShare: 0.08 },
  },
  growth: {
    level: Math.log(1.25),
    trend: -0.005,
    scatter: 0.05,
    scatterSpread: 0.2,
    spread: { genus: 0.03, species: 0.03, clutch: 0.015, animal: 0.02, trendShare: 0.12 },
  },
  firstLengthMm: 1.5,
  readingError: 0.01,
  missed: 0.05,
  missedKnown: 0.5,
  numbered: 0.8,
  measured: 0.8,
  spans: 0.3,
  oldestDays: 2500,
};

/** An animal as its keeper has it on record, and what the keeper cannot know. */
export interface SimulatedAnimal {
  readonly record: GrowthRecord;
  readonly truth: {
    /** First molt after the day the records end. */
    readonly nextMoltOn: CalendarDay;
    /** True carapace lengths of the skin it will leave, and of the animal afterwards. */
    readonly nextSkinMm: number;
    readonly afterMoltMm: number;
  };
}

interface Line {
  readonly level: number;
  readonly trend: number;
}

interface Lines {
  readonly interval: Line;
  readonly growth: Line;
}

interface TrueMolt {
  readonly instarShed: number;
  readonly day: number;
  readonly skinMm: number;
}

/**
 * A cabinet of known truth up to a day: animals in clutches, species and genera whose lines lie about each other's, log-normal
 * intervals and ratios, reading errors, molts that are missing from the records. The same seed gives the same cabinet.
 */
export function simulateCabinet(truth: CabinetTruth, today: CalendarDay, seed: number): SimulatedAnimal[] {
  const draw = seededGenerator(seed);
  const lineAround = ({ level, trend }: Line, deviation: number, trendShare: number): Line => ({
    level: level + deviation * normalDeviate(draw),
    trend: trend + deviation * trendShare * normalDeviate(draw),
  });
  const around = ({ interval, growth }: Lines, group: 'genus' | 'species' | 'clutch' | 'animal'): Lines => ({
    interval: lineAround(interval, truth.interval.spread[group], truth.interval.spread.trendShare),
    growth: lineAround(growth, truth.growth.spread[group], truth.growth.spread.trendShare),
  });
  const family: Lines = { interval: truth.interval, growth: truth.growth };
  const clutches = times(truth.genera).flatMap((genus) => {
    const ofGenus = around(family, 'genus');
    return times(truth.speciesPerGenus).flatMap((species) => {
      const ofSpecies = around(ofGenus, 'species');
      return times(truth.clutchesPerSpecies).map((clutch) => ({
        taxon: `Genus${genus} species${species}`,
        eggSacGroup: `sac ${clutch}`,
        lines: around(ofSpecies, 'clutch'),
      }));
    });
  });
  return times(truth.animals).map((index) => {
    const clutch = clutches[index % clutches.length];
    if (!clutch) throw new RangeError('Expected at least one clutch');
    const { taxon, eggSacGroup, lines } = clutch;
    return simulateAnimal({ specimenId: `animal-${index}`, taxon, eggSacGroup }, around(lines, 'animal'), { truth, today, draw });
  });
}

interface Setting {
  readonly truth: CabinetTruth;
  readonly today: CalendarDay;
  readonly draw: Generator;
}

function simulateAnimal(
  labels: Pick<GrowthRecord, 'specimenId' | 'taxon' | 'eggSacGroup'>,
  lines: Lines,
  setting: Setting,
): SimulatedAnimal {
  const { truth, today, draw } = setting;
  const age = Math.ceil(draw() * truth.oldestDays);
  const { past, next, afterMoltMm } = live(lines, age, setting);
  const firstKept = Math.floor(draw() * Math.min(3, past.length));
  const isNumbered = draw() < truth.numbered;
  const molts: DatedMolt[] = [];
  const sizes: SkinSize[] = [];
  let uncounted = 0;
  for (const [index, molt] of past.entries()) {
    const isInside = index > firstKept && index < past.length - 1;
    if (index < firstKept) continue;
    if (isInside && draw() < truth.missed) {
      if (draw() >= truth.missedKnown) uncounted += 1;
      continue;
    }
    const id = `${labels.specimenId}-molt-${molt.instarShed}`;
    const instarShed = isNumbered ? molt.instarShed - uncounted : null;
    molts.push({ id, instarShed, ...span(molt.day - age, past[index - 1]?.day ?? 0, setting) });
    if (draw() < truth.measured) {
      const lengthMm = molt.skinMm * Math.exp(truth.readingError * normalDeviate(draw));
      sizes.push({ moltId: id, lengthMm, uncertaintyMm: lengthMm * truth.readingError });
    }
  }
  const isBred = firstKept === 0;
  return {
    record: {
      ...labels,
      hatchedOn: addDays(today, -age),
      acquiredOn: isBred ? addDays(today, -age) : null,
      acquiredInstar: isBred ? 1 : null,
      molts,
      sizes,
    },
    truth: { nextMoltOn: addDays(today, next.day - age), nextSkinMm: next.skinMm, afterMoltMm },
  };
}

/** All molts of a life up to an age in days, and the one after. */
function live(lines: Lines, age: number, { truth, draw }: Setting) {
  const past: TrueMolt[] = [];
  let day = 0;
  let skinMm = truth.firstLengthMm;
  const scatterOf = ({ scatter, scatterSpread }: TrueLaw): number => scatter * Math.exp(scatterSpread * normalDeviate(draw));
  const scatter = { interval: scatterOf(truth.interval), growth: scatterOf(truth.growth) };
  for (let instar = 1; ; instar += 1) {
    day += Math.max(1, Math.round(Math.exp(alongLine(lines.interval, instar, scatter.interval, draw))));
    const molt = { instarShed: instar, day, skinMm };
    skinMm *= Math.exp(alongLine(lines.growth, instar + 0.5, scatter.growth, draw));
    if (day > age) return { past, next: molt, afterMoltMm: skinMm };
    past.push(molt);
  }
}

function alongLine({ level, trend }: Line, along: number, scatter: number, draw: Generator): number {
  return level + trend * (along - MIDDLE_INSTAR) + scatter * normalDeviate(draw);
}

/** Days from today; a span lies about the day, not before the molt that came before, nor after today. */
function span(offset: number, previousDay: number, { truth, today, draw }: Setting): Pick<DatedMolt, 'happenedFrom' | 'happenedTo'> {
  const isSpan = previousDay > 0 && draw() < truth.spans;
  const before = isSpan ? Math.floor(draw() * 4) : 0;
  const after = isSpan ? Math.floor(draw() * 4) : 0;
  return { happenedFrom: addDays(today, offset - before), happenedTo: addDays(today, Math.min(0, offset + after)) };
}

function times(count: number): number[] {
  return Array.from({ length: count }, (_, index) => index);
}
