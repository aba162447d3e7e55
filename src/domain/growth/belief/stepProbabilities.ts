import {
  type Evidence,
  evidenceOf,
  informed,
  type LineBelief,
  MIDDLE_INSTAR,
  meanAt,
  minus,
  NO_EVIDENCE,
  plus,
  varianceAt,
} from './line.ts';
import { readingPriors, type StepObservation, type StepReading, type WeighedReading } from './stepObservation.ts';

/** How probable each reading of each of an animal's steps is, in the order of its steps. */
export type StepProbabilities = readonly (readonly number[])[];

/** What the steps say of the animal's line, each reading counting as probable as it is. */
export function evidenceOfSteps(steps: readonly StepObservation[], probabilities: StepProbabilities, scatterVariance: number): Evidence {
  const sum = { level: 0, both: 0, trend: 0, levelSum: 0, trendSum: 0 };
  let index = 0;
  for (const step of steps) {
    const { level, both, trend, levelSum, trendSum } = evidenceOfStep(step, probabilities[index] ?? [], scatterVariance);
    sum.level += level;
    sum.both += both;
    sum.trend += trend;
    sum.levelSum += levelSum;
    sum.trendSum += trendSum;
    index += 1;
  }
  return sum;
}

function evidenceOfStep({ along, readings }: StepObservation, ofReadings: readonly number[], scatterVariance: number): Evidence {
  let total = 0;
  let value = 0;
  let count = 0;
  for (const reading of readings) {
    const weight = (ofReadings[count] ?? 0) / varianceOf(reading, scatterVariance);
    total += weight;
    value += weight * reading.value;
    count += 1;
  }
  const x = along - MIDDLE_INSTAR;
  return { level: total, both: total * x, trend: total * x * x, levelSum: value, trendSum: value * x };
}

/** The readings that carry weight, with the variance of each. */
export function weighedReadings(
  steps: readonly StepObservation[],
  probabilities: StepProbabilities,
  scatterVariance: number,
): WeighedReading[] {
  return steps.flatMap(({ along, readings }, index) =>
    readings.flatMap((reading, count): WeighedReading[] => {
      const weight = probabilities[index]?.[count] ?? 0;
      return weight > NEGLIGIBLE ? [{ along, value: reading.value, variance: varianceOf(reading, scatterVariance), weight }] : [];
    }),
  );
}

export function evidenceFrom(rows: readonly WeighedReading[]): Evidence {
  return rows.reduce((sum, { along, value, variance, weight }) => plus(sum, evidenceOf(along, value, weight / variance)), NO_EVIDENCE);
}

/** An animal's line as it stands in one round. */
export interface AnimalLine {
  /** By kin alone. */
  readonly prior: LineBelief;
  /** Of all its steps. */
  readonly evidence: Evidence;
  readonly scatterVariance: number;
  readonly unseen: number;
}

/** By Bayes' rule, each step judged by kin and all the other steps, never by itself. */
export function probabilitiesOf(steps: readonly StepObservation[], before: StepProbabilities, line: AnimalLine): StepProbabilities {
  const priors = readingPriors(line.unseen);
  return steps.map((step, index) => readingProbabilities(step, lineWithout(step, before[index] ?? [], line), line.scatterVariance, priors));
}

/** What kin and all the other steps of the animal say of its line. */
export function lineWithout(
  step: StepObservation,
  ofReadings: readonly number[],
  { prior, evidence, scatterVariance }: Omit<AnimalLine, 'unseen'>,
): LineBelief {
  return informed(prior, minus(evidence, evidenceOfStep(step, ofReadings, scatterVariance)));
}

function readingProbabilities(step: StepObservation, belief: LineBelief, scatterVariance: number, priors: readonly number[]): number[] {
  const expected = meanAt(belief, step.along);
  const uncertain = varianceAt(belief, step.along);
  const logs = step.readings.map((reading, index) => {
    const variance = uncertain + varianceOf(reading, scatterVariance);
    return Math.log(((priors[index] ?? 0) * reading.density) / Math.sqrt(variance)) - (reading.value - expected) ** 2 / variance / 2;
  });
  const highest = Math.max(...logs);
  const joint = logs.map((log) => Math.exp(log - highest));
  const total = joint.reduce((sum, value) => sum + value, 0);
  return joint.map((value) => value / total);
}

/** Expected square of a single molt's deviation from the animal's line, with what is not known of dates and sizes taken out. */
export function expectedScatter(step: StepObservation, ofReadings: readonly number[], belief: LineBelief, scatterVariance: number): number {
  const expected = meanAt(belief, step.along);
  const uncertain = varianceAt(belief, step.along);
  let sum = 0;
  let index = 0;
  for (const reading of step.readings) {
    const variance = varianceOf(reading, scatterVariance);
    const ofMolts = scatterVariance / reading.molts / variance;
    const square = ofMolts ** 2 * ((reading.value - expected) ** 2 + uncertain) + (scatterVariance / reading.molts) * (1 - ofMolts);
    sum += (ofReadings[index] ?? 0) * reading.molts * square;
    index += 1;
  }
  return sum;
}

function varianceOf(reading: StepReading, scatterVariance: number): number {
  return scatterVariance / reading.molts + reading.knownVariance;
}

/** Readings less probable than this are not worth keeping. */
const NEGLIGIBLE = 1e-6;
