import type { ReactNode } from 'react';
import type { Reason } from '../../../domain/care/watchItem.ts';
import { ButtonLink } from '../../parts/ButtonLink.tsx';
import { RecordDeath } from '../specimen/RecordDeath.tsx';
import { stepOf } from './needWords.ts';
import { RecordMolt } from './RecordMolt.tsx';
import { RecordSkin } from './RecordSkin.tsx';

interface Props {
  reason: Reason;
  specimen: { readonly id: string; readonly code: string };
  /** Stands there where the step is taken with the animal's own keys. */
  children?: ReactNode;
}

/** The step that a reason asks for: a dialog, another room, or the keys of the animal. */
export function NextStep({ reason, specimen, children }: Props): ReactNode {
  const { words, to } = stepOf(reason, specimen.id);
  if (reason.need.kind === 'molt-to-record') {
    const { moltedOn } = reason.need;
    return <RecordMolt specimenId={specimen.id} code={specimen.code} words={words} from={moltedOn} to={moltedOn} />;
  }
  if (reason.need.kind === 'molt-end-unseen') {
    const { startedOn, endedBy } = reason.need;
    return <RecordMolt specimenId={specimen.id} code={specimen.code} words={words} from={startedOn} to={endedBy} />;
  }
  if (reason.need.kind === 'died-in-molt') {
    return <RecordDeath specimenId={specimen.id} code={specimen.code} words={words} diedOn={reason.need.diedOn} />;
  }
  if (reason.need.kind === 'skin-to-recover') return <RecordSkin code={specimen.code} words={words} moltId={reason.need.moltId} />;
  return to === null ? children : <ButtonLink to={to}>{words}</ButtonLink>;
}
