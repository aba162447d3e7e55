import type { ReactElement } from 'react';
import type { Checklist } from '../../../../domain/sexing/determination.ts';
import { answersInWords } from '../../../../words/checklist.ts';
import style from './SignedAnswers.module.css';

/** Every answer that a determination was signed with, to be read again and not changed. */
export function SignedAnswers({ checklist }: { checklist: Checklist }): ReactElement {
  return (
    <details className={style['answers']}>
      <summary className={style['summary']}>All answers, as signed</summary>
      <dl className={style['list']}>
        {answersInWords(checklist).map(({ question, answer }) => (
          <div key={question} className={style['row']}>
            <dt>{question}</dt>
            <dd>{answer}</dd>
          </div>
        ))}
      </dl>
    </details>
  );
}
