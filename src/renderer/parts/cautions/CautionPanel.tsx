import type { ReactElement } from 'react';
import { CAUTION_TOPICS, CAUTIONS, type CautionTopic } from '../../../words/cautions.ts';
import style from './CautionPanel.module.css';

interface Props {
  /** Which matters stand here, in the order shown; all of them if left out. */
  topics?: readonly CautionTopic[];
  /** Those that stand behind their titles. */
  folded?: readonly CautionTopic[];
}

/** What to mind with skins and their animals, shown where they are handled. */
export function CautionPanel({ topics = CAUTION_TOPICS, folded = [] }: Props): ReactElement {
  return (
    <aside className={style['panel']} aria-label="Cautions">
      {topics.map((topic) => (
        <Caution key={topic} topic={topic} folded={folded.includes(topic)} />
      ))}
    </aside>
  );
}

function Caution({ topic, folded }: { topic: CautionTopic; folded: boolean }): ReactElement {
  const { title, text } = CAUTIONS[topic];
  if (folded) {
    return (
      <details className={style['caution']}>
        <summary className={style['summary']}>{title}</summary>
        <p>{text}</p>
      </details>
    );
  }
  return (
    <div className={style['caution']}>
      <strong className={style['title']}>{title}</strong>
      <p>{text}</p>
    </div>
  );
}
