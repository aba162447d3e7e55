import { type ReactElement, useEffect, useState } from 'react';
import { latestEndOf } from '../../../domain/care/moltRun.ts';
import { MOLT_PACES, MoltingSize, type MoltTimer, stateAfter } from '../../../domain/care/moltTimer.ts';
import { type CalendarDay, dayOf } from '../../../domain/dates.ts';
import { durationInWords, momentInWords } from '../../../words/dates.ts';
import { capitalized } from '../../../words/labels.ts';
import { SEEN_LABELS } from '../../../words/observations.ts';
import style from './MoltClock.module.css';
import { paceInWords, shortestLimitsInWords } from './needWords.ts';
import { RecordMolt } from './RecordMolt.tsx';
import { offsetHere } from './wallClock.ts';

const STATES: Readonly<Record<MoltTimer['state'], string>> = {
  usual: 'Within what is usual',
  'look-closer': 'Longer than usual: look closer, touch nothing',
  concern: 'Too long: ask somebody who knows, now',
  'clock-set-back': 'The clock of this machine stands before the start',
};

const SIZES: Readonly<Record<MoltingSize, string>> = {
  smallest: 'Smallest, under 1 in of span',
  juvenile: 'Juveniles',
  large: 'Large, from 4 in',
};

const REDRAWN_EVERY_MS = 15_000;

/** How long a molt has taken, against what is usual for its size, with what to do and what to leave alone. Has no key: it stays in sight below them. */
export function MoltClock({ timer, askedAtMs }: { timer: MoltTimer; askedAtMs: number }): ReactElement {
  const { elapsed, state } = useProgress(timer, askedAtMs);
  const share = (minutes: number) => Math.min(1, minutes / (timer.concernAfterMinutes * 1.15));
  return (
    <div className={`${style['clock']} ${style[state]}`}>
      <p className={style['time']}>
        <span role="timer" className={style['passed']}>
          {elapsed === null ? '–' : `${timer.startSeen ? '' : 'at least '}${durationInWords(elapsed)}`}
        </span>
        <span>since {momentInWords(timer.startedAt, offsetHere(timer.startedAt.at))}</span>
      </p>
      <svg className={style['scale']} viewBox="0 0 100 8" preserveAspectRatio="none" aria-hidden="true">
        <rect x="0" y="3" width="100" height="2" className={style['track']} />
        {elapsed !== null && <rect x="0" y="3" width={100 * share(elapsed)} height="2" className={style['run']} />}
        {[timer.lookCloserAfterMinutes, timer.concernAfterMinutes].map((minutes) => (
          <rect key={minutes} x={100 * share(minutes) - 0.2} y="0" width="0.4" height="8" className={style['limit']} />
        ))}
      </svg>
      <p role="status" className={style['state']}>
        {state === 'usual' && !timer.sizeKnown ? 'Not long yet, whatever its size' : STATES[state]}
      </p>
      {!timer.sizeKnown && <p>{shortestLimitsInWords()}</p>}
      <p className={style['leave']}>
        Remove nothing, touch nothing, dim the light. Live prey still inside: take it only if nothing touches or shakes the animal.
      </p>
      {state === 'concern' && (
        <p className={style['ask']}>
          The skin may be hardening on the animal. Do not pull. Keep water and moisture as they are. Ask an experienced keeper, and defer to
          a veterinarian with exotic-animal experience.
        </p>
      )}
      {state === 'clock-set-back' && <p>The start stays as it was noted. Set the clock of this machine, and the time runs on.</p>}
    </div>
  );
}

interface Props {
  timer: MoltTimer;
  specimen: { readonly id: string; readonly code: string };
  /** The keeper's calendar day. */
  today: CalendarDay;
  askedAtMs: number;
}

/** What the clock goes by, and a way to end it where nobody saw the end. */
export function MoltPace({ timer, specimen, today, askedAtMs }: Props): ReactElement {
  const { state } = useProgress(timer, askedAtMs);
  return (
    <section className={style['pace']} aria-label="How long molts take">
      {timer.sizeKnown ? (
        <p>
          Usual for its size: {paceInWords(timer.size)}. Look closer after {durationInWords(timer.lookCloserAfterMinutes)}, concern after{' '}
          {durationInWords(timer.concernAfterMinutes)}.
        </p>
      ) : (
        <UnknownSize />
      )}
      {state === 'concern' && (
        <div className={style['over']}>
          <p>Is it free already? Note “{capitalized(SEEN_LABELS['free-of-skin'])}” above, with the time if that was earlier.</p>
          <RecordMolt
            specimenId={specimen.id}
            code={specimen.code}
            words="Nobody saw when: record its days"
            from={dayOf(timer.startedAt)}
            to={latestEndOf(timer, today)}
          />
        </div>
      )}
    </section>
  );
}

/** Without a size every pace is shown; the clock goes by the shortest, and a feeding hold by the longest wait. */
function UnknownSize(): ReactElement {
  return (
    <>
      <p>Its size is not known, so nobody can say which of these is usual for it. The clock goes by the first.</p>
      <ul>
        {MoltingSize.options.map((size) => (
          <li key={size}>
            {SIZES[size]}: {paceInWords(size)}; look closer after {durationInWords(MOLT_PACES[size].lookCloserAfterMinutes)}, concern after{' '}
            {durationInWords(MOLT_PACES[size].concernAfterMinutes)}
          </li>
        ))}
      </ul>
    </>
  );
}

function useProgress(timer: MoltTimer, askedAtMs: number): { elapsed: number | null; state: MoltTimer['state'] } {
  const sinceMinutes = useMinutesSince(askedAtMs);
  const elapsed = timer.elapsedMinutes === null ? null : timer.elapsedMinutes + sinceMinutes;
  return { elapsed, state: elapsed === null ? 'clock-set-back' : stateAfter(elapsed, timer) };
}

function useMinutesSince(ms: number): number {
  const [now, setNow] = useState(() => Date.now());
  useEffect(() => {
    const timer = setInterval(() => setNow(Date.now()), REDRAWN_EVERY_MS);
    return () => clearInterval(timer);
  }, []);
  return Math.max(0, now - ms) / 60_000;
}
