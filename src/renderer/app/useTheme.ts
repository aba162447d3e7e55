import { useLayoutEffect } from 'react';
import { useAnswer } from '../client/queries.ts';

/** Puts the chosen theme on the document; `system` leaves it to the system. Answers whether it is known yet, or cannot be. */
export function useTheme(): boolean {
  const { data, isPending } = useAnswer('GET /api/preferences', {});
  const theme = data?.theme ?? 'system';
  useLayoutEffect(() => {
    if (theme === 'system') delete document.documentElement.dataset['theme'];
    else document.documentElement.dataset['theme'] = theme;
  }, [theme]);
  return !isPending;
}
