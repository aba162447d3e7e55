import type { ReactElement } from 'react';
import { LadderChooser } from './LadderChooser.tsx';
import { SpecimenLadder } from './SpecimenLadder.tsx';

/** The skins of one animal, rung by rung; without an animal, the choice of one. */
export function LadderPage({ specimenId }: { specimenId: string | null }): ReactElement {
  return specimenId === null ? <LadderChooser /> : <SpecimenLadder key={specimenId} specimenId={specimenId} />;
}
