import type { Bridge } from '../../api/contract/bridge.ts';
import { refuse } from '../../domain/failure.ts';
import { browserHost } from './browserHost.ts';
import type { Host } from './host.ts';

/** In the desktop shell files are copied straight from the disk; only what lies on no disk is sent as in a browser. */
export function desktopHost(bridge: Bridge): Host {
  return {
    async handOver(files, watch) {
      const taken = await bridge.takeFiles(files);
      watch.signal.throwIfAborted();
      if (taken === null) return browserHost.handOver(files, watch);
      if ('failure' in taken) refuse(taken.failure);
      watch.onSent(files.length);
      return taken.intakeId;
    },
  };
}
