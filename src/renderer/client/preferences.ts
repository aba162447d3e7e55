import { useAnswer } from './queries.ts';

/** Whether the keeper wants inches beside millimeters; not before that is known. */
export function useShowsInches(): boolean {
  return useAnswer('GET /api/preferences', {}).data?.inches ?? false;
}
