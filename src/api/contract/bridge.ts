import type { Failure } from '../../domain/failure.ts';

export type TakenFiles = { readonly intakeId: string } | { readonly failure: Failure };

/** What the desktop shell can do for the page beyond answering requests. */
export interface Bridge {
  /**
   * Copies files of a drop or of a file dialog straight from the disk into an intake, ready for `POST /api/imports`.
   * null if one of them lies on no disk (pasted, or made by a page): then send the bytes as in a browser.
   */
  takeFiles(files: readonly File[]): Promise<TakenFiles | null>;
}

/** The page's window: with the bridge in the desktop shell, without it in a browser. */
export interface WindowWithBridge {
  readonly exuviaryBridge?: Bridge;
}
