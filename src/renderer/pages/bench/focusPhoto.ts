/** What the photo is called in the page; it takes the keys of the Bench. */
export const PHOTO_ID = 'bench-photo';

/** Gives the keys to the photo: after a button that is gone now, they would start anew at the top of the page. */
export function focusPhoto(): void {
  document.getElementById(PHOTO_ID)?.focus({ preventScroll: true });
}
