import { queryOptions } from '@tanstack/react-query';
import { ask } from '../../client/ask.ts';

/**
 * The sheet a Bench opens with. Kept for no longer than the page: a sheet from memory may be older than what the Bench itself
 * saved last time.
 */
export function openingSheet(photoId: string) {
  return queryOptions({
    queryKey: ['bench-opening', photoId],
    queryFn: ({ signal }) => ask('GET /api/photos/{photoId}/bench', { path: { photoId }, signal }),
    gcTime: 0,
    staleTime: Number.POSITIVE_INFINITY,
    refetchOnReconnect: false,
    refetchOnWindowFocus: false,
  });
}
