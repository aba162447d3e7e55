import type { ReactElement } from 'react';
import type { Molt } from '../../../domain/molting/molt.ts';
import { diedIn } from '../../../domain/molting/outcomes.ts';
import { isKept } from '../../../domain/specimen/counts.ts';
import type { Specimen } from '../../../domain/specimen/specimen.ts';
import { dayInWords } from '../../../words/dates.ts';
import { Notice } from '../../parts/Notice.tsx';
import { RecordDeath } from './RecordDeath.tsx';

/** Asks for the status of an animal whose last molt says that it died in it. */
export function DiedNotice({ specimen, molts }: { specimen: Specimen; molts: readonly Molt[] }): ReactElement | null {
  const died = isKept(specimen.status) ? diedIn(molts) : null;
  if (!died) return null;
  return (
    <Notice tone="warning" title={`Its molt of ${dayInWords(died.happenedTo)} says that it died in it.`}>
      <p>It still counts as kept. If that outcome is a slip, change the molt.</p>
      <RecordDeath specimenId={specimen.id} code={specimen.code} words="Record it as dead" diedOn={died.happenedTo} />
    </Notice>
  );
}
