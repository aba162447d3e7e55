import type { AbdomenDistance } from '../domain/sexing/abdomenDistances.ts';
import { darwinCoreSexOf } from '../domain/sexing/darwinCore.ts';
import {
  type Answer,
  type Checklist,
  type Determination,
  type PinnedQuestion,
  type SexSign,
  StripAnswer,
} from '../domain/sexing/determination.ts';
import type { LiveFinding } from '../domain/sexing/live/liveSign.ts';
import type { OtherReading, StatementFacts } from '../domain/sexing/statement/statement.ts';
import { FORM_LABELS } from './checklist.ts';
import { counted, listed } from './counts.ts';
import { dayInWords, spanInWords } from './dates.ts';
import { estimateAsText } from './estimates.ts';
import { capitalized, GRADE_LABELS, uncapitalized } from './labels.ts';
import { distanceName } from './quantities.ts';
import { sexInWords } from './sex.ts';
import { STRIP_WORDS } from './sexing.ts';

/** One row of a statement. */
export interface StatementRow {
  readonly label: string;
  readonly text: string;
}

/** A statement for a buyer or a breeding partner: what is claimed, what it rests on, and what was not looked at. */
export interface StatementText {
  readonly title: string;
  readonly claim: string;
  readonly rows: readonly StatementRow[];
  readonly closing: string;
}

/** The whole statement in words. It names the method and never promises certainty. */
export function sexStatement(facts: StatementFacts): StatementText {
  const { leading, skin, promise } = facts;
  const rows: StatementRow[] = [
    row(
      'Animal',
      [facts.taxon === '' ? 'species not named' : `${facts.taxon} (as supplied)`, facts.code, facts.name ?? ''].filter(Boolean).join(', '),
    ),
    row('Read from', methodText(facts)),
    ...(skin ? [row('The skin', skinText(skin, leading))] : []),
    ...(leading ? [row('Seen on the skin', seenOnSkinText(leading.checklist)), row('Read by', readersText(leading))] : []),
    ...(facts.against.length > 0 ? [row('Read otherwise', othersText(facts.against, leading))] : []),
    ...(facts.takenBack.length > 0 ? [row('Taken back', othersText(facts.takenBack, leading))] : []),
    ...(facts.otherReadings > 0
      ? [row('Other readings', `${counted(facts.otherReadings, 'more reading')} on record, none against it`)]
      : []),
    row('Seen on the animal', shownText(facts.shown)),
    ...(skin && skin.distances.length > 0 ? [row('Measured on the photos', distancesText(skin.distances))] : []),
    row('Photos', photosText(facts)),
    ...(facts.sign.conflict ? [] : [row('Not checked', notCheckedText(facts))]),
    row('Size now', promise.sizeNow === '' ? 'not stated; the skin shows the size before the molt, the animal is larger' : promise.sizeNow),
    row('What would change this', changeText(facts)),
    row('If it proves wrong', promiseText(facts)),
    row('For databases', databaseText(facts)),
  ];
  return {
    title: 'Statement of sex',
    claim: claimOf(facts.sign, facts),
    rows,
    closing: `Written on ${dayInWords(facts.today)}. It says what was seen and how. It is a reading, not a guarantee of nature.`,
  };
}

/** The same as plain text, one row a line. */
export function statementAsText({ title, claim, rows, closing }: StatementText): string {
  return [title, '', claim, '', ...rows.map(({ label, text }) => `${label}: ${text}`), '', closing].join('\n');
}

function row(label: string, text: string): StatementRow {
  return { label, text };
}

/** Below "probable" an animal is unsexed, whatever it leans to; a male without bulbs on record is never a mature one. */
function claimOf({ sex, level, conflict }: SexSign, { shown }: StatementFacts): string {
  if (conflict) return 'Sex: unsexed. The readings on record contradict each other.';
  if (sex === 'anomalous') return 'Sex: anomalous. This animal shows signs of both sexes or of neither.';
  if ((sex !== 'female' && sex !== 'male') || level === null || level === 'leaning') return 'Sex: unsexed.';
  const mature = sex === 'male' && shown.some(({ finding }) => finding.kind === 'palpal-bulbs' && finding.seen);
  return `Sex: ${mature ? 'mature male' : sex}. How sure: ${level}, ${SURENESS[level]}.`;
}

const SURENESS = {
  probable: 'which is the lowest of three levels',
  strong: 'which is the middle one of three levels',
  established: 'which is the highest level',
} as const;

type Noted<Name extends 'magnification' | 'light' | 'condition' | 'view'> = Readonly<Record<NonNullable<Checklist[Name]>, string>>;

