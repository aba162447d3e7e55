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
  const [reading, setReading] = useState(() => keptUnder(key) ?? begun());
  useEffect(() => sessionStorage.setItem(key, JSON.stringify(reading)), [key, reading]);
  return [reading, (changes) => setReading((current) => ({ ...current, ...changes })), () => setReading(begun())];
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
