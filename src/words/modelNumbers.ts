import type { NumberId } from '../domain/sexing/evidence/numbers.ts';

export interface NumberGroup {
  readonly title: string;
  readonly note: string;
  readonly numbers: readonly (readonly [NumberId, string])[];
}

/** Every number of the evidence model under what it does, in the order in which it is shown. */
export const NUMBER_GROUPS: readonly NumberGroup[] = [
  {
    title: 'Before anything is seen',
    note: 'A chance between 0 and 1.',
    numbers: [['prior.female', 'An animal is a female']],
  },
  {
    title: 'Size classes of skins',
    note: 'From A, the smallest, to D; the grades of a strip have letters too, and are something else. Lengths in millimeters, or shares of an adult female’s carapace. The smallest size class that any of the three gives counts.',
    numbers: [
      ['span.fromB', 'Leg span from which a skin is of size class B, mm'],
      ['span.fromC', 'Leg span from which a skin is of size class C, mm'],
      ['span.aboveD', 'Leg span above which a skin is of size class D, mm'],
      ['span.largeAbove', 'Leg span above which emptiness may weigh, and a skin is clear, mm'],
      ['carapace.largeAbove', 'Carapace above which the same holds, mm'],
      ['carapace.fromB', 'Carapace from which a skin is of size class B, mm'],
      ['carapace.fromC', 'Carapace from which a skin is of size class C, mm'],
      ['carapace.aboveD', 'Carapace above which a skin is of size class D, mm'],
      ['relative.fromB', 'Share of the adult carapace from which a skin is of size class B'],
      ['relative.fromC', 'Share of the adult carapace from which a skin is of size class C'],
      ['relative.aboveD', 'Share of the adult carapace above which a skin is of size class D'],
    ],
  },
  {
    title: 'Receptacles of a female are seen',
    note: 'The chance that a competent reader sees them on a readable strip.',
    numbers: [
      ['seen.A', 'On a skin of size class A'],
      ['seen.B', 'On a skin of size class B'],
      ['seen.C', 'On a skin of size class C'],
      ['seen.D', 'On a skin of size class D'],
    ],
  },
  {
    title: 'Something of a male is taken for them',
    note: 'The chance of that mistake.',
    numbers: [
      ['mistaken.A', 'On a skin of size class A'],
      ['mistaken.B', 'On a skin of size class B'],
      ['mistaken.C', 'On a skin of size class C'],
      ['mistaken.D', 'On a skin of size class D'],
    ],
  },
  {
    title: 'What changes these chances',
    note: 'Factors.',
    numbers: [
      ['seen.gradeB', 'Seen, on a strip of grade B'],
      ['seen.gradeC', 'Seen, on a strip of grade C'],
      ['seen.unaided', 'Seen, on a skin of size class A or B without a stereomicroscope'],
      ['seen.weak', 'Seen, in a weakly sclerotized genus'],
      ['seen.novice', 'Seen, by a first-time reader without a reference skin'],
      ['mistaken.novice', 'Mistaken, by a first-time reader without a reference skin'],
      ['mistaken.accessory', 'Mistaken, in a genus with accessory organs while the lip was not seen'],
      ['mistaken.lipAbsent', 'Mistaken, in any other genus where the lip is absent'],
      ['mistaken.blindReaders', 'Mistaken, where two readers agree and the second did not know'],
    ],
  },
  {
    title: 'Strength of other findings on a skin',
    note: 'How many times likelier with the sex that it speaks for.',
    numbers: [
      ['lip.factor', 'The lip seen together with receptacles, on top of them'],
      ['lip.most', 'The most that receptacles with a lip may weigh'],
      ['accessory.male', 'Accessory organs without a lip, for a male'],
      ['fusillae.skinB', 'Fusillae outside, size class B, for a male'],
      ['fusillae.skinC', 'Fusillae outside, size class C, for a male'],
      ['fusillae.skinD', 'Fusillae outside, size class D, for a male'],
      ['fusillae.withAbsenceMost', 'The most that fusillae with an empty strip may weigh'],
    ],
  },
  {
    title: 'Strength of what the animal itself shows',
    note: 'How many times likelier with the sex that it speaks for.',
    numbers: [
      ['bulbs.photographed', 'Palpal bulbs with a photo, for a male'],
      ['bulbs.told', 'Palpal bulbs without a photo, for a male'],
      ['hooks.seen', 'Hooks, in a genus that has them, for a male'],
      ['noBulbs.least', 'No bulbs, at the size from which it counts, for a female'],
      ['noBulbs.most', 'No bulbs, at full adult size, for a female'],
      ['noBulbs.fromRelativeSize', 'Share of the adult carapace from which “no bulbs” counts'],
      ['noBulbs.fullAtRelativeSize', 'Share of the adult carapace at which it counts in full'],
      ['eggSac.laid', 'An egg sac, for a female'],
      ['spermWeb.seen', 'A sperm web without a photo, for a male'],
      ['spermWeb.photographed', 'A sperm web with a photo, for a male'],
      ['ventral.large', 'Fusillae from below, large animal with a photo, for a male'],
      ['ventral.middle', 'Fusillae from below, middle size, for a male'],
      ['ventral.small', 'Fusillae from below, small or without a photo, for a male'],
      ['ventral.absentLarge', 'No fusillae from below, large animal with a photo, for a female'],
      ['ventral.absentSmaller', 'No fusillae from below, otherwise, for a female'],
      ['ventral.opinion', 'Somebody’s opinion from below, either way'],
      ['color.early', 'Early color, where a source says that it differs'],
      ['build.impression', 'Build, either way'],
      ['seller.word', 'The word of a seller, either way'],
    ],
  },
  {
    title: 'What holds the result down',
    note: 'Limits that no arithmetic passes, and how much less a second skin counts.',
    numbers: [
      ['weakerSkin.power', 'Power to which a weaker skin of the same animal is raised'],
      ['cap.maleByAbsence', 'A male by absence alone, at most'],
      ['cap.maleWithoutBulbs', 'A male without bulbs, at most'],
      ['cap.femaleOneSkin', 'A female on one skin, at most'],
      ['cap.smallSkins', 'Either sex on small skins alone, at most'],
      ['cap.doubtful', 'Opinions alone, receptacles without a lip, or readers who disagree, at most'],
      ['conflict.strength', 'Strength above which two findings that contradict make a conflict'],
    ],
  },
  {
    title: 'Where the bands begin',
    note: 'Chances from which a band is shown; the chances themselves are never shown.',
    numbers: [
      ['band.leaning', 'Leaning, from'],
      ['band.probable', 'Probable, from'],
      ['band.strong', 'Strong, above'],
      ['band.established', 'Established, from'],
    ],
  },
];

const NAMES: ReadonlyMap<string, string> = new Map(
  NUMBER_GROUPS.flatMap(({ title, numbers }) => numbers.map(([id, name]) => [id, `${title}: ${name}`] as const)),
);

/** "Where the bands begin: Strong, above". */
export function numberInWords(id: string): string {
  return NAMES.get(id) ?? id;
}
