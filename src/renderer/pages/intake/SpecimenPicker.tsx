import { type ReactElement, useId, useState } from 'react';
import type { SpecimenSummary } from '../../../api/contract/specimens.ts';
import { Field } from '../../parts/Field.tsx';
import { Taxon } from '../../parts/Taxon.tsx';
import { FIRST_VIEW, shownIn } from '../cabinet/cabinetView.ts';
import style from './SpecimenPicker.module.css';

const SHOWN = 6;

interface Props {
  specimens: readonly SpecimenSummary[];
  chosen: string | null;
  onChoose: (specimenId: string) => void;
}

/** Chooses one animal out of many: a few to click, the rest by typing. The chosen one always stays in sight. */
export function SpecimenPicker({ specimens, chosen, onChoose }: Props): ReactElement {
  const [search, setSearch] = useState('');
  const name = useId();
  // Newest first: whoever was just added has photos waiting.
  const fitting = shownIn({ ...FIRST_VIEW, status: 'any', search }, specimens).toSorted((a, b) =>
    b.specimen.createdAt.localeCompare(a.specimen.createdAt),
  );
  const chosenOne = specimens.find((summary) => summary.specimen.id === chosen);
  const first = fitting.slice(0, SHOWN);
  // In one order whoever is chosen: what moves under the hand is clicked by mistake.
  const offered = !chosenOne || first.includes(chosenOne) ? first : [...first.slice(0, SHOWN - 1), chosenOne];
  const hidden = fitting.filter((summary) => !offered.includes(summary)).length;
  return (
    <fieldset className={style['picker']}>
      <legend>Whose is it?</legend>
      {specimens.length > SHOWN && (
        <Field label="Find an animal">
          {(control) => (
            <input
              {...control}
              type="search"
              placeholder="Code, species or name"
              value={search}
              onChange={(event) => setSearch(event.target.value)}
            />
          )}
        </Field>
      )}
      {offered.map(({ specimen }) => (
        <label key={specimen.id} className={style['choice']}>
          <input type="radio" name={name} checked={specimen.id === chosen} onChange={() => onChoose(specimen.id)} />
          <span className={style['words']}>
            <strong className="figures">{specimen.code}</strong> <Taxon name={specimen.taxon} />
            {specimen.name && <span className={style['name']}> {specimen.name}</span>}
          </span>
        </label>
      ))}
      {fitting.length === 0 && specimens.length > 0 && <p className={style['more']}>Nobody fits.</p>}
      {hidden > 0 && <p className={style['more']}>and {hidden} more: type to find them</p>}
    </fieldset>
  );
}
