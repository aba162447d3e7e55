/** What differs between the shells the page can stand in. */
export interface Host {
  /**
   * Hands files over to the archive as one intake, ready to be imported, and answers its id.
   * A single file that cannot be read does not stop the others: the import reports it.
   * Throws a Refusal when nothing can be handed over at all, and an AbortError when stopped.
   */
  handOver(files: readonly File[], watch: HandOverWatch): Promise<string>;
}

export interface HandOverWatch {
  readonly signal: AbortSignal;
  /** Called with the number of files that have gone over. */
  onSent(sent: number): void;
}
