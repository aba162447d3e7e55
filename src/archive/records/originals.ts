import type { Readable } from 'node:stream';
import type { Failure } from '../../domain/failure.ts';
import type { Result } from '../../domain/result.ts';

/** Bytes that have arrived whole in `incoming/` and are on the disk, not yet published. */
export interface Staged {
  /** Name inside `incoming/`. */
  readonly stagedName: string;
  readonly sha256: string;
  readonly byteLength: number;
}

/** Where bytes come from: a file to copy, or a stream and the length it promises (null when unknown). */
export type OriginalSource =
  | { readonly kind: 'file'; readonly path: string }
  | { readonly kind: 'stream'; readonly stream: AsyncIterable<Uint8Array>; readonly byteLength: number | null };

/**
 * The photographs as they came in: named by SHA-256, never rewritten, read-only. Publish first, then commit the row, so
 * that a crash leaves at worst a file that no row names.
 */
export interface Originals {
  /**
   * Copies while hashing and syncs. `name` is the file's own name, for failures: `file-empty`, `file-not-arrived` when the
   * length differs from the promised one, `file-unreadable`, `disk-full`. Nothing remains after a failure.
   */
  stage(source: OriginalSource, name: string): Promise<Result<Staged>>;
  /** Path of staged bytes, for reading only. */
  stagedPath(staged: Staged): string;
  /** Moves staged bytes to their place; `already-here` when the same content was published before and is still what it was. */
  publish(staged: Staged): Promise<Result<'published' | 'already-here'>>;
  /** Drops staged bytes that are not wanted after all. */
  discard(staged: Staged): Promise<void>;
  /** `stage` and `publish` in one. */
  put(source: OriginalSource, name: string): Promise<Result<Staged & { readonly alreadyHere: boolean }>>;
  /** Path of an original, for reading only; null when the file is gone. */
  pathOf(sha256: string): Promise<string | null>;
  /** Bytes and length for an answer; null when the file is gone. */
  open(sha256: string): Promise<{ readonly stream: Readable; readonly byteLength: number } | null>;
  /** Removes files that no row names, or only a removal from before the grace, if they are older than that. Answers how many went. */
  sweep(graceMs: number): Promise<{ readonly removed: number }>;
  /** Hashes every recorded original again. */
  check(signal?: AbortSignal): Promise<{ readonly sound: number; readonly harm: readonly Failure[] }>;
}
