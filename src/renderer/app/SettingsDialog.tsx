import { type ReactElement, useState } from 'react';
import type { Preferences } from '../../domain/preferences.ts';
import { useAnswer, useChange } from '../client/queries.ts';
import { Button } from '../parts/Button.tsx';
import { CheckField } from '../parts/CheckField.tsx';
import { Dialog } from '../parts/Dialog.tsx';
import { Field } from '../parts/Field.tsx';
import { FailureNotice } from '../parts/Notice.tsx';
import { Select } from '../parts/Select.tsx';
import { counted } from '../words/counts.ts';
import style from './SettingsDialog.module.css';

const THEMES = [
  { value: 'system', label: 'As the system' },
  { value: 'light', label: 'Light' },
  { value: 'dark', label: 'Dark' },
] as const;

export function SettingsDialog({ onClose }: { onClose: () => void }): ReactElement {
  const preferences = useAnswer('GET /api/preferences', {});
  return (
    <Dialog title="Settings" onClose={onClose}>
      {preferences.error && <FailureNotice error={preferences.error} />}
      {preferences.data && <PreferencesForm saved={preferences.data} />}
      <AboutArchive />
    </Dialog>
  );
}

/** Choices count at once; the name when the keeper leaves its field. */
function PreferencesForm({ saved }: { saved: Preferences }): ReactElement {
  const change = useChange('PUT /api/preferences');
  const [observer, setObserver] = useState(saved.observer);
  const save = (part: Partial<Preferences>) => change.mutate({ body: { ...saved, ...part } });
  const saveObserver = () => {
    if (observer.trim() !== saved.observer) save({ observer: observer.trim() });
  };
  return (
    <form
      className={style['form']}
      onSubmit={(event) => {
        event.preventDefault();
        saveObserver();
      }}
    >
      <Select label="Theme" value={saved.theme} options={THEMES} onChange={(theme) => save({ theme })} />
      <Field label="Your name" hint="Stands on new readings and determinations as the observer.">
        {(control) => (
          <input
            {...control}
            value={observer}
            maxLength={200}
            autoComplete="off"
            onChange={(event) => setObserver(event.target.value)}
            onBlur={saveObserver}
          />
        )}
      </Field>
      <CheckField checked={saved.inches} onChange={(inches) => save({ inches })}>
        Show inches beside millimeters
      </CheckField>
      {change.error && <FailureNotice error={change.error} action={<Button onClick={() => saveObserver()}>Try again</Button>} />}
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
    </section>
  );
}
