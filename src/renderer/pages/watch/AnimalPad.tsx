import { type ReactElement, useEffect, useId, useRef, useState } from 'react';
import { Link } from 'wouter';
import type { WatchBoard, WatchedAnimal } from '../../../api/contract/watch.ts';
import type { ObservationDraft, ObservationKind } from '../../../domain/care/observation.ts';
import { momentInWords } from '../../../words/dates.ts';
import { matureMaleInWords } from '../../../words/forecast.ts';
import { SEEN_LABELS } from '../../../words/observations.ts';
import { useAnswer, useChange } from '../../client/queries.ts';
import { Button } from '../../parts/Button.tsx';
import { IconButton } from '../../parts/IconButton.tsx';
import { FailureNotice, Notice } from '../../parts/Notice.tsx';
import { TextField } from '../../parts/TextField.tsx';
import { useToast } from '../../parts/Toast.tsx';
import { AlsoToDo } from './AlsoToDo.tsx';
import style from './AnimalPad.module.css';
import { fangsUnseenInWords, holdInWords, spanInWordsOf } from './holdWords.ts';
import { LatestSeen } from './LatestSeen.tsx';
import { LimbForm } from './LimbForm.tsx';
import { MoltClock, MoltPace } from './MoltClock.tsx';
import { ObservationKeys } from './ObservationKeys.tsx';
import { PremoltFacts } from './PremoltFacts.tsx';
import { SpanForm } from './SpanForm.tsx';
import { StagePhotos } from './StagePhotos.tsx';
import { WhenField } from './WhenField.tsx';
import { momentHere, momentTyped, type TypedMoment } from './wallClock.ts';

interface Props {
  animal: WatchedAnimal;
  board: WatchBoard;
  /** When the board came, on this window's clock. */
  askedAtMs: number;
  onClose: () => void;
}

