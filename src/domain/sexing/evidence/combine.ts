import type { Checklist } from '../determination.ts';
import { type Finding, sexFor, strengthOf } from './item.ts';
import type { ModelNumbers } from './numbers.ts';
import { type GenusKnown, type StripReading, sizeClassOfSkin, skinFindings } from './skinFindings.ts';

/** The best reading of one skin, with everything it found and what that comes to. */
export interface SkinEvidence {
  readonly exuviaId: string;
  readonly findings: readonly Finding[];
  /** Other readings of the same skin, which gave way to the best one: they do not weigh, and yet can contradict it. */
  readonly gaveWay: readonly GivenWay[];
  /** Its readings speak for different sexes, and none of them overrides the other. */
  readonly disputed: boolean;
  readonly ratio: number;
  /**
   * 1 for the strongest skin that speaks for a sex; others that agree with it count less, since they share the animal, the
   * reader and the bias. One that disagrees shares no bias with it and counts in full.
   */
  readonly power: number;
  readonly small: boolean;
  /** A second reader of the reading that speaks does not agree with it. */
  readonly readersDisagree: boolean;
}

export interface GivenWay {
  readonly findings: readonly Finding[];
  readonly ratio: number;
  /** Placed as well as the reading that speaks for the skin, and yet of the other sex: being the later look settles nothing. */
  readonly againstEqual: boolean;
}

/** One result for each skin: several readings of it are one piece of evidence, and the best of them speaks. */
export function skinEvidence(readings: readonly StripReading[], genus: GenusKnown, numbers: ModelNumbers): SkinEvidence[] {
  const bySkin = Map.groupBy(readings, ({ exuviaId }) => exuviaId);
  const skins = [...bySkin.values()].map((ofSkin) => evidenceOf(ofSkin, genus, numbers));
  const strongestFirst = skins.toSorted((a, b) => strengthOf(b.ratio) - strengthOf(a.ratio));
  return strongestFirst.map((skin, index) => {
    const stronger = strongestFirst.slice(0, index).filter(({ ratio }) => sexFor(ratio) === sexFor(skin.ratio));
    return { ...skin, power: numbers['weakerSkin.power'] ** stronger.length };
  });
}

function evidenceOf(ofSkin: readonly StripReading[], genus: GenusKnown, numbers: ModelNumbers): SkinEvidence {
  const best = bestOf(ofSkin);
  const read = (reading: StripReading) => {
    const findings = skinFindings(reading, genus, numbers);
    return { findings, ratio: ratioOf(findings, numbers) };
  };
  const sizeClass = sizeClassOfSkin(best.checklist, genus, numbers) ?? 'A';
  const speaking = read(best);
  const gaveWay = ofSkin
    .filter((other) => other !== best)
    .map((other): GivenWay => {
      const { findings, ratio } = read(other);
      const equal = qualityOf(other.checklist) === qualityOf(best.checklist);
      return { findings, ratio, againstEqual: equal && oppose(ratio, speaking.ratio) };
    });
  const firm = numbers['band.probable'] / (1 - numbers['band.probable']);
  const isFirm = (ratio: number) => strengthOf(ratio) >= firm;
  return {
    exuviaId: best.exuviaId,
    ...speaking,
    gaveWay,
    disputed: gaveWay.some(
      ({ ratio, againstEqual }) => againstEqual || (oppose(ratio, speaking.ratio) && isFirm(ratio) && isFirm(speaking.ratio)),
    ),
    power: 1,
    small: sizeClass === 'A' || sizeClass === 'B',
    readersDisagree: best.checklist.secondReaderAgrees === 'no',
  };
}

function oppose(one: number, other: number): boolean {
  return (one > 1 && other < 1) || (one < 1 && other > 1);
}

/** Fusillae and an empty strip are partly independent: their product, capped. */
function ratioOf(findings: readonly Finding[], numbers: ModelNumbers): number {
  const ratio = findings.reduce((product, finding) => product * finding.ratio, 1);
  const both = has(findings, 'fusillae-outside') && has(findings, 'strip-empty');
  return both ? Math.max(ratio, 1 / numbers['fusillae.withAbsenceMost']) : ratio;
}

export function has(findings: readonly Finding[], kind: Finding['kind']): boolean {
  return findings.some((finding) => finding.kind === kind && sexFor(finding.ratio) !== null);
}

const GRADE_ORDER = ['A', 'B', 'C', 'D', null] as const;
const AID_ORDER = ['stereomicroscope', 'loupe', 'naked-eye', null] as const;

/** The better strip, then the better optics, then the later look. */
export function bestOf<R extends StripReading>(readings: readonly R[]): R {
  return readings.reduce((best, next) => (qualityOf(next.checklist) <= qualityOf(best.checklist) ? next : best));
}

/** The smaller the better. A reading that looked at nothing on the strip gives way to one that did. */
function qualityOf(checklist: Checklist): number {
  const answered = [checklist.receptaclesSeen, checklist.uterusExternusSeen, checklist.fusillaeOutsideSeen].some(
    (answer) => answer === 'yes' || answer === 'no',
  );
  return (answered ? 0 : 100) + GRADE_ORDER.indexOf(checklist.grade) * 10 + AID_ORDER.indexOf(checklist.magnification);
}
