import type { CalendarEntry } from '../domain/care/calendar.ts';
import { RECOVER_CAUTION } from './cautions.ts';
import { dayInWords } from './dates.ts';

/** What a calendar shows of an entry. */
export interface CalendarWords {
  summary: string;
  description: string;
}

const NO_DIAGNOSIS = 'What this program says about times is no diagnosis.';

export function calendarWords(entry: CalendarEntry, animal: string): CalendarWords {
  switch (entry.kind) {
    case 'feeding-hold':
      return {
        summary: `${animal}: no prey yet`,
        description: `Molted on ${dayInWords(entry.from)}. No prey before ${dayInWords(entry.until)}, and not before the fangs are black. Water at any time.`,
      };
    case 'fang-check':
      return {
        summary: `${animal}: are the fangs black?`,
        description: 'The wait is over by the date. Prey only when the fangs are black: soft ones break.',
      };
    case 'molt-expected':
      return {
        summary: `${animal}: next molt expected`,
        description: `Nine chances in ten on these days, as likely before ${dayInWords(entry.likely)} as after. A later feed moves them. Animals keep to no calendar.`,
      };
    case 'molt-check':
      return entry.state === 'concern'
        ? {
            summary: `${animal}: still molting?`,
            description: `Longer than it should take by now. Touch and pull nothing. Ask an experienced keeper or a veterinarian with exotic-animal experience. ${NO_DIAGNOSIS}`,
          }
        : {
            summary: `${animal}: look in on the molt`,
            description: `Longer than usual by now. Look without touching anything. ${NO_DIAGNOSIS}`,
          };
    case 'skin-check':
      return {
        summary: `${animal}: recover the skin`,
        description: RECOVER_CAUTION,
      };
  }
}
