import type { ReactElement } from 'react';

/** The mark of the app: a shed skin seen from above, its carapace lifted off. */
export function Mark(): ReactElement {
  return (
    <svg
      viewBox="0 0 32 32"
      width="30"
      height="30"
      fill="none"
      stroke="var(--accent)"
      strokeWidth="1.8"
      strokeLinecap="round"
      strokeLinejoin="round"
      aria-hidden="true"
    >
      <path d="M16 5c4 0 6 2.600 6 6s-2.400 5-6 5-6-1.600-6-5 2-6 6-6z" />
      <path d="M12 15.500c-2.600 3-3.500 6-2 9M20 15.500c2.600 3 3.500 6 2 9M16 16v4" />
      <path d="M10 9 5 6 3 8M9.800 11.500 4 12l-2 3M22 9l5-3 2 2M22.200 11.500 28 12l2 3" />
      <path d="M12.500 27c2.200 1 4.800 1 7 0" strokeDasharray="1 3" />
    </svg>
  );
}
