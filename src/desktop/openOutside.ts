import { shell } from 'electron';
import { outsideUrl } from './policy/outside.ts';

/** Shows a page of the web in the system's own browser, if it is one that may be opened; else does nothing. */
export function openOutside(address: string): void {
  const url = outsideUrl(address);
  if (url === null) return;
  shell.openExternal(url).catch((error: unknown) => console.error(`The system could not open ${url}:`, error));
}
