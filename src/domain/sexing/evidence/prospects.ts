import { z } from 'zod';
import type { Checklist } from '../determination.ts';
import type { LiveFinding } from '../live/liveSign.ts';
import { bestOf } from './combine.ts';
import type { EvidenceModel } from './model.ts';
import type { StripReading } from './skinFindings.ts';
import { Band, type EvidenceCase, type Weighing, weigh } from './weigh.ts';

/** Something that could still be done or happen. */
export const Step = z
  .enum([
    'match-skin',
    'find-all-lungs',
    'look-inside',
    'look-for-lip',
    'look-outside',
    'use-stereomicroscope',
    'ask-blind-reader',
    'compare-with-reference',
    'next-skin-with-receptacles',
    'next-skin-empty',
    'bulbs-appear',
    'egg-sac-laid',
  ])
  .meta({ id: 'EvidenceStep' });
export type Step = z.infer<typeof Step>;

/** What the band would become by it. */
export const Prospect = z
  .object({ step: Step, towards: z.enum(['female', 'male']).nullable(), band: Band, conflict: z.boolean() })
  .meta({ id: 'EvidenceProspect' });
export type Prospect = z.infer<typeof Prospect>;

type Change = (evidence: EvidenceCase, exuviaId: string) => EvidenceCase;

type Answers = Partial<Checklist>;

function answering(applies: (checklist: Checklist) => boolean, answers: Answers | ((checklist: Checklist) => Answers)): Change {
  const after = (checklist: Checklist): Checklist =>
    applies(checklist) ? { ...checklist, ...(typeof answers === 'function' ? answers(checklist) : answers) } : checklist;
  return (evidence, exuviaId) => {
    const speaking = speakingFor(evidence, exuviaId);
    const readings = evidence.readings.map((reading) =>
      reading === speaking ? { ...reading, checklist: after(reading.checklist) } : reading,
    );
    return { ...evidence, readings };
  };
}

/** The reading that speaks for a skin: not one that was only begun, beside one that is signed. */
function speakingFor({ readings }: EvidenceCase, exuviaId: string): StripReading | null {
  const ofSkin = readings.filter((reading) => reading.exuviaId === exuviaId);
  return ofSkin.length === 0 ? null : bestOf(ofSkin);
}

/** A next skin, as large as this one at least: read in the same light. */
function anotherSkin(answers: Partial<Checklist>): Change {
  return (evidence, exuviaId) => {
    const here = speakingFor(evidence, exuviaId);
    if (!here) return evidence;
    const checklist: Checklist = {
      ...here.checklist,
      grade: 'A',
      skinMatchesAnimal: 'yes',
      fourBookLungsFound: 'yes',
      view: 'both',
      ...answers,
    };
    return { ...evidence, readings: [...evidence.readings, { exuviaId: `${exuviaId} and the next`, checklist }] };
  };
}

function happening(finding: LiveFinding): Change {
  return (evidence) => ({ ...evidence, live: [...evidence.live, { finding, photographed: true, carapaceMm: null }] });
}

const EMPTY = { receptaclesSeen: 'no', uterusExternusSeen: 'no', accessoryOrgansSeen: 'no', fusillaeOutsideSeen: 'yes' } as const;
const CLEAR = { receptaclesSeen: 'yes', uterusExternusSeen: 'yes', accessoryOrgansSeen: 'no', fusillaeOutsideSeen: 'no' } as const;
const open = (answer: Checklist['receptaclesSeen']): boolean => answer === 'not-looked' || answer === 'cannot-tell';

const CHANGES: Readonly<Record<Step, Change>> = {
  'match-skin': answering(({ skinMatchesAnimal }) => skinMatchesAnimal !== 'yes', { skinMatchesAnimal: 'yes' }),
  'find-all-lungs': answering(({ fourBookLungsFound }) => fourBookLungsFound !== 'yes', { fourBookLungsFound: 'yes' }),
  'look-inside': answering(({ view }) => view === 'outside', { view: 'both' }),
  'look-for-lip': answering(({ uterusExternusSeen }) => open(uterusExternusSeen), { uterusExternusSeen: 'yes' }),
  'look-outside': answering(
    ({ fusillaeOutsideSeen }) => open(fusillaeOutsideSeen),
    ({ view }) => ({ fusillaeOutsideSeen: 'yes', view: view === 'inside' ? 'both' : view }),
  ),
  'use-stereomicroscope': answering(({ magnification }) => magnification !== 'stereomicroscope', { magnification: 'stereomicroscope' }),
  'ask-blind-reader': answering(() => true, { secondReaderAgrees: 'yes', secondReaderBlind: 'yes' }),
  'compare-with-reference': answering(({ readerExperience }) => readerExperience === 'first-time', { comparedWithReference: 'yes' }),
  'next-skin-with-receptacles': anotherSkin(CLEAR),
  'next-skin-empty': anotherSkin(EMPTY),
  'bulbs-appear': happening({ kind: 'palpal-bulbs', seen: true, ultimateMoltId: null }),
  'egg-sac-laid': happening({ kind: 'egg-sac', fertile: 'not-known' }),
};

/** Every step that would change what the evidence of this animal comes to, tried by weighing it anew. */
export function prospectsOf(evidence: EvidenceCase, exuviaId: string, model: EvidenceModel): Prospect[] {
  const now = weigh(evidence, model);
  return Step.options
    .filter((step) => !isIdle(step, evidence))
    .flatMap((step) => {
      const then = weigh(CHANGES[step](evidence, exuviaId), model);
      return differs(now, then) ? [{ step, towards: then.towards, band: then.band, conflict: then.conflict }] : [];
    });
}

/** Nobody can wait for receptacles, or for a strip without them, in a genus that has none. */
function isIdle(step: Step, { genus }: EvidenceCase): boolean {
  return genus.flags.withoutSpermathecae && (step === 'next-skin-with-receptacles' || step === 'next-skin-empty');
}

function differs(now: Weighing, then: Weighing): boolean {
  return now.band !== then.band || now.conflict !== then.conflict || (now.towards !== then.towards && then.band !== 'unsexed');
}
