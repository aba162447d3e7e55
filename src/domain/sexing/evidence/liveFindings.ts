import { hooksSpeak } from '../genus/profile.ts';
import type { LiveFinding } from '../live/liveSign.ts';
import { type Finding, sexFor, silent, strengthOf } from './item.ts';
import type { ModelNumbers, NumberId } from './numbers.ts';
import type { GenusKnown } from './skinFindings.ts';

/** What was seen of the animal, from its own record or from the answers of a reading. */
export interface LiveEvidence {
  readonly finding: LiveFinding;
  readonly photographed: boolean;
  /** Of the largest skin it had shed by that day; the animal was larger. Null while none is measured. */
  readonly carapaceMm: number | null;
}

export interface LiveCircumstances {
  readonly genus: GenusKnown;
  readonly numbers: ModelNumbers;
}

/**
 * One finding of each kind for each sex: the same thing seen twice, or told and photographed, is one piece of evidence, the
 * stronger. Opinions of one kind that oppose each other are both kept. A look from below and the opinion formed by it are one
 * look, too.
 */
export function liveFindings(evidence: readonly LiveEvidence[], circumstances: LiveCircumstances): Finding[] {
  const strongest = new Map<string, Finding>();
  for (const each of evidence) {
    const finding = liveFinding(each, circumstances);
    const key = `${finding.kind} ${sexFor(finding.ratio)}`;
    const known = strongest.get(key);
    if (!known || strengthOf(finding.ratio) > strengthOf(known.ratio)) strongest.set(key, finding);
  }
  const found = [...strongest.values()].map((finding, _, all) => (isLesserLook(finding, all) ? sameLook(finding) : finding));
  // Bulbs that have been seen are not taken back by an earlier look that found none.
  return found.some(({ kind }) => kind === 'palpal-bulbs') ? found.filter(({ kind }) => kind !== 'no-bulbs') : found;
}

const FROM_BELOW: readonly Finding['kind'][] = ['ventral-fusillae', 'no-ventral-fusillae', 'impression-ventral'];

/** Whether a stronger finding, for the same sex, comes of the same look from below. */
function isLesserLook({ kind, ratio }: Finding, all: readonly Finding[]): boolean {
  return (
    FROM_BELOW.includes(kind) &&
    all.some(
      (other) => FROM_BELOW.includes(other.kind) && sexFor(other.ratio) === sexFor(ratio) && strengthOf(other.ratio) > strengthOf(ratio),
    )
  );
}

function sameLook({ kind }: Finding): Finding {
  return silent(kind, 'same-look-from-below', null);
}

function liveFinding({ finding, photographed, carapaceMm }: LiveEvidence, circumstances: LiveCircumstances): Finding {
  const { genus, numbers } = circumstances;
  const male = (kind: Finding['kind'], id: NumberId): Finding => told(kind, 1 / numbers[id], [id]);
  switch (finding.kind) {
    case 'palpal-bulbs':
      return finding.seen
        ? male('palpal-bulbs', photographed ? 'bulbs.photographed' : 'bulbs.told')
        : withoutBulbs(carapaceMm, circumstances);
    case 'tibial-hooks':
      if (!finding.seen) return silent('no-hooks', 'no-hooks-says-nothing', null);
      return hooksSpeak(genus.hooks.state) ? male('tibial-hooks', 'hooks.seen') : silent('tibial-hooks', 'genus-hooks-not-known', null);
    case 'sperm-web':
      return male('sperm-web', photographed ? 'spermWeb.photographed' : 'spermWeb.seen');
    case 'egg-sac':
      return told('egg-sac', numbers['eggSac.laid'], ['eggSac.laid']);
    case 'ventral-fusillae':
      return ventral(finding, photographed, numbers);
    case 'impression':
      return impression(finding, circumstances);
  }
}

function told(kind: Finding['kind'], ratio: number, numbers: readonly NumberId[]): Finding {
  return { kind, ratio, numbers, silence: null, exuviaId: null };
}

/** Rises from the first to the full strength between two sizes relative to an adult female; nothing below. */
function withoutBulbs(carapaceMm: number | null, { genus, numbers }: LiveCircumstances): Finding {
  const relative = carapaceMm !== null && genus.adultCarapaceMm !== null ? carapaceMm / genus.adultCarapaceMm : 0;
  const from = numbers['noBulbs.fromRelativeSize'];
  if (relative < from) return silent('no-bulbs', 'animal-not-adult-size', null);
  const share = Math.min(1, (relative - from) / (numbers['noBulbs.fullAtRelativeSize'] - from));
  const ratio = numbers['noBulbs.least'] + share * (numbers['noBulbs.most'] - numbers['noBulbs.least']);
  return told('no-bulbs', ratio, ['noBulbs.least', 'noBulbs.most', 'noBulbs.fromRelativeSize', 'noBulbs.fullAtRelativeSize']);
}

/** A look from below without a photo counts as small, and one of an animal of unknown size as well. */
function ventral(finding: Extract<LiveFinding, { kind: 'ventral-fusillae' }>, photographed: boolean, numbers: ModelNumbers): Finding {
  const spanMm = photographed ? (finding.legSpanMm ?? 0) : 0;
  const large = spanMm > numbers['span.aboveD'];
  if (!finding.seen) {
    const absent: NumberId = large ? 'ventral.absentLarge' : 'ventral.absentSmaller';
    return told('no-ventral-fusillae', numbers[absent], [absent]);
  }
  const middle: NumberId = spanMm >= numbers['span.fromC'] ? 'ventral.middle' : 'ventral.small';
  const id: NumberId = large ? 'ventral.large' : middle;
  return told('ventral-fusillae', 1 / numbers[id], [id]);
}

const IMPRESSIONS = { ventral: 'ventral.opinion', color: 'color.early', build: 'build.impression', seller: 'seller.word' } as const;

function impression({ from, towards }: Extract<LiveFinding, { kind: 'impression' }>, { genus, numbers }: LiveCircumstances): Finding {
  const kind = `impression-${from}` as const;
  if (from === 'color' && genus.earlyColorBasis === null) return silent(kind, 'color-without-source', null);
  const id = IMPRESSIONS[from];
  return told(kind, towards === 'female' ? numbers[id] : 1 / numbers[id], [id]);
}
