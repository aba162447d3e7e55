import { type ReactElement, useState } from 'react';
import { Link } from 'wouter';
import { counted } from '../../../../words/counts.ts';
import { flagWords } from '../../../../words/genus.ts';
import { useAnswer } from '../../../client/queries.ts';
import { Button } from '../../../parts/Button.tsx';
import { Field } from '../../../parts/Field.tsx';
import { FailureNotice } from '../../../parts/Notice.tsx';
import { PageHead } from '../../../parts/PageHead.tsx';
import style from './GeneraPage.module.css';
import { GenusEdits } from './GenusEdits.tsx';
import { GenusPanel } from './GenusPanel.tsx';

/** All genera that have a profile. */
export function GeneraPage(): ReactElement {
  const answer = useAnswer('GET /api/genera', {});
  const [sought, setSought] = useState('');
  const profiles = answer.data ?? [];
  const shown = profiles.filter(({ genus }) => genus.toLowerCase().includes(sought.trim().toLowerCase()));
  return (
    <>
      <PageHead
        title="Profiles of genera"
        above={<Link to="/examination">Examination</Link>}
        below="What a female’s receptacles look like, whether males carry hooks, and what misleads. Each cell says what it rests on; much is from memory."
      />
      {answer.error && <FailureNotice error={answer.error} action={<Button onClick={() => void answer.refetch()}>Ask again</Button>} />}
      {answer.data && (
        <>
          <div className={style['find']}>
            <Field label="Find a genus" hint={counted(shown.length, 'profile')}>
              {(control) => <input {...control} type="search" value={sought} onChange={(event) => setSought(event.target.value)} />}
            </Field>
          </div>
          <ul className={style['genera']}>
            {shown.map((profile) => (
              <li key={profile.genus}>
                <details>
                  <summary className={style['summary']}>
                    <em>{profile.genus}</em>
                    <span className={style['soft']}>{flagWords(profile.flags).join('; ')}</span>
                  </summary>
                  <GenusPanel profile={profile} />
                  {profile.version > 0 && <GenusEdits genus={profile.genus} />}
                </details>
              </li>
            ))}
          </ul>
        </>
      )}
    </>
  );
}
