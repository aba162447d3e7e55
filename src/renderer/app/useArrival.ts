import { useEffect, useRef } from 'react';

/**
 * Going to another page starts at its top and hands the focus to it, for those who listen rather than look. Going back and
 * forth in the history leaves the place to the browser, which remembers it.
 */
export function useArrival(location: string): void {
  const before = useRef(location);
  const throughHistory = useRef(false);
  useEffect(() => {
    const note = () => {
      throughHistory.current = true;
    };
    window.addEventListener('popstate', note);
    return () => window.removeEventListener('popstate', note);
  }, []);
  useEffect(() => {
    if (before.current === location) return;
    before.current = location;
    if (!throughHistory.current) window.scrollTo(0, 0);
    throughHistory.current = false;
    document.getElementById('main')?.focus({ preventScroll: true });
  }, [location]);
}
