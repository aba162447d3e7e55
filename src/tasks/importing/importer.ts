import { stat } from 'node:fs/promises';
import { availableParallelism } from 'node:os';
import { basename } from 'node:path';
import type { Archive } from '../../archive/archive.ts';
import type { PlannedFile } from '../../archive/records/imports.ts';
import { Refusal, refuse } from '../../domain/failure.ts';
import type { FileOutcome, TaskSnapshot } from '../../domain/intake/task.ts';
import { fail, type Result, succeed } from '../../domain/result.ts';
import { forEachBounded } from '../pool.ts';
import type { Progress, Tasks } from '../registry.ts';
import { admitPicture } from './admit.ts';

/** More at a time gains nothing: decoding already uses the machine's own pool of threads. */
const MOST_AT_A_TIME = 4;

export interface ImporterOptions {
  readonly archive: Archive;
  readonly tasks: Tasks;
  readonly reportDefect: (error: unknown) => string;
}

/** Brings files into the archive: announced, received, then imported as a task that survives a kill. */
export interface Importer {
  /** Announces files whose bytes will be sent. */
  announce(files: readonly { readonly name: string; readonly byteLength: number }[]): string;
  /** Lets files of this machine be imported from where they are; for a shell that has asked the person. */
  grant(paths: readonly string[]): Promise<string>;
  /** Takes the bytes of one announced file straight to the disk. */
  receive(intakeId: string, index: number, bytes: AsyncIterable<Uint8Array>): Promise<Result<null>>;
  /** Imports an intake; asked again while that runs, answers the running task. */
  start(intakeId: string): Result<TaskSnapshot>;
  /** Goes on with the files that an earlier import left waiting. */
  resume(): TaskSnapshot;
  /** Lets go of the files that an earlier import left waiting, with the bytes received of them. Answers how many. */
  giveUp(): Promise<number>;
  /** Files left waiting by an import that was stopped or killed. */
  unfinishedCount(): number;
}

export function createImporter({ archive, tasks, reportDefect }: ImporterOptions): Importer {
  // Intakes of this run whose files are still being sent or imported: they are not left over from anything.
  const inHand = new Map<string, string | null>();

  const leftWaiting = (): readonly PlannedFile[] => archive.imports.unfinished().filter((file) => !inHand.has(file.intakeId));

  const importAll = (files: readonly PlannedFile[]): TaskSnapshot => {
    const intakeIds = new Set(files.map((file) => file.intakeId));
    const snapshot = tasks.start({
      kind: 'import',
      files: files.map((file) => file.name),
      async work(progress, signal) {
        try {
          await importFiles(files, progress, signal);
        } finally {
          for (const intakeId of intakeIds) inHand.delete(intakeId);
        }
      },
    });
    for (const intakeId of intakeIds) inHand.set(intakeId, snapshot.id);
    return snapshot;
  };

  const importFiles = async (files: readonly PlannedFile[], progress: Progress, signal: AbortSignal): Promise<void> => {
    await forEachBounded(files, Math.min(MOST_AT_A_TIME, availableParallelism()), signal, async (file, index) => {
      if (file.outcome.kind !== 'waiting') return progress.settle(index, file.outcome);
      progress.begin(index);
      progress.settle(index, await outcomeOf(file));
    });
  };

  /** One bad file never stops the rest: whatever goes wrong with it is its outcome. */
  const outcomeOf = async (file: PlannedFile): Promise<FileOutcome> => {
    try {
      return await importFile(file);
    } catch (error) {
      // The plan still calls the file waiting, so it can be tried again when, say, the disk has room.
      if (error instanceof Refusal) return { kind: 'refused', failure: error.failure };
      return { kind: 'refused', failure: { code: 'defect', reference: reportDefect(error) } };
    }
  };

  const importFile = async (file: PlannedFile): Promise<FileOutcome> => {
    const staged = file.staged ? succeed(file.staged) : await stageFromSource(file);
    if (!staged.ok) return settle(file, { kind: 'refused', failure: staged.failure });
    const admission = await admitPicture(archive, { staged: staged.value, name: file.name, sample: false }, (outcome) =>
      archive.imports.settle(file.id, outcome),
    );
    if (admission.ok) return admission.value;
    const outcome = settle(file, { kind: 'refused', failure: admission.failure });
    await archive.originals.discard(staged.value);
    return outcome;
  };

  const stageFromSource = async (file: PlannedFile) => {
    if (file.sourcePath === null) return fail({ code: 'file-not-arrived', file: file.name });
    const staged = await archive.originals.stage({ kind: 'file', path: file.sourcePath }, file.name);
    if (staged.ok) archive.imports.arrived(file.id, staged.value);
    return staged;
  };

  const settle = (file: PlannedFile, outcome: FileOutcome): FileOutcome => {
    archive.imports.settle(file.id, outcome);
    return outcome;
  };

  const announce = (files: Parameters<Archive['imports']['plan']>[0]): string => {
    const { intakeId } = archive.imports.plan(files);
    inHand.set(intakeId, null);
    return intakeId;
  };

  return {
    announce,
    async grant(paths) {
      const files = await Promise.all(
        paths.map(async (path) => ({ name: basename(path), sourcePath: path, byteLength: await lengthOf(path) })),
      );
      return announce(files);
    },
    async receive(intakeId, index, bytes) {
      const files = archive.imports.files(intakeId);
      if (!files.ok) return files;
      const file = files.value[index];
      if (!file) return fail({ code: 'not-found', what: 'file of the intake', id: String(index) });
      if (file.outcome.kind !== 'waiting') return succeed(null);
      const staged = await archive.originals.stage({ kind: 'stream', stream: upTo(file, bytes), byteLength: file.byteLength }, file.name);
      if (!staged.ok) {
        if (staged.failure.code === 'file-empty') settle(file, { kind: 'refused', failure: staged.failure });
        return staged;
      }
      archive.imports.arrived(file.id, staged.value);
      if (file.staged) await archive.originals.discard(file.staged);
      return succeed(null);
    },
    start(intakeId) {
      const running = inHand.get(intakeId);
      if (running) {
        const task = tasks.get(running);
        return task.ok ? succeed(task.value.snapshot) : task;
      }
      const files = archive.imports.files(intakeId);
      return files.ok ? succeed(importAll(files.value)) : files;
    },
    resume: () => importAll(leftWaiting()),
    async giveUp() {
      const files = leftWaiting();
      for (const file of files) {
        settle(file, { kind: 'refused', failure: { code: 'file-not-arrived', file: file.name } });
        if (file.staged) await archive.originals.discard(file.staged);
      }
      return files.length;
    },
    unfinishedCount: () => leftWaiting().length,
  };
}

/** Stops at the first byte more than was announced, so that nobody fills the disk with one file. */
async function* upTo(file: PlannedFile, bytes: AsyncIterable<Uint8Array>): AsyncGenerator<Uint8Array> {
  let receivedBytes = 0;
  for await (const piece of bytes) {
    receivedBytes += piece.byteLength;
    if (receivedBytes > file.byteLength) refuse({ code: 'file-not-arrived', file: file.name });
    yield piece;
  }
}

/** A file that cannot be asked for its length is refused with the reason when its turn comes. */
async function lengthOf(path: string): Promise<number> {
  const found = await stat(path).catch(() => null);
  return found?.size ?? 0;
}
