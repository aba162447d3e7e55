import { type RefObject, useLayoutEffect, useRef, useState } from 'react';

/** Width of the content of an element in CSS pixels, kept up to date; 0 until it is laid out. */
export function useElementWidth<E extends HTMLElement>(): { ref: RefObject<E | null>; widthPx: number } {
  const ref = useRef<E>(null);
  const [widthPx, setWidthPx] = useState(0);
  useLayoutEffect(() => {
    const element = ref.current;
    if (!element) return;
    setWidthPx(element.clientWidth);
    const observer = new ResizeObserver(([entry]) => entry && setWidthPx(entry.contentRect.width));
    observer.observe(element);
    return () => observer.disconnect();
  }, []);
  return { ref, widthPx };
}
