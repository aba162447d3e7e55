import type { ReactElement } from 'react';
import { choicesOf, SEX_LABELS, STATUS_LABELS } from '../../../words/labels.ts';
import { Button } from '../../parts/Button.tsx';
import { Field } from '../../parts/Field.tsx';
import { Select } from '../../parts/Select.tsx';
import style from './CabinetTools.module.css';
import { type CabinetView, FIRST_VIEW, isNarrowed } from './cabinetView.ts';

const SEXES: readonly { value: CabinetView['sex']; label: string }[] = [
  { value: 'any', label: 'Any sex' },
  ...choicesOf(SEX_LABELS),
  { value: 'contradicted', label: 'Contradicted' },
];
const STATUSES: readonly { value: CabinetView['status']; label: string }[] = [
  { value: 'kept', label: 'Kept (living or on loan)' },
  { value: 'any', label: 'All on record' },
  ...choicesOf(STATUS_LABELS),
];

interface Props {
  view: CabinetView;
  onView: (view: CabinetView) => void;
  shown: number;
  total: number;
}

/** Search and narrowing; says how many of how many are shown. */
export function CabinetTools({ view, onView, shown, total }: Props): ReactElement {
  return (
    <search className={style['tools']}>
      <div className={style['search']}>
        <Field label="Search">
          {(control) => (
            <input
              {...control}
              type="search"
              placeholder="Code, species, name, egg sac, origin"
              value={view.search}
              onChange={(event) => onView({ ...view, search: event.target.value })}
            />
          )}
        </Field>
      </div>
      <Select label="Sex" value={view.sex} options={SEXES} onChange={(sex) => onView({ ...view, sex })} />
      <Select label="Status" value={view.status} options={STATUSES} onChange={(status) => onView({ ...view, status })} />
      <div className={style['count']}>
        <span className="figures" role="status">
          {shown} of {total} shown
        </span>
        {isNarrowed(view) && (
          <Button kind="quiet" onClick={() => onView({ ...view, search: '', sex: FIRST_VIEW.sex, status: FIRST_VIEW.status })}>
            Clear
          </Button>
        )}
      </div>
    </search>
  );
}
