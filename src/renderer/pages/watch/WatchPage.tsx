import { type ReactElement, useState } from 'react';
import { useLocation } from 'wouter';
import { addressOf } from '../../client/ask.ts';
import { useAnswer } from '../../client/queries.ts';
import { Button, buttonClass } from '../../parts/Button.tsx';
import { ButtonLink } from '../../parts/ButtonLink.tsx';
import { EmptyState } from '../../parts/EmptyState.tsx';
import { FailureNotice } from '../../parts/Notice.tsx';
import { PageHead } from '../../parts/PageHead.tsx';
import { AnimalPad } from './AnimalPad.tsx';
import { Board } from './Board.tsx';
import { EverybodyList } from './EverybodyList.tsx';
import { NoticeChoice } from './NoticeChoice.tsx';
import { PairingTables } from './PairingTables.tsx';
import { WaitsDialog } from './WaitsDialog.tsx';
import style from './WatchPage.module.css';

const ASKED_EVERY_MS = 60_000;

/** Who needs what today, and what was seen of them: for somebody with one hand free and that one wet. */
export function WatchPage({ specimenId }: { specimenId: string | null }): ReactElement {
  const board = useAnswer('GET /api/watch', {}, { everyMs: ASKED_EVERY_MS });
  const [waitsOpen, setWaitsOpen] = useState(false);
  const [, navigate] = useLocation();
  const choose = (id: string | null) => navigate(id === null ? '/watch' : `/watch/${id}`);
  const animal = board.data?.animals.find(({ specimen }) => specimen.id === specimenId) ?? null;
  return (
    <>
      <PageHead
        title="Watch"
        below="Who needs what today. What is said here about times and signs is no diagnosis."
        actions={
          <>
            <a className={buttonClass('plain')} href={addressOf('GET /api/watch/calendar.ics', {})} download="exuviary-watch.ics">
              Calendar file
            </a>
            <Button onClick={() => setWaitsOpen(true)}>Waits after a molt</Button>
          </>
        }
      />
      {board.error && <FailureNotice error={board.error} action={<Button onClick={() => board.refetch()}>Ask again</Button>} />}
      {board.isPending && <p className={style['waiting']}>Looking round …</p>}
      {board.data && board.data.animals.length === 0 && (
        <EmptyState title="Nobody to watch" action={<ButtonLink to="/cabinet">To the Cabinet</ButtonLink>}>
          Animals that live here stand on this board when they need something: while they molt, harden, wait for food, or have left a skin.
        </EmptyState>
      )}
      {board.data && board.data.animals.length > 0 && (
        <div className={style['columns']}>
          <div className={style['main']}>
            <Board board={board.data} chosen={specimenId} onChoose={choose} />
            <EverybodyList animals={board.data.animals} chosen={specimenId} onChoose={choose} />
          </div>
          {animal ? (
            <AnimalPad
              key={animal.specimen.id}
              animal={animal}
              board={board.data}
              askedAtMs={board.dataUpdatedAt}
              onClose={() => choose(null)}
            />
          ) : (
            <p className={style['hint']}>Choose an animal to note what you see of it.</p>
          )}
        </div>
      )}
      {board.data && <PairingTables animals={board.data.animals} />}
      <NoticeChoice />
      {waitsOpen && <WaitsDialog onClose={() => setWaitsOpen(false)} />}
    </>
  );
}
