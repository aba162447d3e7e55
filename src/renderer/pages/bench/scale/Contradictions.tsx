import type { ReactElement } from 'react';
import type { ScaleMarks } from '../../../../domain/measuring/calibration.ts';
import { scaleObjectName } from '../../../../words/measuring.ts';
import { takeFound } from '../../../bench/deeds/finding.ts';
import { Button } from '../../../parts/Button.tsx';
import { Notice } from '../../../parts/Notice.tsx';
import style from '../panel.module.css';
import { useBench, useWork } from '../useWork.ts';
import { contradictionInWords } from './findingWords.ts';
import { type TwoObjects, useProposals } from './useProposals.ts';

/** Two objects that cannot both be right: says so, shows both, and asks. Nothing that was measured changes by itself. */
export function Contradictions({ pairs }: { pairs: readonly TwoObjects[] }): ReactElement {
  return (
    <>
      {pairs.map(({ one, other, contradiction }) => (
        <Notice key={scaleObjectName(other)} tone="warning" title="Two objects in this picture contradict each other">
          <p>{contradictionInWords(one, other, contradiction)}</p>
          <p>
            One is not what it is taken for, or does not lie flat on the table: another coin, another graduation, a card printed at another
            size, a bent card. Which do you trust?
          </p>
          <div className={style['row']}>
            <TrustButton marks={one} />
            <TrustButton marks={other} />
          </div>
        </Notice>
      ))}
    </>
  );
}

function TrustButton({ marks }: { marks: ScaleMarks }): ReactElement {
  const { bench } = useWork();
  const present = useBench((state) => state.edited.document.scale);
  const { data } = useProposals(false);
  if (present === marks) {
    return (
      <Button kind="quiet" disabled>
        Measured by now: {scaleObjectName(marks)}
      </Button>
    );
  }
  const proposal = data?.find((candidate) => candidate.marks === marks);
  return (
    <Button
      disabled={proposal === undefined}
      onClick={() => {
        if (proposal !== undefined) takeFound(bench, proposal);
      }}
    >
      Trust: {scaleObjectName(marks)}
    </Button>
  );
}
