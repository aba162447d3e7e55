import { useEffect } from 'react';

/** Tells when a key goes down and comes up, wherever the focus is but in a field. A window that loses the focus hears no key come up. */
export function useHeldKey(code: string, tell: (isDown: boolean) => void): void {
  useEffect(() => {
    const hear = (event: KeyboardEvent) => {
      const isTyped = event.target instanceof HTMLElement && event.target.closest('input, textarea, select') !== null;
      // With Ctrl or Cmd it is a command of the window, which may keep the key's coming up to itself.
      const isCommand = event.ctrlKey || event.metaKey;
      if (event.code === code) tell(event.type === 'keydown' && !isTyped && !isCommand);
    };
    const release = () => tell(false);
    addEventListener('keydown', hear);
    addEventListener('keyup', hear);
    addEventListener('blur', release);
    return () => {
      removeEventListener('keydown', hear);
      removeEventListener('keyup', hear);
      removeEventListener('blur', release);
    };
  }, [code, tell]);
}
