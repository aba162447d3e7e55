import type { GrowthFinding } from '../domain/growth/findings.ts';
import type { MaturityHint } from '../domain/growth/maturityHint.ts';
import { CROSBY_FALSE_ALARMS } from '../domain/growth/missed/crosby.ts';
import type { MissedMoltCheck } from '../domain/growth/missed/missedMolts.ts';
import { counted, listed } from './counts.ts';
import { dayInWords, daysInWords } from './dates.ts';
import { uncapitalized } from './labels.ts';

/** How the rung of a molt is called where the sentence goes on. */
export type NameOfMolt = (moltId: string) => string;

/** Of a skin whose carapace does not fit those around it, beside its figures. */
export const ODD_IN_ROW = 'does not fit the skins beside it; left out of forecasts';

/** Which of two skins is the likelier mistake. `name` as it begins a sentence: "Instar 8". */
export function oddOneInWords(name: string): string {
  return `The rest of the row fits together without ${uncapitalized(name)}: look at that skin first.`;
}

/** What is odd about a row of skins, and what to look at. */
export interface OddityWords {
  readonly odd: string;
  readonly ask: string;
}

export function findingInWords(finding: GrowthFinding, nameOf: NameOfMolt): OddityWords {
  const between = (pair: { earlierMoltId: string; laterMoltId: string }) =>
    `${nameOf(pair.earlierMoltId)} and ${uncapitalized(nameOf(pair.laterMoltId))}`;
  switch (finding.kind) {
    case 'no-size':
      return {
        odd: 'No skin has a carapace length yet.',
        ask: 'Days between molts can be followed; sizes and ratios begin with a measured skin.',
      };
    case 'one-size':
      return { odd: 'One skin is measured so far.', ask: 'There is a size but no ratio yet: a second measured skin gives one.' };
    case 'two-sizes':
      return {
        odd: 'Two skins are measured so far.',
        ask: 'They give a ratio, but nothing tells how far ratios scatter: a fit and its bands begin with the third.',
      };
    case 'place-unknown':
      return {
        odd: `${listed(finding.moltIds.map(nameOf))} ${finding.moltIds.length === 1 ? 'has' : 'have'} no sure place in the row.`,
        ask: 'Measured, but left out of ratios and fits. An instar number noted at one of its molts settles it.',
      };
    case 'equal-sizes':
      return {
        odd: `${between(finding)} cannot be told apart in size by these readings.`,
        ask: 'A closer reading of both tells. If they are alike indeed: was one skin photographed twice?',
      };
    case 'shrunk':
      return {
        odd: `From ${uncapitalized(between(finding).replace(' and ', ' to '))} the carapace shrinks, to ${finding.ratio.toFixed(2)} times its length.`,
        ask: 'Is the instar right? Is the scale right? Skins of two animals may have been mixed up. A carapace hardly ever shrinks.',
      };
    case 'absurd-ratio':
      return {
        odd: `From ${uncapitalized(between(finding).replace(' and ', ' to '))} the carapace becomes ${finding.perInstar.toFixed(2)} times as long per instar.`,
        ask: `No reared tarantula is known to do that at one molt. Look at the scale of both photos, then at whose skins they are${finding.perInstar > 1 ? '; or molts between them went unseen' : ''}.`,
      };
    case 'dates-out-of-order':
      return {
        odd: `The instars noted at ${uncapitalized(between(finding))} do not fit the order of their days.`,
        ask: 'One of the days or one of the instar numbers is wrong. Until that is put right, the row follows the days alone and counts no instar.',
      };
    case 'one-day':
      return {
        odd: `${between(finding)} were both shed on ${dayInWords(finding.day)}.`,
        ask: 'Is one of the days only a guess? Then note it as a span. The interval between them is left out.',
      };
    case 'future-date':
      return {
        odd: `${nameOf(finding.moltId)} is dated ${dayInWords(finding.day)}, which has not come yet.`,
        ask: 'Put the day right on the life line.',
      };
    case 'no-interval':
      return {
        odd: 'No two molts are dated well enough to count the days between them.',
        ask: 'Sizes can be followed all the same; the animal has no interval of its own yet, so a next molt rests on others.',
      };
  }
}

/** Where the classical criterion is known to be wrong. */
const FALSE_ALARMS = `Rows reared under watch, with nothing missing, raise it too: ${listed(
  CROSBY_FALSE_ALARMS.map(({ taxon, percents }) => `${taxon} (${percents.map((percent) => `${signed(percent)} %`).join(' and ')})`),
)}.`;

/** A suggestion that a molt is missing, as a question with its grounds. */
export function missedInWords(check: MissedMoltCheck, nameOf: NameOfMolt): { title: string; grounds: string } {
  const { verdict, suggestedSkipped, probabilities } = check;
  const missing = suggestedSkipped === 1 ? 'a missed molt' : `${suggestedSkipped} missed molts`;
  const where = `between ${uncapitalized(nameOf(check.earlierMoltId))} and ${uncapitalized(nameOf(check.laterMoltId))}`;
  const percent = Math.round(100 * (1 - (probabilities[0] ?? 1)));
  const chance = percent < 1 ? 'A missing molt is very unlikely.' : `Chance of at least one missing molt: ${Math.min(percent, 99)} %.`;
  const crosby =
    check.crosbyPercent === null
      ? ''
      : ` By Crosby's criterion the ratio changes by ${signed(check.crosbyPercent)} % here; beyond 10 % either way it raises its alarm, also on complete rows.`;
  return {
    title: verdict === 'irregular' ? `Irregular growth ${where}` : `${verdict === 'likely' ? 'Likely' : 'Possible'}: ${missing} ${where}`,
    grounds:
      `The carapace grows ${check.observedRatio.toFixed(2)} times over ${counted(check.instarsOnRecord, 'molt')} on record; ` +
      `a molt here is expected to make it ${check.expectedRatio.toFixed(2)} times as long. ` +
      `${chance}${crosby}${verdict === 'irregular' ? ` ${FALSE_ALARMS}` : ''}`,
  };
}

function signed(value: number): string {
  return `${value < 0 ? '−' : '+'}${Math.abs(value).toFixed(0)}`;
}

/** Whether he has grown up: asked, never stated. */
export function maturityInWords({ legsGainedPercent, waitedDays, longestIntervalDays }: MaturityHint): string {
  const reasons = [
    legsGainedPercent !== null && `leg I gained ${legsGainedPercent.toFixed(0)} % against the carapace at the last molt`,
    waitedDays !== null &&
      longestIntervalDays !== null &&
      `the last molt is ${daysInWords(waitedDays)} ago, while the longest of his latest intervals was ${longestIntervalDays}`,
  ].filter((reason) => reason !== false);
  return `Could this be a mature male? The reasons to ask: ${listed(reasons)}. Look for palpal bulbs and tibial hooks; a mature male seldom molts again.`;
}
