import type { BrowserWindowConstructorOptions } from 'electron';

const PAPER = '#F5F0E6';
const PAPER_AT_NIGHT = '#1A1714';

export interface WindowWishes {
  /** Absolute path of the bundled preload script. */
  readonly preload: string;
  readonly dark: boolean;
  /** Developer tools: not in a packaged app. */
  readonly devTools: boolean;
}

/** The one window. What protects it is stated although most of it is Electron's default, so that a test can hold it. */
export function windowOptions({ preload, dark, devTools }: WindowWishes): BrowserWindowConstructorOptions {
  return {
    title: 'Exuviary',
    width: 1440,
    height: 900,
    minWidth: 1024,
    minHeight: 700,
    // Shown when the page has something to show; until then, and while resizing, the color of its paper.
    show: false,
    backgroundColor: dark ? PAPER_AT_NIGHT : PAPER,
    webPreferences: {
      preload,
      devTools,
      sandbox: true,
      contextIsolation: true,
      nodeIntegration: false,
      nodeIntegrationInWorker: false,
      nodeIntegrationInSubFrames: false,
      webviewTag: false,
      webSecurity: true,
      allowRunningInsecureContent: false,
      experimentalFeatures: false,
      navigateOnDragDrop: false,
      spellcheck: false,
      // A minimized window goes on asking whether a molt takes too long.
      backgroundThrottling: false,
    },
  };
}
