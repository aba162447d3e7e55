import { z } from 'zod';
import { has, type SkinEvidence } from './combine.ts';
import { type Finding, type FindingKind, sexFor } from './item.ts';
import type { ModelNumbers } from './numbers.ts';
import { mayBeLookAlike } from './skinFindings.ts';

/** A rule that is stronger than the arithmetic and held the band down. */
export const Gate = z
  .enum([
    'opinions-alone',
    'look-alikes-alone',
    'readers-disagree',
    'male-by-absence',
    'male-without-bulbs',
    'female-on-one-skin',
    'small-skins',
  ])
  .meta({ id: 'EvidenceGate' });
export type Gate = z.infer<typeof Gate>;

interface Gathered {
  readonly skins: readonly SkinEvidence[];
  readonly live: readonly Finding[];
  readonly numbers: ModelNumbers;
}

/** The certainty that the gates leave, 0.5 to 1, and the gate that took the rest. */
export function gated(
  certainty: number,
  towards: 'female' | 'male' | null,
  gathered: Gathered,
): { readonly probability: number; readonly gate: Gate | null } {
  const { numbers } = gathered;
  const caps = towards === null ? [] : gatesFor(towards, gathered);
  const capped = caps.map((gate) => ({ gate, most: numbers[CAP_OF[gate]] })).toSorted((a, b) => a.most - b.most)[0];
  if (!capped || certainty <= capped.most) return { probability: certainty, gate: null };
  return { probability: capped.most, gate: capped.gate };
}

const CAP_OF = {
  'opinions-alone': 'cap.doubtful',
  'look-alikes-alone': 'cap.doubtful',
  'readers-disagree': 'cap.doubtful',
  'male-by-absence': 'cap.maleByAbsence',
  'male-without-bulbs': 'cap.maleWithoutBulbs',
  'female-on-one-skin': 'cap.femaleOneSkin',
  'small-skins': 'cap.smallSkins',
} as const;

/** Judgment. An opinion, a build, a seller's word or bodies without a lip may weigh, but they open no gate. */
function gatesFor(towards: 'female' | 'male', { skins, live }: Gathered): Gate[] {
  const speaking = skins.filter(({ ratio }) => sexFor(ratio) === towards);
  const ofAnimal = live.filter(({ ratio }) => sexFor(ratio) === towards);
  const shown = ofAnimal.some(opensGates);
  const gates: Gate[] = doubtsOf(speaking, ofAnimal);
  if (towards === 'male') {
    if (!has(live, 'palpal-bulbs')) gates.push('male-without-bulbs');
    if (!shown && !speaking.some(({ findings }) => has(findings, 'fusillae-outside'))) gates.push('male-by-absence');
  } else if (!has(live, 'egg-sac') && speaking.filter(showsReceptacles).length < 2) {
    gates.push('female-on-one-skin');
  }
  if (!shown && speaking.length > 0 && !speaking.some(isLargeAndRead)) gates.push('small-skins');
  return gates;
}

const SEXUAL: readonly FindingKind[] = ['palpal-bulbs', 'tibial-hooks', 'sperm-web', 'egg-sac'];

const SHOWN: readonly FindingKind[] = [...SEXUAL, 'ventral-fusillae'];

/** What leaves everything that speaks for a sex open to doubt; no more than a leaning is made of it. */
function doubtsOf(speaking: readonly SkinEvidence[], ofAnimal: readonly Finding[]): Gate[] {
  if (ofAnimal.some(({ kind }) => SEXUAL.includes(kind))) return [];
  if (speaking.length === 0) return ['opinions-alone'];
  if (speaking.some((skin) => !skin.readersDisagree && !restsOnLookAlikes(skin))) return [];
  return [speaking.some(restsOnLookAlikes) ? 'look-alikes-alone' : 'readers-disagree'];
}

function restsOnLookAlikes({ findings }: SkinEvidence): boolean {
  return findings.some(mayBeLookAlike);
}

/** Seen on the animal; fusillae only where a photo shows them on one that is not small. */
function opensGates({ kind, numbers }: Finding): boolean {
  return SHOWN.includes(kind) && !numbers.includes('ventral.small');
}

function showsReceptacles({ small, findings, readersDisagree }: SkinEvidence): boolean {
  return !small && !readersDisagree && findings.some((finding) => isReceptacles(finding) && !mayBeLookAlike(finding));
}

function isReceptacles({ kind, ratio }: Finding): boolean {
  return kind === 'receptacles-seen' && sexFor(ratio) !== null;
}

function isLargeAndRead({ small, findings }: SkinEvidence): boolean {
  return !small && (['receptacles-seen', 'strip-empty', 'fusillae-outside'] as const).some((kind) => has(findings, kind));
}
