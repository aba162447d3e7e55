import type { ReactElement } from 'react';
import type { WatchBoard } from '../../../api/contract/watch.ts';
import { nextStepOf, type WatchItem } from '../../../domain/care/watchItem.ts';
import { dayInWords } from '../../../words/dates.ts';
import { Button } from '../../parts/Button.tsx';
import { Taxon } from '../../parts/Taxon.tsx';
import style from './Board.module.css';
import { NextStep } from './NextStep.tsx';
import { needInWords, stepOf, whyInWords } from './needWords.ts';
import { offsetHere } from './wallClock.ts';

interface Props {
  board: WatchBoard;
  chosen: string | null;
  onChoose: (specimenId: string) => void;
}

/** Everybody who needs something, the most urgent first; each once, with one line why and one next step. */
export function Board({ board, chosen, onChoose }: Props): ReactElement {
  return (
    <section aria-labelledby="watch-today">
      <h2 id="watch-today" className={style['heading']}>
        Today, <time dateTime={board.today}>{dayInWords(board.today)}</time>
      </h2>
      {board.items.length === 0 && <p className={style['quiet']}>Nobody needs anything that is on record.</p>}
      <ul className={style['items']}>
        {board.items.map((item) => (
          <Item key={item.specimenId} item={item} board={board} chosen={chosen} onChoose={onChoose} />
        ))}
      </ul>
    </section>
  );
}

function Item({ item, board, chosen, onChoose }: Props & { item: WatchItem }): ReactElement {
  const specimen = board.animals.find(({ specimen: { id } }) => id === item.specimenId)?.specimen;
  const next = nextStepOf(item);
  const { words } = stepOf(next, item.specimenId);
  const here = chosen === item.specimenId;
  return (
    <li className={[style['item'], style[toneOf(item)], here && style['here']].filter(Boolean).join(' ')}>
      <div className={style['words']}>
        <h3>
          {specimen?.code} {specimen?.name}
          <span className={style['need']}>{needInWords(item.need).title}</span>
        </h3>
        {specimen && <Taxon name={specimen.taxon} />}
        <p>{whyInWords(item, offsetHere)}</p>
      </div>
      {specimen && (
        <NextStep reason={next} specimen={specimen}>
          <Button
            className={style['step']}
            aria-label={`${words}: ${specimen.code}`}
            aria-pressed={here}
            onClick={() => onChoose(item.specimenId)}
          >
            {words}
          </Button>
        </NextStep>
      )}
    </li>
  );
}

function toneOf({ need }: WatchItem): 'calm' | 'closer' | 'concern' {
  if (need.kind !== 'molting') return 'calm';
  if (need.timer.state === 'concern') return 'concern';
  return need.timer.state === 'usual' ? 'calm' : 'closer';
}
