import type { CalendarEntry, CanceledEntry } from '../domain/care/calendar.ts';
import { RECOVER_CAUTION } from './cautions.ts';
import { dayInWords } from './dates.ts';

/** What a calendar shows of an entry. */
export interface CalendarWords {
  summary: string;
  description: string;
}

const NO_DIAGNOSIS = 'What this program says about times is no diagnosis.';

export function calendarWords(entry: CalendarEntry | CanceledEntry, animal: string): CalendarWords {
  switch (entry.kind) {
    case 'feeding-hold':
      return {
        summary: `${animal}: ${SUMMARIES['feeding-hold']}`,
        description: `Molted on ${dayInWords(entry.from)}. No prey before ${dayInWords(entry.until)}, and not before the fangs are black. Water at any time.`,
      };
    case 'fang-check':
      return {
        summary: `${animal}: ${SUMMARIES['fang-check']}`,
        description: 'The wait is over by the date. Prey only when the fangs are black: soft ones break.',
      };
    case 'molt-expected':
      return {
        summary: `${animal}: ${SUMMARIES['molt-expected']}`,
        description: `Nine chances in ten on these days, as likely before ${dayInWords(entry.likely)} as after. A later feed moves them. Animals keep to no calendar.`,
      };
    case 'molt-check':
      return entry.state === 'concern'
        ? {
            summary: `${animal}: ${SUMMARIES['molt-concern']}`,
            description: `Longer than it should take by now. Touch and pull nothing. Ask an experienced keeper or a veterinarian with exotic-animal experience. ${NO_DIAGNOSIS}`,
          }
        : {
            summary: `${animal}: ${SUMMARIES['molt-look-closer']}`,
            description: `Longer than usual by now. Look without touching anything. ${NO_DIAGNOSIS}`,
          };
    case 'skin-check':
      return {
        summary: `${animal}: ${SUMMARIES['skin-check']}`,
        description: RECOVER_CAUTION,
      };
    case 'not-due':
      return {
        summary: `Canceled: ${animal}: ${SUMMARIES[entry.was]}`,
        description: 'There is nothing of this kind to do now. It stands here so that a calendar takes out what an earlier file put in.',
      };
  }
}

const SUMMARIES: Readonly<Record<CanceledEntry['was'], string>> = {
  'feeding-hold': 'no prey yet',
  'fang-check': 'are the fangs black?',
  'molt-expected': 'next molt expected',
  'molt-look-closer': 'look in on the molt',
  'molt-concern': 'still molting?',
  'skin-check': 'recover the skin',
};
