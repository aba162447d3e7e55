/** The one message that passes between the page's preload script and the main process. */
export const TAKE_FILES = 'take-files';
