import { useEffect } from 'react';

/** A file let go beside the place meant for it must not open in the window: that would take the page and its work away. */
export function useStrayDrops(): void {
  useEffect(() => {
    const refuse = (event: DragEvent) => {
      // Whoever takes drops has said so already; text may still be dragged into a field.
      if (event.defaultPrevented || event.dataTransfer?.types.includes('Files') !== true) return;
      event.preventDefault();
      event.dataTransfer.dropEffect = 'none';
    };
    addEventListener('dragover', refuse);
    addEventListener('drop', refuse);
    return () => {
      removeEventListener('dragover', refuse);
      removeEventListener('drop', refuse);
    };
  }, []);
}
