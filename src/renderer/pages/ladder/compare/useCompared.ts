import { useQueries } from '@tanstack/react-query';
import { useState } from 'react';
import type { SpecimenSummary } from '../../../../api/contract/specimens.ts';
import type { ComparedAnimal } from '../../../../domain/growth/compare/aligned.ts';
import { areSiblings } from '../../../../domain/growth/kin.ts';
import type { Specimen } from '../../../../domain/specimen/specimen.ts';
import { ask } from '../../../client/ask.ts';
import { answerKey, useAnswer } from '../../../client/queries.ts';

/** More lines than this on one chart cannot be told apart. */
const MOST_AT_FIRST = 12;

export interface Compared {
  /** The animal itself first, then those beside it whose ladder has come. */
  readonly animals: readonly ComparedAnimal[];
  /** Whose figures these are, by id. */
  readonly subjects: ReadonlyMap<string, Specimen>;
  readonly others: readonly SpecimenSummary[];
  readonly chosen: ReadonlySet<string>;
  readonly isPending: boolean;
  readonly error: Error | null;
  choose(specimenId: string, beside: boolean): void;
}

/** Which animals stand beside one, its siblings until others are chosen, and their ladders. */
export function useCompared(specimen: Specimen): Compared {
  const { data: all, error } = useAnswer('GET /api/specimens', {});
  const [changed, setChosen] = useState<ReadonlySet<string> | null>(null);
  const others = (all ?? []).filter((other) => other.specimen.id !== specimen.id && other.recordedMolts > 0);
  const siblings = others.filter((other) => areSiblings(specimen, other.specimen));
  const chosen = changed ?? new Set(siblings.slice(0, MOST_AT_FIRST).map((other) => other.specimen.id));
  const asked = [specimen.id, ...others.map((other) => other.specimen.id).filter((id) => chosen.has(id))];
  const ladders = useQueries({
    queries: asked.map((specimenId) => {
      const question = { path: { specimenId } };
      return {
        queryKey: answerKey('GET /api/specimens/{specimenId}/ladder', question),
        queryFn: ({ signal }: { signal: AbortSignal }) => ask('GET /api/specimens/{specimenId}/ladder', { ...question, signal }),
      };
    }),
  });
  return {
    animals: ladders.flatMap(({ data }) =>
      data ? [{ specimenId: data.specimen.id, called: data.specimen.name ?? data.specimen.code, rungs: data.ladder.rungs }] : [],
    ),
    subjects: new Map(ladders.flatMap(({ data }) => (data ? [[data.specimen.id, data.specimen] as const] : []))),
    others,
    chosen,
    isPending: ladders.some((ladder) => ladder.isPending),
    error: error ?? ladders.find((ladder) => ladder.error)?.error ?? null,
    choose: (specimenId, beside) => {
      const next = new Set(chosen);
      if (beside) next.add(specimenId);
      else next.delete(specimenId);
      setChosen(next);
    },
  };
}
