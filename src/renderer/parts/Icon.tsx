import type { ReactElement } from 'react';

/** Strokes of every icon, drawn for this app on a 20 by 20 grid. */
const STROKES = {
  add: 'M10 4v12M4 10h12',
  close: 'm5 5 10 10M15 5 5 15',
  edit: 'm4 16 .8-3.600L13 4.200l2.800 2.800-8.200 8.200L4 16zM11.500 5.700l2.800 2.800',
  remove: 'M4.500 6h11M8 6V4h4v2M6 6l.7 10h6.600L14 6M8.700 9v4.500M11.300 9v4.500',
  undo: 'M7 5 3.500 8.500 7 12M4 8.500h7.500a4 4 0 0 1 0 8H8',
  redo: 'm13 5 3.500 3.500L13 12M16 8.500H8.500a4 4 0 0 0 0 8H12',
  settings: 'M3 6h7M14 6h3M3 14h3M10 14h7M12 4v4M8 12v4',
  search: 'M8.500 3.500a5 5 0 1 1 0 10 5 5 0 0 1 0-10zM12.200 12.200 17 17',
  next: 'm7.500 4 6 6-6 6',
  up: 'm4 12.500 6-6 6 6',
  down: 'm4 7.500 6 6 6-6',
  check: 'm4 10.500 4 4 8-9',
  warning: 'M10 3.500 17.500 16.500h-15L10 3.500zM10 8.500v4M10 14.300v.4',
  measure: 'M3.500 13 13 3.500 16.500 7 7 16.500 3.500 13zM6.500 10l1.500 1.500M8.800 7.700l1.500 1.500M11 5.500 12.500 7',
  ladder: 'M6 3v14M14 3v14M6 6h8M6 10h8M6 14h8',
  examine: 'M8.500 3.500a5 5 0 1 1 0 10 5 5 0 0 1 0-10zM12.200 12.200 17 17M6.500 8.500h4M8.500 6.500v4',
  photo: 'M3.500 5.500h13v10h-13zM3.500 13l3.500-3.500 3 3 2.500-2 4 3.500M12.800 8.300h.4',
  copy: 'M7 7h9v9H7zM4 13V4h9',
  zoomIn: 'M8.500 3.500a5 5 0 1 1 0 10 5 5 0 0 1 0-10zM12.200 12.200 17 17M6.500 8.500h4M8.500 6.500v4',
  zoomOut: 'M8.500 3.500a5 5 0 1 1 0 10 5 5 0 0 1 0-10zM12.200 12.200 17 17M6.500 8.500h4',
  loupeLess: 'M5 10h10',
  loupeMore: 'M5 10h10M10 5v10',
  edge: 'M11 3v14M3.500 10h5M6 7.500 8.500 10 6 12.500M14 6h3M14 10h3M14 14h3',
  fit: 'M4 8V4h4M12 4h4v4M16 12v4h-4M8 16H4v-4',
} as const;

export type IconName = keyof typeof STROKES;

/** Decorative: the words beside it, or the label of its button, say what it means. */
export function Icon({ name, sizePx = 20 }: { name: IconName; sizePx?: number }): ReactElement {
  return (
    <svg
      viewBox="0 0 20 20"
      width={sizePx}
      height={sizePx}
      fill="none"
      stroke="currentColor"
      strokeWidth="1.5"
      strokeLinecap="round"
      strokeLinejoin="round"
      aria-hidden="true"
    >
      <path d={STROKES[name]} />
    </svg>
  );
}
