import type { ReactElement, ReactNode } from 'react';
import { wordsForError } from '../../words/failures.ts';
import { Icon } from './Icon.tsx';
import style from './Notice.module.css';

export type NoticeTone = 'note' | 'warning' | 'refusal';

/** Something to read beside the work: a note, a warning, or why something was refused (announced at once). */
export function Notice({ tone = 'note', title, children }: { tone?: NoticeTone; title?: ReactNode; children?: ReactNode }): ReactElement {
  return (
    <div className={[style['notice'], style[tone]].filter(Boolean).join(' ')} role={tone === 'refusal' ? 'alert' : undefined}>
      {tone !== 'note' && <Icon name="warning" />}
      <div className={style['words']}>
        {title && <strong>{title}</strong>}
        {children && <div>{children}</div>}
      </div>
    </div>
  );
}

/** What happened and what can be done, for whatever a question or a change threw. */
export function FailureNotice({ error, action }: { error: unknown; action?: ReactNode }): ReactElement {
  const words = wordsForError(error);
  return (
    <Notice tone="refusal" title={words.happened}>
      {words.advice}
      {action && <div className={style['action']}>{action}</div>}
    </Notice>
  );
}
