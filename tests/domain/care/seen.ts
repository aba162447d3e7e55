import type { ObservationKind, Seen } from '../../../src/domain/care/observation.ts';

/** One observation; its name says when and what. `at` without a zone is UTC. */
export function seen(kind: ObservationKind, at: string, offset = '+00:00'): Seen {
  const instant = new Date(at.endsWith('Z') ? at : `${at}Z`).toISOString();
  return { id: `${kind} ${instant}`, kind, moment: { at: instant, offset }, span: null };
}

export function molt(id: string, happenedFrom: string, happenedTo = happenedFrom) {
  return { id, happenedFrom, happenedTo, outcomes: [] };
}
