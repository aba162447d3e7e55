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
      <span className={style['band']}>All evidence of the animal, other skins included: {bandInWords(weighing)}</span>
      <span className={style['levels']}>{signableInWords(female, male)}</span>
    </output>
  );
}

/** What the answers of this skin alone allow; the band beside it counts everything on record. */
function signableInWords(female: Assessment, male: Assessment): string {
  const allowed = [
    ...(female.highest === null ? [] : [`female up to ${LEVEL_LABELS[female.highest]}`]),
    ...(male.highest === null ? [] : [`male up to ${LEVEL_LABELS[male.highest]}`]),
  ];
  return allowed.length === 0
    ? 'By the answers of this skin alone neither sex can be signed yet.'
    : `By the answers of this skin it may be signed as ${allowed.join(', or as ')}.`;
}
