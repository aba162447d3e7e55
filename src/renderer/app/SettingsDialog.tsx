import { type ReactElement, useState } from 'react';
import { Link } from 'wouter';
import type { Preferences } from '../../domain/preferences.ts';
import { counted } from '../../words/counts.ts';
import { useAnswer, useChange } from '../client/queries.ts';
import { Button } from '../parts/Button.tsx';
import { CheckField } from '../parts/CheckField.tsx';
import { Dialog } from '../parts/Dialog.tsx';
import { Field } from '../parts/Field.tsx';
import { FailureNotice, Notice } from '../parts/Notice.tsx';
import { Select } from '../parts/Select.tsx';
import { RemovedList } from '../removing/RemovedList.tsx';
import { ForecastsHeld } from './ForecastsHeld.tsx';
import style from './SettingsDialog.module.css';

const THEMES = [
  { value: 'system', label: 'As the system' },
  { value: 'light', label: 'Light' },
  { value: 'dark', label: 'Dark' },
] as const;

export function SettingsDialog({ onClose }: { onClose: () => void }): ReactElement {
  const preferences = useAnswer('GET /api/preferences', {});
  const close = () => {
    // Escape closes while the name still has the focus: it counts when it is left, so it is left first.
    if (document.activeElement instanceof HTMLElement) document.activeElement.blur();
    onClose();
  };
  return (
    <Dialog title="Settings" onClose={close}>
      {preferences.error && <FailureNotice error={preferences.error} />}
      {preferences.data && <PreferencesForm saved={preferences.data} />}
      <section className={style['about']}>
        <h3>How evidence of sex is weighed</h3>
        <p>
          Each number of the model is shown with what it rests on, and can be changed with a reason that stays on record.{' '}
          <Link to="/examination/numbers" onClick={close}>
            To the numbers
          </Link>
        </p>
      </section>
      <RemovedList />
      <ForecastsHeld />
      <AboutArchive />
    </Dialog>
  );
}

/** Choices count at once; the name when the keeper leaves its field. */
function PreferencesForm({ saved }: { saved: Preferences }): ReactElement {
  const change = useChange('PUT /api/preferences');
  const [form, setForm] = useState(saved);
  const put = (part: Partial<Preferences>): Preferences => {
    const next = { ...form, ...part };
    setForm(next);
    return next;
  };
  const save = (next: Preferences) => change.mutate({ body: { ...next, observer: next.observer.trim() } });
  return (
    <form
      className={style['form']}
      onSubmit={(event) => {
        event.preventDefault();
        save(form);
      }}
    >
      <Select
        label="Theme"
        hint="The Bench is dark in each of them, so that photos stand out."
        value={form.theme}
        options={THEMES}
        onChange={(theme) => save(put({ theme }))}
      />
      <Field label="Your name" hint="Stands on new readings and determinations as the observer.">
        {(control) => (
          <input
            {...control}
            value={form.observer}
            maxLength={200}
            autoComplete="off"
            onChange={(event) => put({ observer: event.target.value })}
            onBlur={() => save(form)}
          />
        )}
      </Field>
      <CheckField checked={form.inches} onChange={(inches) => save(put({ inches }))}>
        Show inches beside millimeters
      </CheckField>
      {change.error && <FailureNotice error={change.error} action={<Button onClick={() => save(form)}>Try again</Button>} />}
    </form>
  );
}

function AboutArchive(): ReactElement {
  const { data: about } = useAnswer('GET /api/about', {});
  return (
    <section className={style['about']}>
      <h3>This archive</h3>
      {about && (
        <dl>
          <dt>Folder</dt>
          <dd className={style['folder']}>{about.archiveFolder}</dd>
          <dt>Holds</dt>
          <dd className="figures">
            {counted(about.specimens, 'specimen')}, {counted(about.photos, 'photo')}
          </dd>
          <dt>Exuviary</dt>
          <dd className="figures">{about.version}</dd>
        </dl>
      )}
      {about && about.unreadableRecords.length > 0 && <Unreadable records={about.unreadableRecords} />}
    </section>
  );
}

/** What a list leaves out must not go unnoticed. */
function Unreadable({ records }: { records: readonly string[] }): ReactElement {
  return (
    <Notice
      tone="warning"
      title={`${counted(records.length, 'record')} cannot be read and ${records.length === 1 ? 'is' : 'are'} left out everywhere.`}
    >
      <p>Close Exuviary, copy the whole folder as it is, then go back to a backup.</p>
      <ul>
        {records.map((record) => (
          <li key={record}>{record}</li>
        ))}
      </ul>
    </Notice>
  );
}
