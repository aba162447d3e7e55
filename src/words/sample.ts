/** Stands on every file that leaves with figures of the sample cabinet. */
export const SAMPLE_NOTE = 'Sample data: this animal and its skins are invented.';
