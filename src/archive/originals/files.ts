import type { Readable } from 'node:stream';

/** A new file being written. */
export interface NewFile {
  write(bytes: Uint8Array): Promise<void>;
  /** Makes it read-only for ever. */
  protect(): Promise<void>;
  /** Returns when the bytes are on the disk. */
  sync(): Promise<void>;
  close(): Promise<void>;
}

export interface FileFacts {
  readonly byteLength: number;
  /** When its bytes or its name last changed. */
  readonly changedMs: number;
}

/**
 * The little that the archive asks of a file system, so that a test can make each single call fail. Every call rejects with
 * the system's own error (`code` such as ENOSPC).
 */
export interface Files {
  /** With its parents; no harm if it is there. */
  makeFolder(path: string): Promise<void>;
  /** Fails with EEXIST rather than opening what is there; readable and writable by the owner alone. */
  createNew(path: string): Promise<NewFile>;
  /** In pieces of about a megabyte; each piece is valid until the next is asked for. */
  read(path: string): AsyncIterable<Uint8Array>;
  stream(path: string): Promise<{ readonly stream: Readable; readonly byteLength: number }>;
  /** null when there is no such file. */
  facts(path: string): Promise<FileFacts | null>;
  /** A second name for a file; fails with EEXIST rather than replacing. */
  link(from: string, to: string): Promise<void>;
  /** Replaces silently. */
  rename(from: string, to: string): Promise<void>;
  /** No harm if it is gone already. */
  remove(path: string): Promise<void>;
  /** Names in a folder; none when there is no such folder. */
  list(folder: string): Promise<readonly string[]>;
  /** Makes names in a folder durable, where the system can. */
  syncFolder(path: string): Promise<void>;
}

/** The `code` of a system error. */
export function errorCode(error: unknown): string | null {
  return error instanceof Error && 'code' in error && typeof error.code === 'string' ? error.code : null;
}
