/** Behind skins on what leaves as a picture. */
export const PAPER = '#fcf9f2';
