import type { ReactElement } from 'react';
import { KEYS_IN_WORDS } from './benchWords.ts';

/** Read aloud with the photo; the same list is shown by the bar's button. */
export function KeysHelp(): ReactElement {
  return (
    <p id="bench-keys" className="spoken-only">
      {KEYS_IN_WORDS.map(({ keys, does }) => `${keys}: ${does}.`).join(' ')}
    </p>
  );
}
