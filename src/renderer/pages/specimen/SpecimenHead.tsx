import type { ReactElement, ReactNode } from 'react';
import type { SpecimenSummary } from '../../../api/contract/specimens.ts';
import { instarInWords } from '../../../words/instars.ts';
import { HABIT_LABELS, STATUS_LABELS } from '../../../words/labels.ts';
import { DayText } from '../../parts/DayText.tsx';
import { SampleMark } from '../../parts/SampleMark.tsx';
import { SexMark } from '../../parts/SexMark.tsx';
import { Taxon } from '../../parts/Taxon.tsx';
import { Thumb } from '../../parts/Thumb.tsx';
import { useWindowTitle } from '../../parts/useWindowTitle.ts';
import style from './SpecimenHead.module.css';

/** Who this is: photo, names, sex, instar, and what else the keeper has said, as on a collection label. */
export function SpecimenHead({ summary, actions }: { summary: SpecimenSummary; actions: ReactNode }): ReactElement {
  const { specimen } = summary;
  useWindowTitle(specimen.code);
  return (
    <header className={style['head']}>
      <Thumb photoId={summary.coverPhotoId} alt={`Photo of ${specimen.code}`} className={style['photo']} />
      <div className={style['words']}>
        <p className={style['code']}>
          {specimen.code}
          {specimen.sample && <SampleMark />}
        </p>
        <h1 className={style['title']}>
          <Taxon name={specimen.taxon} />
        </h1>
        {specimen.name && <p className={style['name']}>{specimen.name}</p>}
        <div className={style['signs']}>
          <SexMark sign={summary.sex} />
          <span className="figures">
            {STATUS_LABELS[specimen.status]}, {summary.instarNow === null ? 'instar unknown' : `now in ${instarInWords(summary.instarNow)}`}
          </span>
        </div>
        <div className={style['actions']}>{actions}</div>
      </div>
      <dl className={style['label']}>
        <Line label="Acquired">
          {specimen.acquiredOn && <DayText day={specimen.acquiredOn} />}
          {specimen.acquiredInstar !== null && `${specimen.acquiredOn ? ', ' : ''}in instar ${specimen.acquiredInstar}`}
        </Line>
        <Line label="Hatched">{specimen.hatchedOn && <DayText day={specimen.hatchedOn} />}</Line>
        <Line label="Egg sac">{specimen.eggSacGroup}</Line>
        <Line label="Origin">{specimen.origin}</Line>
        <Line label="Way of life">{specimen.habit && HABIT_LABELS[specimen.habit]}</Line>
        <Line label="Notes">{specimen.notes && <span className={style['notes']}>{specimen.notes}</span>}</Line>
      </dl>
    </header>
  );
}

/** A line of the label; left out when there is nothing to say. */
function Line({ label, children }: { label: string; children: ReactNode }): ReactElement | null {
  const parts = Array.isArray(children) ? children : [children];
  if (parts.every((part) => part === null || part === '' || part === false)) return null;
  return (
    <div className={style['line']}>
      <dt>{label}</dt>
      <dd className="figures">{children}</dd>
    </div>
  );
}