/** One animal under the thumb: what is known, and a key for everything that can be seen of it. */
export function AnimalPad({ animal, board, askedAtMs, onClose }: Props): ReactElement {
  const { specimen, timer, suspicion, hold, fangsUnseenSince, matureMaleBy } = animal;
  // Nobody touches an animal that molts or is still soft.
  const mayBeMeasured = !timer && !hold?.missing.includes('fangs');
  const standing = standingInWords(animal);
  const [when, setWhen] = useState<TypedMoment | null>(null);
  const [whenRefused, setWhenRefused] = useState(false);
  const [words, setWords] = useState<string | null>(null);
  const [open, setOpen] = useState<'span' | 'limb' | 'photos' | null>(null);
  const { data: preferences } = useAnswer('GET /api/preferences', {});
  const note = useChange('POST /api/specimens/{specimenId}/observations');
  const takeBack = useChange('DELETE /api/observations/{observationId}');
  const toast = useToast();
  const headingId = useId();
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => heading.current?.focus(), []);
  // The archive's clock, as far as this window's has run on since: they differ where a shell was started with a time of its own.
  const now = () => new Date(Date.parse(board.at) + Date.now() - askedAtMs).toISOString();

  const put = (kind: ObservationKind, { span = null, limb = '' }: { span?: ObservationDraft['span']; limb?: string } = {}) => {
    const moment = when === null ? momentHere(now()) : momentTyped(when);
    setWhenRefused(moment === null);
    if (moment === null) {
      setOpen(null);
      return;
    }
    const body: ObservationDraft = {
      kind,
      moment,
      observer: preferences?.observer ?? '',
      note: [limb, words?.trim() ?? ''].filter((part) => part !== '').join('; '),
      source: { kind: 'hand' },
      span,
    };
    note.mutate(
      { path: { specimenId: specimen.id }, body },
      {
        onSuccess: ({ id }) => {
          setWords((before) => (before === null ? null : ''));
          setOpen(null);
          const undo = () =>
            takeBack.mutate(
              { path: { observationId: id } },
              {
                onSuccess: () => {
                  note.reset();
                  toast({ message: `Taken back: ${SEEN_LABELS[kind]}.` });
                },
              },
            );
          const at = when === null ? '' : `, seen ${momentInWords(moment)}`;
          toast({ message: `Noted of ${specimen.code}: ${SEEN_LABELS[kind]}${at}.`, action: { label: 'Undo', run: undo } });
        },
        // The Undo that still stood there is of another note: pressed after a refusal it would take back what is right.
        onError: () => toast({ message: `Not noted of ${specimen.code}: ${SEEN_LABELS[kind]}.` }),
      },
    );
  };

  return (
    <section className={style['pad']} aria-labelledby={headingId}>
      <header className={style['head']}>
        <h2 id={headingId} ref={heading} tabIndex={-1}>
          <Link to={`/specimens/${specimen.id}`}>{specimen.code}</Link> {specimen.name}
        </h2>
        <IconButton icon="close" label={`Close ${specimen.code}`} onClick={onClose} />
      </header>
      <WhenField
        value={when}
        refused={whenRefused}
        latest={now()}
        onChange={(typed) => {
          setWhen(typed);
          setWhenRefused(false);
        }}
      />
      {words === null ? (
        <Button kind="quiet" className={style['write']} onClick={() => setWords('')}>
          Write something with it
        </Button>
      ) : (
        <TextField
          label="Note"
          hint="Goes with the next key: which part, which prey."
          value={words}
          onChange={setWords}
          maxLength={2_000}
        />
      )}
      <ObservationKeys busy={note.isPending} onSeen={(kind) => (kind === 'limb-lost' ? setOpen('limb') : put(kind))} />
      <div className={style['more']}>
        {mayBeMeasured && <Button onClick={() => setOpen('span')}>Leg span measured …</Button>}
        <Button icon="photo" onClick={() => setOpen('photos')}>
          Times from photos …
        </Button>
      </div>
      {timer && <MoltPace timer={timer} specimen={specimen} today={board.today} askedAtMs={askedAtMs} />}
      {!timer && hold !== null && hold.span === null && (
        <p>
          {spanInWordsOf(hold)}
          {!mayBeMeasured && ' It can be measured once its fangs are black.'}
        </p>
      )}
      {fangsUnseenSince && <p>{fangsUnseenInWords(fangsUnseenSince)}</p>}
      <AlsoToDo specimen={specimen} items={board.items} />
      {matureMaleBy && <p>{matureMaleInWords(matureMaleBy)} The board and the calendar file name no days for it.</p>}
      {!timer && <PremoltFacts suspicion={suspicion} isMatureMale={matureMaleBy !== null} />}
      <LatestSeen animal={animal} />
      {(timer || standing || whenRefused || note.error || takeBack.error) && (
        <div className={style['dock']}>
          {whenRefused && (
            <Notice tone="refusal" title="Not noted: what stands under “Seen earlier” is no time.">
              Give a day and a time such as 9:05 or 21:05, or go back to now.
            </Notice>
          )}
          {note.error && <FailureNotice error={note.error} />}
          {takeBack.error && <FailureNotice error={takeBack.error} />}
          {timer ? <MoltClock timer={timer} askedAtMs={askedAtMs} /> : standing && <p className={style['standing']}>{standing}</p>}
        </div>
      )}
      {open === 'span' && (
        <SpanForm
          busy={note.isPending}
          known={animal.span}
          onTaken={(span) => put('span-measured', { span })}
          onClose={() => setOpen(null)}
        />
      )}
      {open === 'limb' && <LimbForm busy={note.isPending} onChosen={(limb) => put('limb-lost', { limb })} onClose={() => setOpen(null)} />}
      {open === 'photos' && <StagePhotos specimen={specimen} observer={preferences?.observer ?? ''} onClose={() => setOpen(null)} />}
    </section>
  );
}

/** What a keeper must know before opening the enclosure, of an animal that does not molt. */
function standingInWords({ hold, suspicion }: Pick<WatchedAnimal, 'hold' | 'suspicion'>): string | null {
  if (hold) return holdInWords(hold);
  const isSuspected = suspicion.level === 'suspected' || suspicion.level === 'strongly-suspected';
  return isSuspected ? 'Premolt is suspected: leave it alone. No prey, a full water dish, its usual warmth and moisture.' : null;
}
