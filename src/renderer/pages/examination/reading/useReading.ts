import { useQueryClient } from '@tanstack/react-query';
import { useState, useSyncExternalStore } from 'react';
import type { AnswerOf } from '../../../../api/contract/contract.ts';
import type { Refusal } from '../../../../domain/failure.ts';
import { BLANK_CHECKLIST, type ReadingStep, type UnfinishedDetermination } from '../../../../domain/sexing/determination.ts';
import { ask } from '../../../client/ask.ts';
import { answerKey } from '../../../client/queries.ts';
import { ReadingSaver, type ReadingState } from './readingSaver.ts';

type Sheet = AnswerOf<'GET /api/exuviae/{exuviaId}/examination'>;

const KEY = 'GET /api/exuviae/{exuviaId}/examination';

export interface OpenReading extends Omit<ReadingState, 'kept'> {
  readonly reading: UnfinishedDetermination;
  readonly begun: boolean;
  readonly step: ReadingStep;
  /** To another step; what was answered remembers it. */
  readonly go: (step: ReadingStep) => void;
  readonly change: (changes: Partial<UnfinishedDetermination>) => void;
  /** Gives up what was answered. */
  readonly giveUp: () => void;
  readonly insist: () => void;
  /** Shows what the archive holds instead of what stands here. */
  readonly takeStored: () => Promise<void>;
  /** When nothing is on its way any more: the version of the reading that this window knows of. */
  readonly settled: () => Promise<number>;
  /** Lets the keeper say which one counts, where a signature met a later reading of another window. */
  readonly contest: (refusal: Refusal) => void;
}

/** At which step each skin was left, by its id, for as long as the window is open. */
export interface StepsLeft {
  readonly steps: Readonly<Record<string, ReadingStep | null>>;
  /** @param step null: its reading has ended. */
  readonly leaveAt: (exuviaId: string, step: ReadingStep | null) => void;
}

/**
 * The reading of one skin, kept in the archive from the first answer on until it is signed or given up. Before that there is
 * nothing to keep, so whoever only looked around goes on at the step this window has seen last.
 */
export function useReading(sheet: Sheet, today: string, { steps, leaveAt }: StepsLeft): OpenReading {
  const client = useQueryClient();
  const { exuvia } = sheet;
  const question = { path: { exuviaId: exuvia.id } };
  const [saver] = useState(
    () =>
      new ReadingSaver(sheet.underWay, async (reading, version) => {
        const underWay = await ask('PUT /api/exuviae/{exuviaId}/examination', { ...question, body: { reading }, version });
        // Whoever leaves this page and comes back finds what was answered last.
        client.setQueryData<Sheet>(answerKey(KEY, question), (before) => before && { ...before, underWay });
        void client.invalidateQueries({ queryKey: ['GET /api/exuviae'] });
        return underWay;
      }),
  );
  const { kept, saving, error } = useSyncExternalStore(saver.subscribe, saver.state);
  const [step, setStep] = useState<ReadingStep>(kept?.step ?? steps[exuvia.id] ?? 'match');
  const stand = (next: ReadingStep) => {
    setStep(next);
    leaveAt(exuvia.id, next);
  };
  const end = () => {
    setStep('match');
    leaveAt(exuvia.id, null);
  };
  const reading = kept ?? beginning(sheet, today);
  return {
    reading,
    begun: kept !== null,
    saving,
    error,
    step,
    go: (next) => {
      stand(next);
      const { kept: now } = saver.state();
      if (now !== null && now.step !== next) saver.keep({ ...now, step: next });
    },
    change: (changes) => saver.keep({ ...(saver.state().kept ?? { ...reading, step }), ...changes }),
    giveUp: () => {
      end();
      saver.keep(null);
    },
    insist: () => saver.insist(),
    takeStored: async () => {
      const { underWay } = await ask(KEY, question);
      saver.replace(underWay);
      if (underWay.reading === null) end();
      else stand(underWay.reading.step);
    },
    settled: () => saver.settled(),
    contest: (refusal) => saver.contest(refusal),
  };
}

function beginning({ exuvia }: Sheet, today: string): UnfinishedDetermination {
  return {
    ...{ sex: null, level: null, reader: null, readOn: today, evidencePhotoIds: [], pins: [], notes: '', supersedes: null, step: 'match' },
    checklist: { ...BLANK_CHECKLIST, grade: exuvia.grade },
  };
}
