import { type EvidenceModel, modelAfter } from '../../src/domain/sexing/evidence/model.ts';

/** The numbers before anybody changed one. */
export const SHIPPED_MODEL: EvidenceModel = modelAfter([]);
