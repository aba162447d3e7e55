import { resolve } from 'node:path';
import { app, dialog } from 'electron';
import { createAmbient } from '../core/ambient.ts';
import { chooseArchiveFolder } from '../core/archiveFolder.ts';
import { type Core, openCore } from '../core/core.ts';
import { wordsFor } from '../words/failures.ts';
import type { DesktopArguments } from './arguments.ts';

/** The built page and the files shipped as they are, seen from the bundled program. */
const PAGE = '../renderer';
const RESOURCES = '../../resources';

/** Opens the archive; if that is not possible, says why in a dialog of the system (`onShown`) and answers null. */
export async function openArchive(asked: DesktopArguments, onShown: () => void): Promise<Core | null> {
  const opened = await openCore({
    archiveFolder: chooseArchiveFolder(asked.archive),
    rendererFolder: resolve(import.meta.dirname, PAGE),
    resourcesFolder: resolve(import.meta.dirname, RESOURCES),
    ambient: createAmbient(asked),
    elapsedMs: () => performance.now(),
    logDefect: (reference, error) => console.error(`Defect ${reference}:`, error),
  });
  if (opened.ok) return opened.value;
  const { happened, advice } = wordsFor(opened.failure);
  console.error(`${happened} ${advice}`);
  onShown();
  dialog.showErrorBox('Exuviary cannot open its archive', `${happened}\n\n${advice}`);
  return null;
}

/** Closes the archive before the program goes, however and however often it is asked to go. */
export function closeBeforeQuit(core: Pick<Core, 'close'>): void {
  let isClosing = false;
  app.on('before-quit', (event) => {
    event.preventDefault();
    if (isClosing) return;
    isClosing = true;
    core.close().then(
      () => app.exit(0),
      (error: unknown) => {
        console.error('The archive did not close properly:', error);
        app.exit(1);
      },
    );
  });
}
