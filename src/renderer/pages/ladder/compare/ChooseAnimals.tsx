import type { ReactElement } from 'react';
import type { SpecimenSummary } from '../../../../api/contract/specimens.ts';
import { areSiblings, eggSacOf } from '../../../../domain/growth/kin.ts';
import type { Specimen } from '../../../../domain/specimen/specimen.ts';
import { CheckField } from '../../../parts/CheckField.tsx';
import { Select } from '../../../parts/Select.tsx';
import style from './Compare.module.css';

interface Props {
  specimen: Specimen;
  /** All that have molts on record. */
  others: readonly SpecimenSummary[];
  chosen: ReadonlySet<string>;
  onChoose: (specimenId: string, beside: boolean) => void;
}

/** Siblings of the egg sac to tick, and any other animal to add. */
export function ChooseAnimals({ specimen, others, chosen, onChoose }: Props): ReactElement {
  const isSibling = (other: SpecimenSummary) => areSiblings(specimen, other.specimen);
  const offered = others.filter((other) => isSibling(other) || chosen.has(other.specimen.id));
  const more = others.filter((other) => !offered.includes(other));
  return (
    <>
      {offered.length > 0 && (
        <fieldset className={style['animals']}>
          <legend>Beside it</legend>
          {offered.map((other) => (
            <CheckField
              key={other.specimen.id}
              checked={chosen.has(other.specimen.id)}
              onChange={(beside) => onChoose(other.specimen.id, beside)}
            >
              {other.specimen.name ?? other.specimen.code}
              {isSibling(other) && ' (sibling)'}
            </CheckField>
          ))}
        </fieldset>
      )}
      {offered.length === 0 && (
        <p className={style['small']}>
          {eggSacOf(specimen) === null
            ? 'No egg sac is noted for this animal, so its siblings are not known. Any other animal can stand beside it.'
            : 'No sibling of its egg sac has a molt on record. Any other animal can stand beside it.'}
        </p>
      )}
      {more.length > 0 && (
        <div className={style['choices']}>
          <Select
            label="Add another animal"
            value=""
            options={[
              { value: '', label: 'choose …' },
              ...more.map((other) => ({
                value: other.specimen.id,
                label: [other.specimen.code, other.specimen.name, other.specimen.taxon].filter(Boolean).join(' · '),
              })),
            ]}
            onChange={(id) => id !== '' && onChoose(id, true)}
          />
        </div>
      )}
    </>
  );
}
