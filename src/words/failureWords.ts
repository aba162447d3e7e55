/** A failure as the keeper reads it. */
export interface FailureWords {
  /** What happened. */
  happened: string;
  /** What can be done about it. */
  advice: string;
}
