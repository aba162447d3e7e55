import { contextBridge, ipcRenderer, webUtils } from 'electron';
import type { Bridge, TakenFiles, WindowWithBridge } from '../api/contract/bridge.ts';
import { TAKE_FILES } from './channels.ts';

/** Runs beside the page in its sandbox. The page gets verbs, never `ipcRenderer`, and never a path. */
const bridge: Bridge = {
  async takeFiles(files) {
    const paths = files.map((file) => webUtils.getPathForFile(file));
    if (paths.includes('')) return null;
    const taken: TakenFiles = await ipcRenderer.invoke(TAKE_FILES, paths);
    return taken;
  },
};

const name: keyof WindowWithBridge = 'exuviaryBridge';
contextBridge.exposeInMainWorld(name, bridge);
