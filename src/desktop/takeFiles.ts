import { type IpcMainInvokeEvent, ipcMain } from 'electron';
import type { TakenFiles } from '../api/contract/bridge.ts';
import type { Core } from '../core/core.ts';
import { Refusal } from '../domain/failure.ts';
import { TAKE_FILES } from './channels.ts';
import { isOurFrameChain } from './policy/frames.ts';
import { pathsIn } from './policy/paths.ts';

/** Answers the bridge: from our own page's main frame only, and well-formed lists only. A failure goes back as data. */
export function answerBridge(core: Pick<Core, 'grantFiles'>): void {
  ipcMain.handle(TAKE_FILES, async (event, payload: unknown): Promise<TakenFiles> => {
    if (!isFromOurPage(event)) return { failure: { code: 'refused-by-guard', reason: 'frame' } };
    const paths = pathsIn(payload);
    if (paths === null) return { failure: { code: 'refused-by-guard', reason: 'list of files' } };
    try {
      return { intakeId: await core.grantFiles(paths) };
    } catch (error) {
      if (error instanceof Refusal) return { failure: error.failure };
      throw error;
    }
  });
}

function isFromOurPage({ senderFrame }: IpcMainInvokeEvent): boolean {
  return senderFrame !== null && senderFrame.parent === null && isOurFrameChain([senderFrame.url]);
}
