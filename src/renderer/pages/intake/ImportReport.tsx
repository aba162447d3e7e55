import type { ReactElement } from 'react';
import { Link } from 'wouter';
import { Refusal } from '../../../domain/failure.ts';
import type { FileOutcome, TaskSnapshot } from '../../../domain/intake/task.ts';
import { remainingInWords } from '../../../words/dates.ts';
import { wordsFor } from '../../../words/failures.ts';
import { Button } from '../../parts/Button.tsx';
import { FailureNotice, Notice } from '../../parts/Notice.tsx';
import { ProgressBar } from '../../parts/ProgressBar.tsx';
import style from './ImportReport.module.css';
import { useIntakeRun } from './IntakeProvider.tsx';
import { countOutcomes, outcomesInWords, withKeys } from './outcomes.ts';

/** What is coming in or has just come in: progress and a stop button, then every file's outcome in words. */
export function ImportReport(): ReactElement | null {
  const run = useIntakeRun();
  if (run.error !== null) {
    return <FailureNotice error={run.error} action={<Button onClick={run.putAside}>Understood</Button>} />;
  }
  if (run.sending) {
    return (
      <Running
        title="Copying to the archive"
        done={run.sending.sent}
        total={run.sending.total}
        detail="Nothing is imported yet."
        onStop={run.stop}
      />
    );
  }
  const { task } = run;
  if (!task) return run.busy ? <Running title="Beginning" done={0} total={0} detail="" onStop={run.stop} /> : null;
  if (task.state === 'running') {
    const remaining = task.remainingSeconds === null ? null : `${remainingInWords(task.remainingSeconds)} left`;
    const detail = [task.current, remaining].filter((part) => part !== null).join(' · ');
    if (run.silent) {
      return <FailureNotice error={new Refusal({ code: 'unreachable' })} action={<Button onClick={run.putAside}>Understood</Button>} />;
    }
    return <Running title="Importing" done={task.done} total={task.total} detail={detail} onStop={run.stop} />;
  }
  return <Ended task={task} onClose={run.putAside} />;
}

function Running(props: { title: string; done: number; total: number; detail: string; onStop: () => void }): ReactElement {
  return (
    <section className={style['report']} aria-label={props.title}>
      <div className={style['line']}>
        <h2>{props.title}</h2>
        <span className="figures" role="status">
          {props.total > 0 && `${props.done} of ${props.total}`}
        </span>
        <Button onClick={props.onStop}>Stop</Button>
      </div>
      <ProgressBar label={props.title} done={props.done} total={props.total} />
      <p className={style['detail']}>{props.detail || ' '}</p>
    </section>
  );
}

function Ended({ task, onClose }: { task: TaskSnapshot; onClose: () => void }): ReactElement {
  const notable = task.files.filter((file) => file.outcome.kind === 'already-here' || file.outcome.kind === 'refused');
  return (
    <section className={style['report']} aria-label="What came in">
      <div className={style['line']}>
        <h2 role="status">
          {task.state === 'stopped' && 'Stopped: '}
          {outcomesInWords(countOutcomes(task.files))}
        </h2>
        <Button kind="quiet" onClick={onClose}>
          Close
        </Button>
      </div>
      {task.failure && (
        <Notice tone="refusal" title={wordsFor(task.failure).happened}>
          {wordsFor(task.failure).advice}
        </Notice>
      )}
      {notable.length > 0 && <OutcomeList files={notable} />}
      {task.files.length > notable.length && (
        <details>
          <summary>Every file</summary>
          <OutcomeList files={task.files} />
        </details>
      )}
    </section>
  );
}

function OutcomeList({ files }: { files: TaskSnapshot['files'] }): ReactElement {
  return (
    <ul className={style['outcomes']}>
      {withKeys(files).map(({ key, file }) => (
        <li key={key}>
          <span className={style['name']}>{file.name}</span>
          <span>
            <OutcomeWords outcome={file.outcome} />
          </span>
        </li>
      ))}
    </ul>
  );
}

function OutcomeWords({ outcome }: { outcome: FileOutcome }): ReactElement {
  switch (outcome.kind) {
    case 'added':
      return (
        <>
          Added. <Link to={`/bench/${outcome.photoId}`}>See it on the Bench</Link>
        </>
      );
    case 'already-here':
      return (
        <>
          Already here, byte for byte. <Link to={`/bench/${outcome.photoId}`}>See the one on record</Link>
        </>
      );
    case 'refused':
      return (
        <span className={style['refused']}>
          {wordsFor(outcome.failure).happened} {wordsFor(outcome.failure).advice}
        </span>
      );
    case 'waiting':
      return <>Not reached.</>;
  }
}
