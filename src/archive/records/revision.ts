/** One saved state of a record. Lists of them run oldest first. */
export interface Revision<Body> {
  readonly version: number;
  readonly at: string;
  readonly body: Body;
}
