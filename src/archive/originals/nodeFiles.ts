import { type FileHandle, link, mkdir, open, readdir, rename, rm, stat } from 'node:fs/promises';
import { setTimeout as pause } from 'node:timers/promises';
import { errorCode, type Files } from './files.ts';

const PIECE_BYTES = 1_048_576;

/** Virus scanners on Windows hold new files open for a moment. */
const HELD_OPEN = new Set(['EPERM', 'EBUSY', 'EACCES']);
const WINDOWS_PATIENCE_MS = [10, 20, 40, 80, 160, 320, 640, 1280];

/** Windows has no handle for a folder's names, and network drives may not either. */
const FOLDER_NOT_SYNCABLE = new Set(['EPERM', 'EISDIR', 'EINVAL', 'EACCES', 'ENOTSUP']);

/** Real files, through node:fs. */
export function nodeFiles(platform: NodeJS.Platform): Files {
  async function patiently(action: () => Promise<void>): Promise<void> {
    for (const waitMs of platform === 'win32' ? WINDOWS_PATIENCE_MS : []) {
      try {
        return await action();
      } catch (error) {
        if (!HELD_OPEN.has(errorCode(error) ?? '')) throw error;
        await pause(waitMs);
      }
    }
    return action();
  }

  return {
    async makeFolder(path) {
      await mkdir(path, { recursive: true });
    },
    async createNew(path) {
      const handle = await open(path, 'wx', 0o600);
      return {
        write: (bytes) => writeWhole(handle, bytes),
        protect: () => handle.chmod(0o444),
        sync: () => handle.sync(),
        close: () => handle.close(),
      };
    },
    async *read(path) {
      const handle = await open(path, 'r');
      try {
        const piece = Buffer.allocUnsafe(PIECE_BYTES);
        for (;;) {
          const { bytesRead } = await handle.read(piece, 0, PIECE_BYTES, null);
          if (bytesRead === 0) return;
          yield piece.subarray(0, bytesRead);
        }
      } finally {
        await handle.close();
      }
    },
    async stream(path) {
      const handle = await open(path, 'r');
      const { size } = await handle.stat();
      return { stream: handle.createReadStream({ highWaterMark: PIECE_BYTES }), byteLength: size };
    },
    async facts(path) {
      try {
        const { size, mtimeMs, ctimeMs } = await stat(path);
        return { byteLength: size, changedMs: Math.max(mtimeMs, ctimeMs) };
      } catch (error) {
        if (errorCode(error) === 'ENOENT') return null;
        throw error;
      }
    },
    link: (from, to) => patiently(() => link(from, to)),
    rename: (from, to) => patiently(() => rename(from, to)),
    remove: (path) => patiently(() => rm(path, { force: true })),
    async list(folder) {
      try {
        return await readdir(folder);
      } catch (error) {
        if (errorCode(error) === 'ENOENT') return [];
        throw error;
      }
    },
    async syncFolder(path) {
      try {
        const handle = await open(path, 'r');
        try {
          await handle.sync();
        } finally {
          await handle.close();
        }
      } catch (error) {
        if (!FOLDER_NOT_SYNCABLE.has(errorCode(error) ?? '')) throw error;
      }
    },
  };
}

/** A write may take only part of what it is given. */
async function writeWhole(handle: FileHandle, bytes: Uint8Array): Promise<void> {
  let written = 0;
  while (written < bytes.byteLength) {
    written += (await handle.write(bytes, written)).bytesWritten;
  }
}
