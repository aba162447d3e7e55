import { type ReactElement, useState } from 'react';
import { counted } from '../../../words/counts.ts';
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
  const name = `the molt of ${spanInWords(molt.happenedFrom, molt.happenedTo)}`;
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
              <span>
                {daysInWords(stop.daysSincePrevious.from, stop.daysSincePrevious.to)} after the one before
                {stop.missing.length > 0 && ` on record: these days span ${counted(stop.missing.length + 1, 'instar')}`}
              </span>
            )}
            {molt.position !== 'not-seen' && <span>{POSITION_LABELS[molt.position]}</span>}
            {molt.outcomes.map((outcome) => (
              <span key={outcome}>{OUTCOME_LABELS[outcome]}</span>
            ))}
          </p>
        </div>
        <div className={style['actions']}>
          <Button kind="quiet" icon="edit" aria-label={`Change ${name}`} onClick={() => setOpen('edit')}>
            Change
          </Button>
          <Button kind="quiet" icon="remove" aria-label={`Remove ${name}`} onClick={() => setOpen('remove')}>
            Remove
          </Button>
        </div>
      </header>
      {molt.notes && <p className={style['notes']}>{molt.notes}</p>}
      <SkinPart entry={stop.entry} />
      {open === 'edit' && <MoltDialog specimenId={molt.specimenId} molt={molt} today={today} lastShed={null} onClose={close} />}
      {open === 'remove' && <RemoveDialog kind="molt" id={molt.id} what={name} onClose={close} />}
    </article>
  );
}
