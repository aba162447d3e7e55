import { type UseMutationResult, type UseQueryResult, useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import type { AnswerOf } from '../../api/contract/contract.ts';
import { ask, type Question } from './ask.ts';
import { type ChangeKey, READS_TOUCHED_BY, type ReadKey } from './touched.ts';

/** The key under which the answer to a question is kept; the route comes first, so a whole route can be made stale. */
export function answerKey<Key extends ReadKey>(key: Key, question: Question<Key>): readonly unknown[] {
  const { path, query } = question as { path?: unknown; query?: unknown };
  return [key, path ?? null, query ?? null];
}

/**
 * Asks one of the reading routes and keeps the answer fresh. `enabled: false` holds the question back; `keep: false` forgets
 * the answer with the page that asked, for what must never be shown as it was; `everyMs` asks again and again, for what changes
 * with the time, and with `alsoHidden` while nobody sees the page, for what is told beside it.
 */
export function useAnswer<Key extends ReadKey>(
  key: Key,
  question: Question<Key>,
  options: { enabled?: boolean; keep?: boolean; everyMs?: number; alsoHidden?: boolean } = {},
): UseQueryResult<AnswerOf<Key>, Error> {
  return useQuery<AnswerOf<Key>, Error>({
    queryKey: answerKey(key, question),
    queryFn: ({ signal }) => ask(key, { ...question, signal }),
    enabled: options.enabled ?? true,
    ...(options.keep === false && { gcTime: 0, staleTime: 0 }),
    ...(options.everyMs !== undefined && { refetchInterval: options.everyMs, refetchIntervalInBackground: options.alsoHidden ?? false }),
  });
}

/**
 * One of the changing routes; afterwards every answer it can have touched is asked again. Nobody waits for those answers,
 * so that a page can be left before it asks for what has just been removed.
 */
export function useChange<Key extends ChangeKey>(key: Key): UseMutationResult<AnswerOf<Key>, Error, Question<Key>> {
  const client = useQueryClient();
  return useMutation<AnswerOf<Key>, Error, Question<Key>>({
    mutationFn: (question) => ask(key, question),
    onSettled: () => {
      for (const read of READS_TOUCHED_BY[key]) void client.invalidateQueries({ queryKey: [read] });
    },
  });
}
