import { useEffect } from 'react';
import { usePreferences } from '../client/preferences.ts';

/** Puts the chosen theme on the document; `system` leaves it to the system. */
export function useTheme(): void {
  const { theme } = usePreferences();
  useEffect(() => {
    if (theme === 'system') delete document.documentElement.dataset['theme'];
    else document.documentElement.dataset['theme'] = theme;
  }, [theme]);
}
