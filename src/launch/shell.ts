/** How Exuviary can come to the screen: a window of its own, a browser's app window, or an address to open by hand. */
export const SHELLS = ['electron', 'browser', 'link'] as const;
export type Shell = (typeof SHELLS)[number];
