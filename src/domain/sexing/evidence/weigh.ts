import { z } from 'zod';
import { type SkinEvidence, skinEvidence } from './combine.ts';
import { type Gate, gated } from './gates.ts';
import { type EvidenceItem, type Finding, sexFor, strengthOf, weightOf } from './item.ts';
import { type LiveEvidence, liveFindings } from './liveFindings.ts';
import type { EvidenceModel } from './model.ts';
import type { ModelNumbers } from './numbers.ts';
import type { GenusKnown, StripReading } from './skinFindings.ts';

export const Band = z.enum(['unsexed', 'leaning', 'probable', 'strong', 'established']).meta({ id: 'EvidenceBand' });
export type Band = z.infer<typeof Band>;

/** Everything that is known of one animal's sex. */
export interface EvidenceCase {
  readonly genus: GenusKnown;
  /** Of all its skins; several of one skin are allowed, the latest last. */
  readonly readings: readonly StripReading[];
  readonly live: readonly LiveEvidence[];
}

/** What it comes to. `probability` is for the domain and its tests: it is never shown, since nobody knows it so exactly. */
export interface Weighing {
  readonly towards: 'female' | 'male' | null;
  readonly band: Band;
  readonly conflict: boolean;
  readonly gate: Gate | null;
  readonly probability: number;
  readonly items: readonly EvidenceItem[];
}

/**
 * Weighs all evidence of one animal. Likelihood ratios are multiplied under the rules of dependence, then the gates hold the
 * result down; two heavy findings or skins that contradict each other give a conflict instead of an average, and so do readings
 * of one skin that are placed equally well or are each at least "probable": the later one overrides nothing. The odds before
 * anything is seen say nothing by themselves.
 *
 * Every number is a judgment unless it names a source; see `SHIPPED_NUMBERS`.
 */
export function weigh(evidence: EvidenceCase, { numbers }: EvidenceModel): Weighing {
  const skins = skinEvidence(evidence.readings, evidence.genus, numbers);
  const live = liveFindings(evidence.live, { genus: evidence.genus, numbers });
  const prior = numbers['prior.female'] / (1 - numbers['prior.female']);
  const odds = [...skins.map(({ ratio, power }) => ratio ** power), ...live.map(({ ratio }) => ratio)].reduce((a, b) => a * b, prior);
  const weighs = skins.some(({ ratio }) => sexFor(ratio) !== null) || live.some(({ ratio }) => sexFor(ratio) !== null);
  const towards = weighs ? sexFor(odds) : null;
  const certainty = strengthOf(odds) / (1 + strengthOf(odds));
  const { probability, gate } = gated(certainty, towards, { skins, live, numbers });
  const conflict = contradicts(skins, live, numbers);
  return {
    towards: conflict ? null : towards,
    band: conflict || towards === null ? 'unsexed' : bandOf(probability, numbers),
    conflict,
    gate,
    probability,
    items: [...skins.flatMap(itemsOf), ...live.map((finding) => itemOf(finding, 1))],
  };
}

/** The upper limit of a band belongs to it: at a cap of exactly 0.95 a male by absence stays "probable". */
export function bandOf(probability: number, numbers: ModelNumbers): Band {
  if (probability >= numbers['band.established']) return 'established';
  if (probability > numbers['band.strong']) return 'strong';
  if (probability >= numbers['band.probable']) return 'probable';
  return probability >= numbers['band.leaning'] ? 'leaning' : 'unsexed';
}

/**
 * Whether two things that are heavy by themselves speak for different sexes: a finding, or a skin as a whole by any one of its
 * readings, whose findings may each be light.
 */
function contradicts(skins: readonly SkinEvidence[], live: readonly Finding[], numbers: ModelNumbers): boolean {
  if (skins.some(({ disputed }) => disputed)) return true;
  const read = skins.flatMap(({ ratio, findings, gaveWay }) => [{ ratio, findings }, ...gaveWay]);
  const ratios = [
    ...read.flatMap(({ ratio, findings }) => [ratio, ...findings.map((finding) => finding.ratio)]),
    ...live.map(({ ratio }) => ratio),
  ];
  const heavy = ratios.filter((ratio) => strengthOf(ratio) > numbers['conflict.strength']);
  return heavy.some((ratio) => ratio > 1) && heavy.some((ratio) => ratio < 1);
}

/** Of what gave way, the strongest finding of each kind for each sex: looks that agree are one line. */
function itemsOf({ findings, gaveWay, power }: SkinEvidence): EvidenceItem[] {
  const others = gaveWay
    .flatMap((reading) => reading.findings.map((finding) => ({ finding, gaveWay: !reading.againstEqual })))
    .toSorted((a, b) => Number(a.gaveWay) - Number(b.gaveWay) || strengthOf(b.finding.ratio) - strengthOf(a.finding.ratio));
  const told = Map.groupBy(others, ({ finding: { kind, ratio } }) => `${kind} ${sexFor(ratio)}`);
  const weaker = [...told.values()].flatMap((same) => same.slice(0, 1)).map((one) => ({ ...itemOf(one.finding, 1), gaveWay: one.gaveWay }));
  return [...findings.map((finding) => itemOf(finding, power)), ...weaker];
}

function itemOf({ kind, ratio, numbers, silence, exuviaId }: Finding, power: number): EvidenceItem {
  const weight = weightOf(ratio ** power);
  return { kind, towards: sexFor(ratio), weight, silence, numbers: [...numbers], exuviaId, weakened: power < 1, gaveWay: false };
}
