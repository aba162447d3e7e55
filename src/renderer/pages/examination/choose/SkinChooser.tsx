import { type ReactElement, useState } from 'react';
import { Link } from 'wouter';
import type { AnswerOf } from '../../../../api/contract/contract.ts';
import { counted } from '../../../../words/counts.ts';
import { useAnswer } from '../../../client/queries.ts';
import { Button } from '../../../parts/Button.tsx';
import { ButtonLink } from '../../../parts/ButtonLink.tsx';
import { EmptyState } from '../../../parts/EmptyState.tsx';
import { Field } from '../../../parts/Field.tsx';
import { FailureNotice } from '../../../parts/Notice.tsx';
import { PageHead } from '../../../parts/PageHead.tsx';
import style from './SkinChooser.module.css';
import { SkinItem } from './SkinItem.tsx';

const BESIDE = [
  { to: '/examination/plates', name: 'Guide plates' },
  { to: '/examination/genera', name: 'Profiles of genera' },
  { to: '/examination/outcomes', name: 'Outcome log' },
  { to: '/examination/numbers', name: 'Numbers of the evidence model' },
] as const;

type Skins = AnswerOf<'GET /api/exuviae'>;

/** Which skin? Those that wait for a reading, latest molt first; on demand all that were recovered. */
export function SkinChooser(): ReactElement {
  const answer = useAnswer('GET /api/exuviae', {});
  const [readToo, setReadToo] = useState(false);
  const [sought, setSought] = useState('');
  const skins = answer.data;
  const waiting = skins?.filter((skin) => skin.standingDeterminations === 0 || skin.begun) ?? [];
  const shown = (readToo ? (skins ?? []) : waiting).filter((skin) => isOf(skin, sought));
  return (
    <>
      <PageHead
        title="Examination"
        below={skins && skins.length > 0 ? waitingInWords(waiting, skins) : 'Female or male? A skin can tell.'}
        actions={
          skins && skins.length > waiting.length ? (
            <Button aria-pressed={readToo} onClick={() => setReadToo(!readToo)}>
              {readToo ? 'Only those that wait' : 'Show skins already read'}
            </Button>
          ) : undefined
        }
      />
      <nav aria-label="Beside the readings" className={style['beside']}>
        {BESIDE.map(({ to, name }) => (
          <Link key={to} to={to}>
            {name}
          </Link>
        ))}
      </nav>
      {answer.error && <FailureNotice error={answer.error} action={<Button onClick={() => void answer.refetch()}>Ask again</Button>} />}
      {skins && skins.length > 0 && (
        <div className={style['find']}>
          <Field label="Find an animal">
            {(control) => (
              <input
                {...control}
                type="search"
                value={sought}
                placeholder="Name, code or species"
                onChange={(event) => setSought(event.target.value)}
              />
            )}
          </Field>
        </div>
      )}
      {skins?.length === 0 && (
        <EmptyState
          title="No skins yet"
          action={
            <ButtonLink to="/cabinet" kind="primary">
              To the Cabinet
            </ButtonLink>
          }
        >
          A skin is recorded with the molt that left it, on the page of its animal. Once it is recovered, it waits here to be read.
        </EmptyState>
      )}
      {skins && skins.length > 0 && shown.length === 0 && sought !== '' && (
        <EmptyState title="Nobody fits">
          No skin {readToo ? '' : 'that waits '}belongs to an animal with “{sought}” in its name, code or species.
        </EmptyState>
      )}
      {skins && skins.length > 0 && shown.length === 0 && sought === '' && (
        <EmptyState title="No skin waits">
          Every recovered skin has a determination. A second reading can still be added to any of them.
        </EmptyState>
      )}
      {shown.length > 0 && (
        <ul className={style['skins']}>
          {shown.map((skin) => (
            <SkinItem key={skin.exuvia.id} skin={skin} />
          ))}
        </ul>
      )}
    </>
  );
}

function isOf({ specimen: { code, name, taxon } }: Skins[number], sought: string): boolean {
  return [code, name ?? '', taxon].some((words) => words.toLowerCase().includes(sought.trim().toLowerCase()));
}

function waitingInWords(waiting: Skins, all: Skins): string {
  if (waiting.length === 0) return `${counted(all.length, 'skin')} on record, all of them read.`;
  return `${counted(waiting.length, 'skin waits', 'skins wait')} to be read, of ${all.length} on record.`;
}
