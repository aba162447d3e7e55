import { useEffect } from 'react';

/** Names the window after what it shows; '' leaves the name of the app alone. */
export function useWindowTitle(words: string): void {
  useEffect(() => {
    document.title = words === '' ? 'Exuviary' : `${words} · Exuviary`;
  }, [words]);
}