const AID: Noted<'magnification'> = { 'naked-eye': 'naked eye', loupe: 'loupe', stereomicroscope: 'stereomicroscope' };
const LIT: Noted<'light'> = {
  transmitted: 'light through the skin',
  side: 'light from the side',
  both: 'light through the skin and from the side',
};
const STATE: Noted<'condition'> = { wet: 'wet', dry: 'dry', both: 'wet and dry' };
const SIDE: Noted<'view'> = { inside: 'inner side', outside: 'outer side', both: 'inner and outer side' };

function methodText({ leading, carrying, shown, sign }: StatementFacts): string {
  if (!leading && sign.conflict) return 'readings that contradict each other; each is named below';
  if (!leading && carrying.length > 0) return `the animal itself, not from a skin: ${liveText(carrying)}`;
  if (!leading) return shown.length > 0 ? 'the animal alone, no skin' : 'nothing yet';
  if (leading.assessment.method === 'animal') return 'the animal itself, not from its skin';
  const { magnification, light, condition, view } = leading.checklist;
  const ways = [
    magnification === null ? 'magnification not noted' : AID[magnification],
    view === null ? 'side not noted' : SIDE[view],
    light === null ? 'light not noted' : LIT[light],
    condition === null ? 'wet or dry not noted' : STATE[condition],
  ];
  return `a shed skin; ${ways.join(', ')}`;
}

/** Each by sex, reader, day and skin: whoever reads the statement has to know what speaks against it. */
function othersText(others: readonly OtherReading[], leading: Determination | null): string {
  return others
    .map(({ determination, shedFrom, shedTo }) => {
      const { sex, level, reader, readOn, exuviaId, withdrawn } = determination;
      const skin = exuviaId === leading?.exuviaId ? 'the same skin' : `the skin shed ${spanInWords(shedFrom, shedTo)}`;
      const back = withdrawn === null ? '' : `; withdrawn: ${withdrawn.reason}`;
      return `${sexInWords({ sex, level, conflict: false })}, read from ${skin} by ${reader}, ${dayInWords(readOn)}${back}`;
    })
    .join('. ');
}

function distancesText(distances: readonly AbdomenDistance[]): string {
  return distances
    .map(({ distance, called, estimate }) => `${uncapitalized(distanceName(distance, called))} ${estimateAsText(estimate, 'mm')}`)
    .join('; ');
}

function photosText({ photos, photosGone }: StatementFacts): string {
  const named = photos.map(({ originalName, view, filedElsewhere }) => {
    const doubts = [
      ...(view === 'dorsal' ? ['seen from above, so the strip is not in it'] : []),
      ...(filedElsewhere ? ['no longer filed under this animal'] : []),
    ];
    return doubts.length === 0 ? originalName : `${originalName} (${doubts.join('; ')})`;
  });
  const gone = photosGone === 0 ? [] : [`${counted(photosGone, 'photo')} no longer on record`];
  return named.length + gone.length === 0 ? 'none' : listed([...named, ...gone]);
}

const PINNED_WORDS: Readonly<Record<PinnedQuestion, string>> = {
  ...STRIP_WORDS,
  skinMatchesAnimal: 'the skin',
  fourBookLungsFound: 'book lungs',
  comparedWithReference: 'compared with a skin of known sex',
  bulbsOnSkin: 'palps of the skin',
  palpalBulbsOnAnimal: 'palpal bulbs',
  eggSacLaid: 'egg sac',
};

/** A photo with what each of its marks was put to, in the order of the pins; one without a place is of the whole photo. */
export function photoCaption({ originalName, pins }: Pick<StatementFacts['photos'][number], 'originalName' | 'pins'>): string {
  const named = pins.map(({ question, mark }, place) => `${mark === null ? 'whole photo' : place + 1}: ${PINNED_WORDS[question]}`);
  return [originalName, ...named].join('; ');
}

/** Darwin Core (TDWG), term `sex`. */
function databaseText({ sign, leading, against, otherReadings, shown }: StatementFacts): string {
  const examined = leading !== null || against.length + otherReadings + shown.length > 0;
  const value = darwinCoreSexOf(sign, examined);
  return `Darwin Core term “sex”: ${value ?? 'left blank'}`;
}

function skinText(skin: NonNullable<StatementFacts['skin']>, leading: Determination | null): string {
  const size = [
    skin.carapaceMm === null ? '' : `carapace ${skin.carapaceMm.toFixed(1)} mm`,
    skin.legSpanMm === null ? '' : `leg span ${skin.legSpanMm.toFixed(0)} mm`,
  ].filter((part) => part !== '');
  const grade = leading?.checklist.grade ?? null;
  const strip = grade === null ? 'strip not graded' : `strip of grade ${GRADE_LABELS[grade]}`;
  return `shed ${spanInWords(skin.shedFrom, skin.shedTo)}; ${size.length === 0 ? 'size not measured' : size.join(', ')}; ${strip}`;
}

