import { type ReactElement, useState } from 'react';
import { useAnswer, useChange } from '../../client/queries.ts';
import { CheckField } from '../../parts/CheckField.tsx';
import { FailureNotice, Notice } from '../../parts/Notice.tsx';
import style from './NoticeChoice.module.css';
import { canNotify } from './useMoltNotices.ts';

/** Whether a long molt is told on the desktop: asked for here, granted by the system. */
export function NoticeChoice(): ReactElement | null {
  const { data: preferences } = useAnswer('GET /api/preferences', {});
  const change = useChange('PUT /api/preferences');
  const [denied, setDenied] = useState(false);
  if (!preferences || !canNotify()) return null;
  const choose = async (wanted: boolean) => {
    const granted = !wanted || (await Notification.requestPermission()) === 'granted';
    setDenied(!granted);
    if (granted) change.mutate({ body: { ...preferences, moltNotices: wanted } });
  };
  const on = preferences.moltNotices && Notification.permission === 'granted';
  return (
    <section className={style['choice']} aria-label="Notices">
      <CheckField checked={on} onChange={(wanted) => void choose(wanted)}>
        Tell me on this desktop when a molt takes long, without a sound, while Exuviary is open
      </CheckField>
      {denied && <Notice tone="warning">The system does not let Exuviary show notices. Allow them in its settings, then try again.</Notice>}
      {change.error && <FailureNotice error={change.error} />}
    </section>
  );
}
