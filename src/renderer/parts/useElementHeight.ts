import { type RefObject, useLayoutEffect, useRef, useState } from 'react';

/** Height of an element with its border in CSS pixels, kept up to date; 0 until it is laid out. */
export function useElementHeight<E extends HTMLElement>(): { ref: RefObject<E | null>; heightPx: number } {
  const ref = useRef<E>(null);
  const [heightPx, setHeightPx] = useState(0);
  useLayoutEffect(() => {
    const element = ref.current;
    if (!element) return;
    const observer = new ResizeObserver(() => setHeightPx(element.offsetHeight));
    observer.observe(element);
    return () => observer.disconnect();
  }, []);
  return { ref, heightPx };
}
