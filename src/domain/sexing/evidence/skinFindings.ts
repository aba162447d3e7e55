import type { Checklist } from '../determination.ts';
import type { GenusProfile } from '../genus/profile.ts';
import { type Finding, silent } from './item.ts';
import type { ModelNumbers, NumberId } from './numbers.ts';
import { type SizeClass, sizeClassOf } from './sizeClass.ts';

/** What the model has to know of the genus. */
export type GenusKnown = Pick<GenusProfile, 'flags' | 'hooks' | 'adultCarapaceMm' | 'earlyColorBasis'>;

export interface StripReading {
  readonly exuviaId: string;
  readonly checklist: Checklist;
}

/** A skin of unknown size counts as the smallest: nothing is claimed for it that only a large one allows. */
export function sizeClassOfSkin(checklist: Checklist, genus: GenusKnown, numbers: ModelNumbers): SizeClass | null {
  const { legSpanMm, carapaceLengthMm: carapaceMm } = checklist;
  return sizeClassOf({ legSpanMm, carapaceMm, adultCarapaceMm: genus.adultCarapaceMm }, numbers);
}

/** Everything one reading of one skin found; what weighs nothing is kept with the reason. */
export function skinFindings(reading: StripReading, genus: GenusKnown, numbers: ModelNumbers): Finding[] {
  const { exuviaId, checklist } = reading;
  const innerSide = [...stripFinding(reading, genus, numbers), ...accessoryFinding(reading, numbers)];
  const strip = [...unless(innerSilence(checklist, genus), innerSide), ...fusillaeFinding(reading, genus, numbers)];
  const heard = unless(stripSilence(checklist), strip);
  const onSkin = checklist.bulbsOnSkin === 'yes' ? [silent('bulbs-on-skin', 'bulbs-not-expected-on-skin', exuviaId)] : [];
  return [...heard, ...onSkin];
}

function unless(silence: Finding['silence'], findings: readonly Finding[]): Finding[] {
  return findings.map((finding) => (silence === null ? finding : silent(finding.kind, silence, finding.exuviaId)));
}

/** Only a skin known to be this animal's, read at a place known to be the right one, says anything of its sex. */
function stripSilence(checklist: Checklist): Finding['silence'] {
  if (checklist.skinMatchesAnimal !== 'yes') return 'skin-of-another-animal';
  if (checklist.grade === null || checklist.grade === 'D') return 'strip-not-readable';
  return checklist.fourBookLungsFound === 'yes' ? null : 'place-not-found';
}

/** Receptacles, lip and accessory organs lie on the inner side; the first and the last look alike, and only a lip tells them apart. */
function innerSilence(checklist: Checklist, { flags }: GenusKnown): Finding['silence'] {
  const { view, receptaclesSeen, accessoryOrgansSeen, uterusExternusSeen: lip } = checklist;
  if (view === 'outside') return 'read-from-outside';
  if (receptaclesSeen !== 'yes' || lip === 'yes') return null;
  const lookAlikes = accessoryOrgansSeen === 'yes' || (flags.maleAccessoryOrgans && lip === 'no');
  return lookAlikes ? 'organs-without-lip' : null;
}

/** Seen, and yet perhaps a male's: nobody saw the lip that a female has where it was looked for, or where males carry look-alikes. */
export function mayBeLookAlike({ kind, numbers }: Finding): boolean {
  return kind === 'receptacles-seen' && (numbers.includes('mistaken.lipAbsent') || numbers.includes('mistaken.accessory'));
}

/** One skin, one genital result: receptacles seen, or a readable strip without them, or a lip alone. */
function stripFinding({ exuviaId, checklist }: StripReading, genus: GenusKnown, numbers: ModelNumbers): Finding[] {
  const { receptaclesSeen: seen, uterusExternusSeen: lip } = checklist;
  const chances = chancesOf(checklist, genus, numbers);
  const lipFactor = lip === 'yes' ? numbers['lip.factor'] : 1;
  const alone: Finding[] =
    lip === 'yes' ? [{ kind: 'lip-alone', ratio: numbers['lip.factor'], numbers: ['lip.factor'], silence: null, exuviaId }] : [];
  if (genus.flags.withoutSpermathecae && (seen === 'yes' || seen === 'no')) {
    return [silent(seen === 'yes' ? 'receptacles-seen' : 'strip-empty', 'genus-without-spermathecae', exuviaId), ...alone];
  }
  if (seen === 'yes') {
    const base = chances.seen <= chances.mistaken ? 1 : chances.seen / chances.mistaken;
    const ratio = Math.min(base * lipFactor, Math.max(base, numbers['lip.most']));
    if (ratio === 1) return [silent('receptacles-seen', 'as-likely-mistaken', exuviaId)];
    const used: NumberId[] = lip === 'yes' ? [...chances.numbers, 'lip.factor', 'lip.most'] : chances.numbers;
    return [{ kind: 'receptacles-seen', ratio, numbers: used, silence: null, exuviaId }];
  }
  if (seen !== 'no') return alone;
  if (chances.seen <= chances.mistaken) return [silent('strip-empty', 'as-likely-mistaken', exuviaId), ...alone];
  const ratio = (1 - chances.seen) / (1 - chances.mistaken);
  return [{ kind: 'strip-empty', ratio, numbers: chances.numbers, silence: null, exuviaId }, ...alone];
}

