import { type RefObject, useEffect, useLayoutEffect, useRef } from 'react';
import { useLitMolt } from '../lit.tsx';

/** A point of a figure, as shares of its stand's sides, that stays where it is while all are zoomed. */
interface Held {
  readonly figure: Element;
  readonly across: number;
  readonly down: number;
}

/**
 * Keeps what stands in the middle of a scrolling row there while all figures are zoomed.
 *
 * @param pxPerMm what the figures are sized by.
 * @returns `keepMiddle`, to be called just before that changes.
 */
export function useMiddleKept(pxPerMm: number): { rowRef: RefObject<HTMLElement | null>; keepMiddle: () => void } {
  const rowRef = useRef<HTMLElement>(null);
  const held = useRef<Held | null>(null);
  const keepMiddle = (): void => {
    const row = rowRef.current;
    if (!row) return;
    const { left, top } = row.getBoundingClientRect();
    const middle = { x: left + row.clientWidth / 2, y: top + row.clientHeight / 2 };
    const distance = (box: DOMRect) => Math.max(0, box.left - middle.x, middle.x - box.right);
    // Figures out of sight are not laid out; asking for what stands in one would lay it out after all.
    const [nearest] = [...row.querySelectorAll('li')]
      .map((figure) => ({ figure, away: distance(figure.getBoundingClientRect()) }))
      .toSorted((a, b) => a.away - b.away);
    if (!nearest) return;
    const { figure } = nearest;
    const box = standOf(figure).getBoundingClientRect();
    held.current = { figure, across: (middle.x - box.left) / box.width, down: (middle.y - box.top) / box.height };
  };
  // biome-ignore lint/correctness/useExhaustiveDependencies: the size of the figures is what has moved them
  useLayoutEffect(() => {
    const row = rowRef.current;
    if (!row || !held.current) return;
    const { figure, across, down } = held.current;
    held.current = null;
    const [outer, box] = [row.getBoundingClientRect(), standOf(figure).getBoundingClientRect()];
    row.scrollLeft += box.left + across * box.width - (outer.left + row.clientWidth / 2);
    row.scrollTop += box.top + down * box.height - (outer.top + row.clientHeight / 2);
  }, [pxPerMm]);
  return { rowRef, keepMiddle };
}

function standOf(figure: Element): Element {
  return figure.firstElementChild ?? figure;
}

/** Opens a row that is wider than its place at its end, where the newest skins are. */
export function useNewestInSight(rowRef: RefObject<HTMLElement | null>, laidOut: boolean): void {
  useLayoutEffect(() => {
    const row = rowRef.current;
    if (row && laidOut) row.scrollLeft = row.scrollWidth;
  }, [rowRef, laidOut]);
}

/** Brings the figure whose rung is lit elsewhere into the middle of the row; what is pointed at in the row itself stays put. */
export function useLitInSight(rowRef: RefObject<HTMLElement | null>): void {
  const litId = useLitMolt();
  useEffect(() => {
    const row = rowRef.current;
    if (!row || litId === null || row.matches(':hover, :focus-within')) return;
    const figure = [...row.querySelectorAll<HTMLElement>('li')].find(({ dataset }) => dataset['molt'] === litId);
    if (!figure) return;
    const [outer, box] = [row.getBoundingClientRect(), figure.getBoundingClientRect()];
    if (box.left >= outer.left && box.right <= outer.right) return;
    row.scrollTo({
      left: row.scrollLeft + (box.left + box.right - outer.left - outer.right) / 2,
      behavior: matchMedia('(prefers-reduced-motion: reduce)').matches ? 'instant' : 'smooth',
    });
  }, [litId, rowRef]);
}
