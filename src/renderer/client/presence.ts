import { useEffect } from 'react';
import { addressOf } from './ask.ts';

/** Holds a stream open for as long as the page is there: the loopback shell ends when nobody has been there for a while. */
export function usePresence(): void {
  useEffect(() => {
    const presence = new EventSource(addressOf('GET /api/presence', {}));
    return () => presence.close();
  }, []);
}
