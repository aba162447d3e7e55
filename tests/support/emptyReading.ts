import { DEFAULT_POINTING_PX, type ReadingDraft } from '../../src/domain/measuring/reading.ts';

/** A pass in which nothing has been placed yet. */
export const EMPTY_READING: Omit<ReadingDraft, 'observer' | 'pass'> = {
  protocol: 'dorsal-skin',
  carapaceHeight: { kind: 'assumed' },
  pointingPx: DEFAULT_POINTING_PX,
  landmarks: {},
};