function readersText({ reader, readOn, checklist }: Determination): string {
  const first = `${reader}, ${dayInWords(readOn)}`;
  if (checklist.secondReaderAgrees !== 'yes' && checklist.secondReaderAgrees !== 'no') return `${first}; no second reader`;
  const blind = checklist.secondReaderBlind === 'yes' ? ', without knowing the first answer,' : '';
  const second = checklist.secondReader === null ? 'a second reader' : `${checklist.secondReader} as second reader`;
  return `${first}; ${second}${blind} ${checklist.secondReaderAgrees === 'yes' ? 'agrees' : 'does not agree'}`;
}

/** What was seen on the strip, and what was looked for and is not there; what is open stands under "Not checked". */
function seenOnSkinText(checklist: Checklist): string {
  const { receptacleForm: form } = checklist;
  const named = (answer: Answer) =>
    StripAnswer.options
      .filter((name) => checklist[name] === answer)
      .map((name) =>
        name === 'receptaclesSeen' && form !== null && answer === 'yes'
          ? `receptacles (${uncapitalized(FORM_LABELS[form])})`
          : STRIP_WORDS[name],
      );
  const [seen, absent] = [named('yes'), named('no')];
  if (seen.length + absent.length === 0) return 'nothing of the strip';
  const without = absent.length === 0 ? [] : [`read as absent: ${listed(absent)}`];
  return [...(seen.length === 0 ? [] : [listed(seen)]), ...without].join('; ');
}

/** Each with its day and who saw it. */
function shownText(shown: StatementFacts['shown']): string {
  const told = shown.flatMap(({ finding, on, by, inReading }) => {
    const words = findingsInWords([finding]);
    const who = by === '' ? '' : ` by ${by}`;
    return words.length === 0 ? [] : [`${listed(words)}, ${inReading ? 'told in the reading of' : 'seen'} ${dayInWords(on)}${who}`];
  });
  return told.length === 0 ? 'nothing recorded' : told.join('; ');
}

const LIVE_WORDS = {
  'tibial-hooks': 'tibial hooks',
  'sperm-web': 'sperm web',
  'egg-sac': 'egg sac',
} as const;

function liveText(findings: readonly LiveFinding[]): string {
  return listed([...new Set(findingsInWords(findings))]);
}

function findingsInWords(findings: readonly LiveFinding[]): string[] {
  return findings.flatMap((finding): string[] => {
    switch (finding.kind) {
      case 'palpal-bulbs':
        return [finding.seen ? 'palpal bulbs' : 'looked for palpal bulbs, none'];
      case 'tibial-hooks':
        return finding.seen ? [LIVE_WORDS[finding.kind]] : [];
      case 'ventral-fusillae':
        return [finding.seen ? 'fusillae from below' : 'no fusillae from below'];
      case 'impression':
        return [`an impression of a ${finding.towards} only (${finding.from})`];
      default:
        return [LIVE_WORDS[finding.kind]];
    }
  });
}

const CHECKED: readonly (readonly [keyof Checklist, string])[] = [
  ['skinMatchesAnimal', 'whether the skin is this animal’s'],
  ['fourBookLungsFound', 'all four book lungs'],
  ['receptaclesSeen', 'receptacles'],
  ['uterusExternusSeen', 'uterus externus'],
  ['accessoryOrgansSeen', 'accessory organs'],
  ['fusillaeOutsideSeen', 'fusillae on the outer side'],
  ['comparedWithReference', 'comparison with a skin of known sex'],
  ['secondReaderAgrees', 'a second reader'],
];

function notCheckedText({ leading, against, otherReadings }: StatementFacts): string {
  if (!leading) return against.length + otherReadings > 0 ? 'the skins, which do not carry this claim' : 'any skin';
  if (leading.checklist.skinMatchesAnimal === 'no') return 'any skin of this animal: the one that was read is said to be another’s';
  const open: readonly unknown[] = ['not-looked', 'cannot-tell'] satisfies Answer[];
  const unread = CHECKED.filter(([name]) => open.includes(leading.checklist[name])).map(([, words]) => words);
  return unread.length === 0 ? 'nothing of what is usually asked' : listed(unread);
}

function changeText({ sign: { sex, level, conflict }, shown }: StatementFacts): string {
  if (conflict) return 'that one side of the contradiction is corrected or withdrawn, or that the next skin decides';
  if (level === 'established') return 'a later contradiction on record';
  if (shown.some(({ finding }) => finding.kind === 'palpal-bulbs' && finding.seen))
    return 'a photo of the animal with its bulbs, or a sperm web';
  return sex === 'male' ? 'palpal bulbs on the animal, or its next skin' : 'the next skin, an egg sac, or palpal bulbs';
}

function promiseText({ promise: { ifWrong, until } }: StatementFacts): string {
  if (ifWrong === 'none') return 'nothing is promised';
  return `${capitalized(ifWrong)}, ${until === undefined ? 'no last day named' : `until ${dayInWords(until)}`}`;
}
