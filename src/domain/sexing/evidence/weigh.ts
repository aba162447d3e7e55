import { z } from 'zod';
import type { Checklist } from '../determination.ts';
import { has, type SkinEvidence, skinEvidence } from './combine.ts';
import { type EvidenceItem, type Finding, sexFor, strengthOf, weightOf } from './item.ts';
import { type LiveEvidence, liveFindings } from './liveFindings.ts';
import type { EvidenceModel } from './model.ts';
import type { ModelNumbers } from './numbers.ts';
import type { GenusKnown, StripReading } from './skinFindings.ts';

export const Band = z.enum(['unsexed', 'leaning', 'probable', 'strong', 'established']).meta({ id: 'EvidenceBand' });
export type Band = z.infer<typeof Band>;

/** A rule that is stronger than the arithmetic and held the band down. */
export const Gate = z.enum(['male-by-absence', 'male-without-bulbs', 'female-on-one-skin', 'small-skins']).meta({ id: 'EvidenceGate' });
export type Gate = z.infer<typeof Gate>;

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
 * result down; two heavy findings that contradict each other, be it in two readings of one skin, give a conflict instead of an
 * average.
 *
 * Every number is a judgment unless it names a source; see `SHIPPED_NUMBERS`.
 */
export function weigh(evidence: EvidenceCase, { numbers }: EvidenceModel): Weighing {
  const skins = skinEvidence(evidence.readings, evidence.genus, numbers);
  const live = liveFindings(evidence.live, { genus: evidence.genus, carapaceMm: largestCarapace(evidence.readings), numbers });
  const prior = numbers['prior.female'] / (1 - numbers['prior.female']);
  const odds = [...skins.map(({ ratio, power }) => ratio ** power), ...live.map(({ ratio }) => ratio)].reduce((a, b) => a * b, prior);
  const towards = sexFor(odds);
  const certainty = strengthOf(odds) / (1 + strengthOf(odds));
  const { probability, gate } = gated(certainty, towards, { skins, live, numbers });
  const conflict = contradicts(skins, live, numbers);
  return {
    towards: conflict ? null : towards,
    band: conflict || towards === null ? 'unsexed' : bandOf(probability, numbers),
    conflict,
    gate,
    probability,
    items: [
      ...skins.flatMap((skin) => skin.findings.map((finding) => itemOf(finding, skin.power))),
      ...live.map((finding) => itemOf(finding, 1)),
    ],
  };
}

interface Gathered {
  readonly skins: readonly SkinEvidence[];
  readonly live: readonly Finding[];
  readonly numbers: ModelNumbers;
}

function gated(certainty: number, towards: Weighing['towards'], gathered: Gathered): { probability: number; gate: Gate | null } {
  const { numbers } = gathered;
  const caps = towards === null ? [] : gatesFor(towards, gathered);
  const capped = caps.map((gate) => ({ gate, most: numbers[CAP_OF[gate]] })).toSorted((a, b) => a.most - b.most)[0];
  if (!capped || certainty <= capped.most) return { probability: certainty, gate: null };
  return { probability: capped.most, gate: capped.gate };
}

const CAP_OF = {
  'male-by-absence': 'cap.maleByAbsence',
  'male-without-bulbs': 'cap.maleWithoutBulbs',
  'female-on-one-skin': 'cap.femaleOneSkin',
  'small-skins': 'cap.smallSkins',
} as const;

function gatesFor(towards: 'female' | 'male', { skins, live }: Gathered): Gate[] {
  const onSkins = skins.flatMap(({ findings }) => findings);
  const speaking = skins.filter(({ ratio }) => sexFor(ratio) === towards);
  const gates: Gate[] = [];
  if (towards === 'male') {
    if (!has(live, 'palpal-bulbs')) gates.push('male-without-bulbs');
    const positive =
      live.some(({ ratio }) => sexFor(ratio) === 'male') || has(onSkins, 'fusillae-outside') || has(onSkins, 'accessory-organs');
    if (!positive) gates.push('male-by-absence');
  } else if (speaking.length < 2 && !has(live, 'egg-sac')) {
    gates.push('female-on-one-skin');
  }
  const liveToo = live.some(({ ratio }) => sexFor(ratio) === towards);
  if (!liveToo && speaking.length > 0 && speaking.every(({ small }) => small)) gates.push('small-skins');
  return gates;
}

/** The upper limit of a band belongs to it: at a cap of exactly 0.95 a male by absence stays "probable". */
export function bandOf(probability: number, numbers: ModelNumbers): Band {
  if (probability >= numbers['band.established']) return 'established';
  if (probability > numbers['band.strong']) return 'strong';
  if (probability >= numbers['band.probable']) return 'probable';
  return probability >= numbers['band.leaning'] ? 'leaning' : 'unsexed';
}

function contradicts(skins: readonly SkinEvidence[], live: readonly Finding[], numbers: ModelNumbers): boolean {
  const heavy = [...skins.flatMap(({ findings, passedOver }) => [...findings, ...passedOver]), ...live].filter(
    ({ ratio }) => strengthOf(ratio) > numbers['conflict.strength'],
  );
  return heavy.some(({ ratio }) => ratio > 1) && heavy.some(({ ratio }) => ratio < 1);
}

function itemOf({ kind, ratio, numbers, silence, exuviaId }: Finding, power: number): EvidenceItem {
  return { kind, towards: sexFor(ratio), weight: weightOf(ratio ** power), silence, numbers: [...numbers], exuviaId, weakened: power < 1 };
}

function largestCarapace(readings: readonly StripReading[]): number | null {
  const known = readings.map(({ checklist }: { checklist: Checklist }) => checklist.carapaceLengthMm).filter((length) => length !== null);
  return known.length === 0 ? null : Math.max(...known);
}
