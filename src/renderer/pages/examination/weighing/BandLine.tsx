import type { ReactElement } from 'react';
import type { Weighing } from '../../../../domain/sexing/evidence/weigh.ts';
import type { Assessment } from '../../../../domain/sexing/levels.ts';
import { rankOf } from '../../../../domain/sexing/rank.ts';
import { bandInWords, GATE_WORDS } from '../../../../words/evidence.ts';
import { LEVEL_LABELS } from '../../../../words/labels.ts';
import { needsInWords } from '../../../../words/sexing.ts';
import style from './BandLine.module.css';
import { Beam } from './Beam.tsx';

interface Props {
  weighing: Weighing;
  assessments: Readonly<Record<'female' | 'male', Assessment>>;
}

/** What everything on record and the answers so far come to, in one line, and beside it why it goes no further. */
export function BandLine({ weighing, assessments }: Props): ReactElement {
  const reasons = heldDown(weighing, assessments);
  return (
    <output className={style['line']} aria-label="What the answers come to">
      <Beam {...weighing} />
      <span className={style['band']}>All evidence of the animal, other skins included: {bandInWords(weighing)}</span>
      <span className={style['levels']}>{signableInWords(assessments)}</span>
      {reasons.length > 0 && <span className={style['reasons']}>{reasons.join(' ')}</span>}
    </output>
  );
}

/** What the answers of this skin alone allow; the band beside it counts everything on record. */
function signableInWords({ female, male }: Props['assessments']): string {
  const allowed = [
    ...(female.highest === null ? [] : [`female up to ${LEVEL_LABELS[female.highest]}`]),
    ...(male.highest === null ? [] : [`male up to ${LEVEL_LABELS[male.highest]}`]),
  ];
  return allowed.length === 0
    ? 'By the answers of this skin alone neither sex can be signed yet.'
    : `By the answers of this skin it may be signed as ${allowed.join(', or as ')}.`;
}

/** A conflict, the rule that caps the band, and what this skin lacks where it may not be signed as high as the band stands. */
function heldDown({ towards, band, conflict, gate }: Weighing, assessments: Props['assessments']): string[] {
  if (conflict) return ['Two sides stand against each other; Conclude names both.'];
  const reasons = gate === null ? [] : [GATE_WORDS[gate]];
  if (towards === null || band === 'unsexed') return reasons;
  const { highest, next, missing } = assessments[towards];
  const below = rankOf(band) > (highest === null ? -1 : rankOf(highest));
  if (!below || next === null || missing[0] === undefined) return reasons;
  return [...reasons, `For ${towards}, ${LEVEL_LABELS[next]}, this skin still needs ${needsInWords(missing.slice(0, 1))}.`];
}
