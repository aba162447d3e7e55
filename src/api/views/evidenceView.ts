import type { OnRecord } from '../../domain/sexing/evidence/caseOf.ts';
import { caseOf } from '../../domain/sexing/evidence/caseOf.ts';
import type { EvidenceModel } from '../../domain/sexing/evidence/model.ts';
import { prospectsOf } from '../../domain/sexing/evidence/prospects.ts';
import { weigh } from '../../domain/sexing/evidence/weigh.ts';
import type { EvidenceView } from '../contract/sexing.ts';

/** What the whole history of an animal comes to, and what a further look at one of its skins could change. */
export function evidenceViewOf(onRecord: Omit<OnRecord, 'inHand'>, exuviaId: string, model: EvidenceModel): EvidenceView {
  const evidence = caseOf({ ...onRecord, inHand: null });
  const { towards, band, conflict, gate, items } = weigh(evidence, model);
  return { towards, band, conflict, gate, items: [...items], prospects: prospectsOf(evidence, exuviaId, model) };
}
