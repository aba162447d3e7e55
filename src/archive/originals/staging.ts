import { createHash } from 'node:crypto';
import { join } from 'node:path';
import { type Failure, Refusal } from '../../domain/failure.ts';
import { fail, type Result, succeed } from '../../domain/result.ts';
import type { OriginalSource, Staged } from '../records/originals.ts';
import { diskFailure } from './diskFailure.ts';
import { errorCode, type Files, type NewFile } from './files.ts';
import type { Layout } from './layout.ts';

/** Trouble while reading what is to be kept, told apart from trouble of the archive's own disk. */
class SourceTrouble extends Error {
  constructor(cause: unknown) {
    super('The source could not be read', { cause });
  }
}

async function* readingFrom(source: AsyncIterable<Uint8Array>): AsyncGenerator<Uint8Array> {
  try {
    yield* source;
  } catch (error) {
    throw new SourceTrouble(error);
  }
}

/** What reading the source failed with, in a person's terms. */
function sourceFailure(trouble: SourceTrouble, name: string): Failure {
  const { cause } = trouble;
  if (cause instanceof Refusal) return cause.failure;
  return { code: 'file-unreadable', file: name, reason: errorCode(cause) ?? (cause instanceof Error ? cause.message : 'unknown') };
}

async function copyHashing(files: Files, source: OriginalSource, target: NewFile): Promise<{ sha256: string; byteLength: number }> {
  const hash = createHash('sha256');
  let byteLength = 0;
  for await (const piece of readingFrom(source.kind === 'file' ? files.read(source.path) : source.stream)) {
    hash.update(piece);
    byteLength += piece.byteLength;
    await target.write(piece);
  }
  return { sha256: hash.digest('hex'), byteLength };
}

/** Copies bytes into `incoming/`; they are whole, read-only and on the disk when this answers, or gone when it fails. */
export async function stage(
  { files, layout, newName }: { readonly files: Files; readonly layout: Layout; readonly newName: () => string },
  source: OriginalSource,
  name: string,
): Promise<Result<Staged>> {
  const stagedName = newName();
  const path = join(layout.incoming, stagedName);
  let target: NewFile | null = null;
  try {
    target = await files.createNew(path);
    const { sha256, byteLength } = await copyHashing(files, source, target);
    const promised = source.kind === 'stream' ? source.byteLength : null;
    if (promised !== null && promised !== byteLength) throw new Refusal({ code: 'file-not-arrived', file: name });
    if (byteLength === 0) throw new Refusal({ code: 'file-empty', file: name });
    await target.protect();
    await target.sync();
    const written = target;
    target = null;
    await written.close();
    return succeed({ stagedName, sha256, byteLength });
  } catch (error) {
    await abandon(files, target, path);
    if (error instanceof Refusal) return fail(error.failure);
    if (error instanceof SourceTrouble) return fail(sourceFailure(error, name));
    const failure = diskFailure(error, layout.folder);
    if (failure) return fail(failure);
    throw error;
  }
}

/** The first failure is the one worth telling; whatever this can't remove is swept when the archive is next opened. */
async function abandon(files: Files, target: NewFile | null, path: string): Promise<void> {
  await Promise.allSettled([target?.close()]);
  await Promise.allSettled([files.remove(path)]);
}
