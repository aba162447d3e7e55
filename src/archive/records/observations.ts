import type { Observation, ObservationDraft } from '../../domain/care/observation.ts';
import type { Result } from '../../domain/result.ts';

/** Append-only: a wrong observation is removed and made anew. Whether it fits among the others is the domain's question. */
export interface Observations {
  append(specimenId: string, draft: ObservationDraft): Result<Observation>;
  get(observationId: string): Result<Observation>;
  /** By the time it was seen, oldest first. */
  ofSpecimen(specimenId: string): readonly Observation[];
  /** Of all animals, those of one together and oldest first. */
  list(): readonly Observation[];
}
