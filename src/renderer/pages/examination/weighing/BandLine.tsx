import type { ReactElement } from 'react';
import type { Weighing } from '../../../../domain/sexing/evidence/weigh.ts';
import type { Assessment } from '../../../../domain/sexing/levels.ts';
import { bandInWords } from '../../../../words/evidence.ts';
import { LEVEL_LABELS } from '../../../../words/labels.ts';
import style from './BandLine.module.css';
import { Beam } from './Beam.tsx';

interface Props {
  weighing: Weighing;
  assessments: Readonly<Record<'female' | 'male', Assessment>>;
}

/** What everything on record and the answers so far come to, in one line. */
export function BandLine({ weighing, assessments: { female, male } }: Props): ReactElement {
  return (
    <output className={style['line']} aria-label="What the answers come to">
      <Beam {...weighing} />
      <span className={style['band']}>All evidence: {bandInWords(weighing)}</span>
      <span className={style['levels']}>
        This skin may be signed as female {reachInWords(female)}, as male {reachInWords(male)}.
      </span>
    </output>
  );
}

function reachInWords({ highest }: Assessment): string {
  return highest === null ? 'not yet' : `up to ${LEVEL_LABELS[highest]}`;
}
