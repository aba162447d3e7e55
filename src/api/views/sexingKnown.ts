import { type EvidenceModel, modelAfter } from '../../domain/sexing/evidence/model.ts';
import { type GenusBook, profileFor } from '../../domain/sexing/genus/find.ts';
import type { GenusProfile } from '../../domain/sexing/genus/profile.ts';
import { type SkinInOrder, skinsInOrderOf } from '../../domain/sexing/skinsInOrder.ts';
import type { Specimen } from '../../domain/specimen/specimen.ts';
import type { ApiContext } from '../context.ts';

export type SexingContext = Pick<ApiContext, 'archive' | 'genera'>;

export function genusBookOf({ archive, genera }: SexingContext): GenusBook {
  return { shipped: genera, edits: archive.genusEdits.list() };
}

export function genusProfileOf(context: SexingContext, specimen: Pick<Specimen, 'taxon'>): GenusProfile {
  return profileFor(specimen.taxon, genusBookOf(context));
}

export function modelInForce({ archive }: SexingContext): EvidenceModel {
  return modelAfter(archive.modelChanges.list());
}

export function skinsOnRecord({ archive }: Pick<SexingContext, 'archive'>, specimenId: string): SkinInOrder[] {
  return skinsInOrderOf(archive.molts.ofSpecimen(specimenId), archive.exuviae.ofSpecimen(specimenId));
}
