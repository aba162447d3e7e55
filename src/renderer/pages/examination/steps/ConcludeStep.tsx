import type { ReactElement } from 'react';
import type { Prospect } from '../../../../domain/sexing/evidence/prospects.ts';
import type { Weighing } from '../../../../domain/sexing/evidence/weigh.ts';
import type { Assessment } from '../../../../domain/sexing/levels.ts';
import { LEVELS, rankOf } from '../../../../domain/sexing/rank.ts';
import { capitalized, choicesOf, LEVEL_LABELS, SEX_LABELS } from '../../../../words/labels.ts';
import { Notice } from '../../../parts/Notice.tsx';
import type { Gaps } from '../reading/gaps.ts';
import { StillMissing } from '../weighing/StillMissing.tsx';
import { WhatCarries } from '../weighing/WhatCarries.tsx';
import { RadioRow } from './RadioRow.tsx';
import type { StepProps } from './StepProps.ts';

interface Props extends StepProps {
  weighing: Weighing;
  prospects: readonly Prospect[];
  assessments: Readonly<Record<'female' | 'male', Assessment>>;
  gaps: Gaps;
  nameOfSkin: (exuviaId: string) => string;
}

/** What the evidence comes to and why, and what the keeper concludes from it. */
export function ConcludeStep(props: Props): ReactElement {
  const { sheet, reading, weighing, prospects, assessments, gaps, nameOfSkin, onChange } = props;
  const { sex, level } = reading;
  return (
    <>
      <WhatCarries
        weighing={weighing}
        prospects={prospects}
        modelVersion={sheet.model.version}
        exuviaId={sheet.exuvia.id}
        adultCarapaceMm={sheet.genus.adultCarapaceMm}
        nameOfSkin={nameOfSkin}
      />
      <RadioRow
        legend="What is it?"
        explained="The conclusion is yours. The answers only limit how sure it may be called; less is always allowed."
        value={sex}
        options={choicesOf(SEX_LABELS)}
        onChange={(chosen) => onChange({ sex: chosen, level: null })}
        error={gaps.sex}
      />
      {sex === 'anomalous' && (
        <Notice title="Anomalous is only ever said by hand.">
          For an animal that shows both sexes or fits neither. No rule concludes it, and one odd skin proves nothing: an odd form can be
          gone with the next molt. Say in the notes what was seen, and pin photos.
        </Notice>
      )}
      {(sex === 'female' || sex === 'male') && (
        <>
          <RadioRow
            legend="How sure?"
            value={level}
            options={LEVELS.map((value) => ({
              value,
              label: capitalized(LEVEL_LABELS[value]),
              disabled: !reaches(assessments[sex], value),
            }))}
            onChange={(chosen) => onChange({ level: chosen })}
            error={gaps.level}
          />
          <StillMissing assessment={assessments[sex]} />
        </>
      )}
    </>
  );
}

function reaches({ highest }: Assessment, level: (typeof LEVELS)[number]): boolean {
  return highest !== null && rankOf(level) <= rankOf(highest);
}
