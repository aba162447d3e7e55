import type { WindowWithBridge } from '../../api/contract/bridge.ts';
import { browserHost } from './browserHost.ts';
import { desktopHost } from './desktopHost.ts';
import type { Host } from './host.ts';

/** The shell this page stands in. */
export function hostOf(window: WindowWithBridge): Host {
  return window.exuviaryBridge ? desktopHost(window.exuviaryBridge) : browserHost;
}
