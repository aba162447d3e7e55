import { useEffect, useState } from 'react';
import { UnfinishedDetermination } from '../../../domain/sexing/determination.ts';

/**
 * The reading under way for one skin. It outlives a visit to another room, and a reload, but not the window: nothing
 * counts before it is signed.
 */
export function useUnfinished(
  exuviaId: string,
  begun: () => UnfinishedDetermination,
): [reading: UnfinishedDetermination, change: (changes: Partial<UnfinishedDetermination>) => void, restart: () => void] {
  const key = `exuviary.examination.${exuviaId}`;
  // Null until something is answered: what the reading begins with may change before that, such as the grade of the skin.
  const [kept, setKept] = useState(() => keptUnder(key));
  useEffect(() => {
    if (kept === null) sessionStorage.removeItem(key);
    else sessionStorage.setItem(key, JSON.stringify(kept));
  }, [key, kept]);
  return [kept ?? begun(), (changes) => setKept((current) => ({ ...(current ?? begun()), ...changes })), () => setKept(null)];
}

function keptUnder(key: string): UnfinishedDetermination | null {
  const text = sessionStorage.getItem(key);
  if (text === null) return null;
  const parsed = UnfinishedDetermination.safeParse(parsedOrNull(text));
  return parsed.success ? parsed.data : null;
}

/** Whatever is not ours counts as nothing kept. */
function parsedOrNull(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return null;
  }
}
