import { type ReactElement, useEffect, useRef } from 'react';
import { Link } from 'wouter';
import type { Determination } from '../../../../domain/sexing/determination.ts';
import { counted } from '../../../../words/counts.ts';
import { assessmentInWords } from '../../../../words/evidence.ts';
import { Button } from '../../../parts/Button.tsx';
import { DayText } from '../../../parts/DayText.tsx';
import { SexMark } from '../../../parts/SexMark.tsx';
import { showEntry } from './HistoryEntry.tsx';
import style from './ReadAlready.module.css';

interface Props {
  /** The last determination from this skin that stands. */
  latest: Determination;
  /** How many others from this skin stand. */
  earlier: number;
  /** It was signed a moment ago, on this page: the page goes up to it. */
  justSigned: boolean;
  onReadAgain: () => void;
  onCorrect: () => void;
}

/** Of a skin that was read: what was signed, and the ways on from there. */
export function ReadAlready({ latest, earlier, justSigned, onReadAgain, onCorrect }: Props): ReactElement {
  const title = useRef<HTMLHeadingElement>(null);
  useEffect(() => {
    if (!justSigned) return;
    window.scrollTo(0, 0);
    title.current?.focus({ preventScroll: true });
  }, [justSigned]);
  const { id, sex, level, reader, readOn, checklist, assessment } = latest;
  return (
    <section aria-labelledby="read-already" className={style['panel']}>
      <h2 id="read-already" ref={title} tabIndex={-1} className={style['title']}>
        This skin has been read
      </h2>
      <p className={style['sex']}>
        <SexMark sign={{ sex, level, conflict: false }} />
      </p>
      <p>
        Signed by {reader}, <DayText day={readOn} />
        {checklist.grade !== null && `, grade ${checklist.grade}`}. {assessmentInWords(assessment)}
      </p>
      {earlier > 0 && (
        <p className={style['soft']}>
          {counted(earlier, 'earlier reading')} of this skin {earlier === 1 ? 'stands' : 'stand'} on record too, below.
        </p>
      )}
      <div className={style['ways']}>
        <Button kind="primary" icon="examine" onClick={onReadAgain}>
          Read this skin once more
        </Button>
        <Button onClick={() => showEntry(id)}>All that was signed</Button>
        <Button onClick={onCorrect}>Correct it</Button>
      </div>
      <p className={style['soft']}>
        Another reading stands beside this one and changes nothing of it. A correction takes its place; the one that was corrected stays to
        be seen. <Link to="/examination">Another skin</Link>
      </p>
    </section>
  );
}
