export const END_IDS = ['end-1', 'end-2'] as const;
export const CORNER_IDS = ['corner-1', 'corner-2', 'corner-3', 'corner-4'] as const;

/** The marks on a scale object, in the order in which they are stored. */
export type ScaleHandleId = (typeof END_IDS)[number] | (typeof CORNER_IDS)[number];
