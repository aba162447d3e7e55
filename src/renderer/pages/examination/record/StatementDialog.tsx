import { type ReactElement, useState } from 'react';
import type { QueryOf } from '../../../../api/contract/contract.ts';
import { addressOf } from '../../../client/ask.ts';
import { useAnswer } from '../../../client/queries.ts';
import { buttonClass } from '../../../parts/Button.tsx';
import { CopyText } from '../../../parts/CopyText.tsx';
import { DayField } from '../../../parts/DayField.tsx';
import { Dialog } from '../../../parts/Dialog.tsx';
import { FailureNotice } from '../../../parts/Notice.tsx';
import { Select } from '../../../parts/Select.tsx';
import { TextField } from '../../../parts/TextField.tsx';
import style from './StatementDialog.module.css';

type Promise = NonNullable<QueryOf<'GET /api/specimens/{specimenId}/sex-statement'>>;
type IfWrong = NonNullable<Promise['ifWrong']>;

const PROMISES: readonly { value: IfWrong; label: string }[] = [
  { value: 'none', label: 'Nothing is promised' },
  { value: 'refund', label: 'Refund' },
  { value: 'exchange', label: 'Exchange' },
];

/** What can honestly be said of the sex of an animal: to be read first, then copied or saved as a page. */
export function StatementDialog({ specimenId, onClose }: { specimenId: string; onClose: () => void }): ReactElement {
  const [ifWrong, setIfWrong] = useState<IfWrong>('none');
  const [until, setUntil] = useState('');
  const [sizeNow, setSizeNow] = useState('');
  const [paper, setPaper] = useState<'a4' | 'letter'>('a4');
  const query: Promise = { ifWrong, sizeNow, ...(ifWrong !== 'none' && until !== '' && { until }) };
  const path = { specimenId };
  const answer = useAnswer('GET /api/specimens/{specimenId}/sex-statement', { path, query }, { keep: false });
  const page = `${addressOf('GET /api/specimens/{specimenId}/sex-statement.pdf', path)}?${new URLSearchParams({ ...query, paper } as Record<string, string>)}`;
  return (
    <Dialog
      title="Statement of sex"
      wide
      onClose={onClose}
      foot={
        answer.data && (
          <>
            <CopyText text={answer.data.text} />
            <a className={buttonClass('primary')} href={page} download="statement-of-sex.pdf">
              Save as a page (PDF)
            </a>
          </>
        )
      }
    >
      <div className={style['fields']}>
        <TextField
          label="Size now"
          hint="With what was measured, such as “leg span 9 cm”. The skin only shows the size before the molt."
          maxLength={200}
          value={sizeNow}
          onChange={setSizeNow}
        />
        <Select label="If it proves wrong" value={ifWrong} options={PROMISES} onChange={setIfWrong} />
        {ifWrong !== 'none' && (
          <DayField label="Until" hint="Left empty, the statement says that no last day is named." value={until} onChange={setUntil} />
        )}
        <Select
          label="Paper"
          value={paper}
          options={[
            { value: 'a4', label: 'A4' },
            { value: 'letter', label: 'US Letter' },
          ]}
          onChange={setPaper}
        />
      </div>
      {answer.error && <FailureNotice error={answer.error} />}
      {answer.data && (
        <section aria-label="The statement" className={style['sheet']}>
          <h3>{answer.data.title}</h3>
          <p className={style['claim']}>{answer.data.claim}</p>
          <dl>
            {answer.data.rows.map(({ label, text }) => (
              <div key={label} className={style['row']}>
                <dt>{label}</dt>
                <dd>{text}</dd>
              </div>
            ))}
          </dl>
          <p className={style['closing']}>{answer.data.closing}</p>
        </section>
      )}
    </Dialog>
  );
}
