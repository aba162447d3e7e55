import type { FileOutcome } from '../../domain/intake/task.ts';
import type { Result } from '../../domain/result.ts';
import type { Staged } from './originals.ts';

/**
 * One file that somebody means to import. It is `waiting` until `settle`; its bytes either lie staged in the archive
 * (`staged`) or can be read from a file outside (`sourcePath`).
 */
export interface PlannedFile {
  readonly id: string;
  readonly intakeId: string;
  readonly position: number;
  readonly name: string;
  readonly byteLength: number;
  readonly sourcePath: string | null;
  readonly staged: Staged | null;
  readonly outcome: FileOutcome;
}

/** The plan of every import, kept so that a killed import can go on. Settled plans are forgotten at the next opening. */
export interface Imports {
  plan(files: readonly { readonly name: string; readonly byteLength: number; readonly sourcePath?: string }[]): {
    readonly intakeId: string;
    readonly files: readonly PlannedFile[];
  };
  /** In the order planned. Fails with `intake-gone`. */
  files(intakeId: string): Result<readonly PlannedFile[]>;
  /** Notes that the bytes have arrived; from here on they survive a crash. */
  arrived(plannedFileId: string, staged: Staged): void;
  /** Notes what became of the file. Call it in the transaction that adds the photo. */
  settle(plannedFileId: string, outcome: FileOutcome): void;
  /** Files still waiting whose bytes can be had, oldest plan first. */
  unfinished(): readonly PlannedFile[];
}
