import type { Files, NewFile } from '../../src/archive/originals/files.ts';
import { nodeFiles } from '../../src/archive/originals/nodeFiles.ts';

/** Real files of which one chosen call fails, once or from then on. */
export interface FaultyFiles {
  readonly files: Files;
  /** Lets the next calls through but for the one at `at` (0 is the first), which fails with the code. */
  arm(fault: { readonly at: number; readonly code: string; readonly lasting: boolean }): void;
  /** Stops failing. Answers the call that failed first, null when none was reached. */
  disarm(): string | null;
}

export function faultyFiles(): FaultyFiles {
  const real = nodeFiles(process.platform);
  let fault: { at: number; code: string; lasting: boolean } | null = null;
  let calls = 0;
  let failed: string | null = null;

  function maybeFail(call: string): void {
    const index = calls++;
    if (!fault || (fault.lasting ? index < fault.at : index !== fault.at)) return;
    failed ??= call;
    throw Object.assign(new Error(`${fault.code}: injected into ${call}`), { code: fault.code });
  }

  function guarded<Arguments extends readonly unknown[], Value>(
    call: string,
    action: (...given: Arguments) => Promise<Value>,
  ): (...given: Arguments) => Promise<Value> {
    return async (...given) => {
      maybeFail(call);
      return action(...given);
    };
  }

  const files: Files = {
    makeFolder: guarded('makeFolder', real.makeFolder),
    createNew: guarded('createNew', async (path): Promise<NewFile> => {
      const file = await real.createNew(path);
      return {
        write: guarded('write', file.write),
        protect: guarded('protect', file.protect),
        sync: guarded('sync', file.sync),
        // A handle is let go even when closing reports trouble.
        close: async () => {
          await file.close();
          maybeFail('close');
        },
      };
    }),
    async *read(path) {
      for await (const piece of real.read(path)) {
        maybeFail('read');
        yield piece;
      }
    },
    stream: guarded('stream', real.stream),
    facts: guarded('facts', real.facts),
    link: guarded('link', real.link),
    rename: guarded('rename', real.rename),
    remove: guarded('remove', real.remove),
    list: guarded('list', real.list),
    syncFolder: guarded('syncFolder', real.syncFolder),
  };

  return {
    files,
    arm(wanted) {
      fault = wanted;
      calls = 0;
      failed = null;
    },
    disarm() {
      fault = null;
      return failed;
    },
  };
}