interface Chances {
  /** That the spermatheca of a female is seen, and that something of a male's is taken for one. */
  readonly seen: number;
  readonly mistaken: number;
  readonly numbers: NumberId[];
}

/** The chances of the size class, with every modifier that applies. */
function chancesOf(checklist: Checklist, genus: GenusKnown, numbers: ModelNumbers): Chances {
  const sizeClass = sizeClassOfSkin(checklist, genus, numbers) ?? 'A';
  const small = sizeClass === 'A' || sizeClass === 'B';
  const novice = checklist.readerExperience === 'first-time' && checklist.comparedWithReference !== 'yes';
  const blind = checklist.secondReaderAgrees === 'yes' && checklist.secondReaderBlind === 'yes';
  const ifSeen: [boolean, NumberId][] = [
    [genus.flags.weaklySclerotized, 'seen.weak'],
    [checklist.grade === 'B', 'seen.gradeB'],
    [checklist.grade === 'C', 'seen.gradeC'],
    [small && checklist.magnification !== 'stereomicroscope', 'seen.unaided'],
    [novice, 'seen.novice'],
  ];
  const { receptaclesSeen, uterusExternusSeen: lip } = checklist;
  const lookAlikes = genus.flags.maleAccessoryOrgans;
  const ifMistaken: [boolean, NumberId][] = [
    [lookAlikes && lip !== 'yes', 'mistaken.accessory'],
    // Females have a lip: paired bodies where it was looked for and is absent may be look-alikes in any genus.
    [!lookAlikes && receptaclesSeen === 'yes' && lip === 'no', 'mistaken.lipAbsent'],
    [novice, 'mistaken.novice'],
    [blind, 'mistaken.blindReaders'],
  ];
  const used = [...ifSeen, ...ifMistaken].filter(([applies]) => applies).map(([, id]) => id);
  return {
    seen: Math.min(0.999, product(numbers[`seen.${sizeClass}`], ifSeen, numbers)),
    mistaken: Math.min(0.999, product(numbers[`mistaken.${sizeClass}`], ifMistaken, numbers)),
    numbers: [`seen.${sizeClass}`, `mistaken.${sizeClass}`, ...used],
  };
}

function product(base: number, modifiers: readonly [boolean, NumberId][], numbers: ModelNumbers): number {
  return modifiers.reduce((value, [applies, id]) => (applies ? value * numbers[id] : value), base);
}

/** Small paired bodies without a lip; with one, the receptacles speak. */
function accessoryFinding({ exuviaId, checklist }: StripReading, numbers: ModelNumbers): Finding[] {
  if (checklist.accessoryOrgansSeen !== 'yes' || checklist.uterusExternusSeen === 'yes') return [];
  return [{ kind: 'accessory-organs', ratio: 1 / numbers['accessory.male'], numbers: ['accessory.male'], silence: null, exuviaId }];
}

/** The only sign on a skin that speaks for a male by being there; the numbers hold for grade A only. */
function fusillaeFinding({ exuviaId, checklist }: StripReading, genus: GenusKnown, numbers: ModelNumbers): Finding[] {
  if (checklist.fusillaeOutsideSeen !== 'yes') return [];
  if (checklist.view === 'inside') return [silent('fusillae-outside', 'read-from-inside', exuviaId)];
  if (checklist.grade !== 'A') return [silent('fusillae-outside', 'grade-below-a', exuviaId)];
  const sizeClass = sizeClassOfSkin(checklist, genus, numbers) ?? 'A';
  if (sizeClass === 'A') return [silent('fusillae-outside', 'skin-too-small', exuviaId)];
  const id: NumberId = `fusillae.skin${sizeClass}`;
  return [{ kind: 'fusillae-outside', ratio: 1 / numbers[id], numbers: [id], silence: null, exuviaId }];
}
