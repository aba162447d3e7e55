import { join } from 'node:path';
import { app, dialog, Menu } from 'electron';
import { closeBeforeQuit, openArchive } from './archive.ts';
import { type DesktopArguments, parseDesktopArguments } from './arguments.ts';
import { guardNavigation, guardPermissions, guardRequests } from './guards.ts';
import { START_PAGE } from './policy/address.ts';
import { menuOf } from './policy/menu.ts';
import { declareScheme, serve } from './scheme.ts';
import { answerBridge } from './takeFiles.ts';
import { bringForward, openWindow } from './window.ts';

// Before the app is ready, and without waiting for anything: later is too late for these.
declareScheme();
// As root on Linux there is no sandbox to be had; whoever starts Electron then has to say so, and Electron would take it back here.
if (!app.commandLine.hasSwitch('no-sandbox')) app.enableSandbox();
keepOwnFilesApart();
guardNavigation();

// Not awaited here: Electron is not ready before this module has been evaluated to its end.
if (app.requestSingleInstanceLock()) void app.whenReady().then(open).catch(giveUp);
else {
  console.log('Exuviary is already open; its window has been brought forward.');
  app.quit();
}

async function open(): Promise<void> {
  const asked = readArguments();
  const core = asked === null ? null : await openArchive(asked, announce);
  if (core === null) return app.exit(1);
  closeBeforeQuit(core);
  serve(core);
  guardRequests();
  guardPermissions();
  answerBridge(core);
  const menu = menuOf(process.platform);
  Menu.setApplicationMenu(menu === null ? null : Menu.buildFromTemplate(menu));
  const window = openWindow(announce);
  app.on('second-instance', () => bringForward(window));
  app.on('window-all-closed', () => app.quit());
  for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) process.on(signal, () => app.quit());
}

/** What the command line asks for; if that makes no sense, says why in a dialog of the system and answers null. */
function readArguments(): DesktopArguments | null {
  try {
    return parseDesktopArguments(process.argv.slice(1));
  } catch (error) {
    if (!(error instanceof TypeError)) throw error;
    console.error(error.message);
    announce();
    dialog.showErrorBox('Exuviary could not start', error.message);
    return null;
  }
}

/** A mistake of ours before there is a page to tell it. */
function giveUp(error: unknown): void {
  console.error('Exuviary could not start:', error);
  dialog.showErrorBox('Exuviary could not start', error instanceof Error ? error.message : String(error));
  app.exit(1);
}

/** Chromium's own files go beside the archive, not into it: on two platforms both would get the same folder. */
function keepOwnFilesApart(): void {
  if (app.commandLine.hasSwitch('user-data-dir')) return;
  app.setPath('userData', join(app.getPath('appData'), 'exuviary-window'));
}

/** Tells the launcher that there is something on the screen, in the line that it waits for. */
function announce(): void {
  console.log(JSON.stringify({ ready: START_PAGE }));
}
