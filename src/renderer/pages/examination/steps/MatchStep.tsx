import type { ReactElement } from 'react';
import { isSpanLikely } from '../../../../domain/growth/spanOfCarapace.ts';
import { numbersWith } from '../../../../domain/sexing/evidence/numbers.ts';
import { Notice } from '../../../parts/Notice.tsx';
import { QuestionRow } from './QuestionRow.tsx';
import { SizeField } from './SizeField.tsx';
import type { StepProps } from './StepProps.ts';

/** Whose skin it is, and how large: the size decides how much a strip can show. */
export function MatchStep(step: StepProps): ReactElement {
  const { sheet, reading, onAnswer } = step;
  const { checklist } = reading;
  const { legSpanMm, carapaceLengthMm } = checklist;
  return (
    <>
      <QuestionRow name="skinMatchesAnimal" {...step} />
      {checklist.skinMatchesAnimal === 'no' && (
        <Notice tone="warning" title="Then it says nothing about this animal.">
          File the skin under the animal it came from, and read it there.
        </Notice>
      )}
      <SizeField
        label="Leg span of this skin, mm"
        hint={`Laid out or estimated. Emptiness weighs only on skins of more than ${numbersWith(sheet.model.adjustments)['span.largeAbove']} mm.`}
        lengthMm={legSpanMm}
        measured={sheet.legSpanMm}
        largestMm={500}
        decimals={0}
        onChange={(typedMm) => onAnswer({ legSpanMm: typedMm })}
      />
      <SizeField
        label="Carapace of this skin, mm"
        hint="Its length, wet and flat. With the leg span, the smaller size class of the two counts."
        lengthMm={carapaceLengthMm}
        measured={sheet.carapaceLengthMm}
        largestMm={100}
        decimals={1}
        onChange={(typedMm) => onAnswer({ carapaceLengthMm: typedMm })}
      />
      <div role="status">
        {legSpanMm !== null && carapaceLengthMm !== null && !isSpanLikely(legSpanMm, carapaceLengthMm) && (
          <Notice tone="warning" title="Are both of this skin, and both in millimeters?">
            A leg span is some six carapace lengths; {legSpanMm} mm and {carapaceLengthMm} mm hardly belong to one skin. Until one is put
            right, the smaller size counts, and with it how little an empty strip may say.
          </Notice>
        )}
      </div>
    </>
  );
}
