import type { Preferences } from '../../domain/preferences.ts';
import { useAnswer } from './queries.ts';

const BEFORE_THEY_ARE_KNOWN: Preferences = { theme: 'system', inches: false, observer: '' };

/** The keeper's preferences; until they have arrived, the defaults. */
export function usePreferences(): Preferences {
  return useAnswer('GET /api/preferences', {}).data ?? BEFORE_THEY_ARE_KNOWN;
}

export function useShowsInches(): boolean {
  return usePreferences().inches;
}
