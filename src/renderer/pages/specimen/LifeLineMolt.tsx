import { type ReactElement, useState } from 'react';
import { daysInWords, spanInWords } from '../../../words/dates.ts';
import { moltName } from '../../../words/instars.ts';
import { OUTCOME_LABELS, POSITION_LABELS } from '../../../words/labels.ts';
import { Button } from '../../parts/Button.tsx';
import { DayText } from '../../parts/DayText.tsx';
import { RemoveDialog } from '../../removing/RemoveDialog.tsx';
import style from './LifeLineMolt.module.css';
import type { LifeLineEntry } from './lifeLine.ts';
import { MoltDialog } from './MoltDialog.tsx';
import { SkinPart } from './SkinPart.tsx';

/** One stop of the life line: when the molt happened and how it went, then what its skin tells. */
export function LifeLineMolt({ stop, today }: { stop: LifeLineEntry; today: string }): ReactElement {
  const [open, setOpen] = useState<'edit' | 'remove' | null>(null);
  const { molt } = stop.entry;
  const close = () => setOpen(null);
  return (
    <article className={style['molt']}>
      <header className={style['head']}>
        <div>
          <h3>
            <DayText day={molt.happenedFrom} to={molt.happenedTo} />
          </h3>
          <p className={style['course']}>
            <span>{moltName(stop.entry.instar, stop.recordedMolt)}</span>
            {stop.daysSincePrevious && (
              <span className="figures">{daysInWords(stop.daysSincePrevious.from, stop.daysSincePrevious.to)} after the one before</span>
            )}
            {molt.position !== 'not-seen' && <span>{POSITION_LABELS[molt.position]}</span>}
            {molt.outcomes.map((outcome) => (
              <span key={outcome}>{OUTCOME_LABELS[outcome]}</span>
            ))}
          </p>
        </div>
        <div className={style['actions']}>
          <Button kind="quiet" icon="edit" onClick={() => setOpen('edit')}>
            Change
          </Button>
          <Button kind="quiet" icon="remove" onClick={() => setOpen('remove')}>
            Remove
          </Button>
        </div>
      </header>
      {molt.notes && <p className={style['notes']}>{molt.notes}</p>}
      <SkinPart entry={stop.entry} />
      {open === 'edit' && <MoltDialog specimenId={molt.specimenId} molt={molt} today={today} lastShed={null} onClose={close} />}
      {open === 'remove' && (
        <RemoveDialog kind="molt" id={molt.id} what={`the molt of ${spanInWords(molt.happenedFrom, molt.happenedTo)}`} onClose={close} />
      )}
    </article>
  );
}
