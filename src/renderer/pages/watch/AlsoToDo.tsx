import type { ReactElement } from 'react';
import type { WatchBoard } from '../../../api/contract/watch.ts';
import { nextStepOf, type Reason } from '../../../domain/care/watchItem.ts';
import { capitalized } from '../../../words/labels.ts';
import style from './AlsoToDo.module.css';
import { NextStep } from './NextStep.tsx';
import { alsoInWords, stepOf } from './needWords.ts';

interface Props {
  specimen: { readonly id: string; readonly code: string };
  items: WatchBoard['items'];
}

/** What else is to be done for one animal, beyond the next step that the board shows and the keys below. */
export function AlsoToDo({ specimen, items }: Props): ReactElement | null {
  const item = items.find(({ specimenId }) => specimenId === specimen.id);
  if (!item) return null;
  const next = nextStepOf(item);
  const others = item.also.filter((reason) => reason !== next && leadsElsewhere(reason, specimen.id));
  if (others.length === 0) return null;
  return (
    <ul className={style['others']} aria-label="Also to do">
      {others.map((reason) => (
        <li key={alsoInWords(reason.need)}>
          <span>{capitalized(alsoInWords(reason.need))}.</span>
          <NextStep reason={reason} specimen={specimen} />
        </li>
      ))}
    </ul>
  );
}

function leadsElsewhere(reason: Reason, specimenId: string): boolean {
  return reason.action === 'record-molt' || reason.need.kind === 'skin-to-recover' || stepOf(reason, specimenId).to !== null;
}
