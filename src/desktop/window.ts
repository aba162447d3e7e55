import { resolve } from 'node:path';
import { app, BrowserWindow, dialog, nativeTheme } from 'electron';
import { START_PAGE } from './policy/address.ts';
import { windowOptions } from './policy/windowOptions.ts';

/** The bundler puts the bridge beside the folder of this program. */
const BRIDGE = resolve(import.meta.dirname, '../preload/bridge.cjs');

/** Opens the one window on the page. `onShown` is called when there is something to see. */
export function openWindow(onShown: () => void): BrowserWindow {
  const window = new BrowserWindow(windowOptions({ preload: BRIDGE, dark: nativeTheme.shouldUseDarkColors, devTools: !app.isPackaged }));
  window.once('ready-to-show', () => {
    window.show();
    onShown();
  });
  window.webContents.on('render-process-gone', (_, { reason }) => {
    if (reason !== 'clean-exit') void offerReload(window, reason);
  });
  void window.loadURL(START_PAGE);
  return window;
}

/** Somebody started Exuviary again: show what is already open. */
export function bringForward(window: BrowserWindow): void {
  if (window.isMinimized()) window.restore();
  window.focus();
}

async function offerReload(window: BrowserWindow, reason: string): Promise<void> {
  const { response } = await dialog.showMessageBox(window, {
    type: 'error',
    message: `The window of Exuviary stopped working (${reason}).`,
    detail: 'Everything that was saved is safe.',
    buttons: ['Load it again', 'Close Exuviary'],
    cancelId: 1,
  });
  if (response === 0) window.reload();
  else app.quit();
}
