/** The two things a program takes from the world without being told: the time and fresh names. Always passed in. */
export interface Ambient {
  /** The present moment in UTC, `2026-11-25T12:00:00.000Z`. */
  now(): string;
  /** An identifier never given before. */
  newId(): string;
}
